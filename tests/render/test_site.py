"""What the site does ahead of its readers."""

from __future__ import annotations

import sqlite3
import urllib.error
import urllib.request
from pathlib import Path

import pytest

from modebook.render import site


def test_every_table_and_view_is_visited_and_no_refusal_stops_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The list first, then tables and views by name; tables of the full-text search are nobody's page."""
    file = tmp_path / "some.sqlite"
    connection = sqlite3.connect(file)
    connection.executescript(
        "CREATE TABLE b (x); CREATE TABLE a (x); CREATE VIEW c AS SELECT x FROM a;"
        "CREATE VIRTUAL TABLE search_fts USING fts5 (x);"
    )
    connection.close()
    asked: list[str] = []

    def refused(address: str, timeout: float) -> None:
        asked.append(address)
        raise urllib.error.URLError("not there")

    monkeypatch.setattr(urllib.request, "urlopen", refused)
    site._visit_tables("http://127.0.0.1:1", file)
    assert asked == 2 * [f"http://127.0.0.1:1/modebook{path}" for path in ("", "/a", "/b", "/c")]
