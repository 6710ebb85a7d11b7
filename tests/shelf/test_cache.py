"""The user's cache folder: one database for each catalog, outside of it."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import pytest

from modebook.shelf.cache import cache_folder, database_path
from modebook.shelf.catalog import Catalog


@pytest.fixture(autouse=True)
def _home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("HOME", str(tmp_path / "home"))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


@pytest.mark.skipif(
    sys.platform in ("win32", "darwin"), reason="these systems have cache folders of their own"
)
def test_the_folder_is_the_systems(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """XDG_CACHE_HOME where it is an absolute path, else .cache at home (XDG Base Directory 0.8)."""
    assert cache_folder() == tmp_path / "cache" / "modebook"
    for ignored in ("", "not/absolute"):
        monkeypatch.setenv("XDG_CACHE_HOME", ignored)
        assert cache_folder() == tmp_path / "home" / ".cache" / "modebook"
    monkeypatch.delenv("XDG_CACHE_HOME")
    assert cache_folder() == tmp_path / "home" / ".cache" / "modebook"


@pytest.mark.parametrize(
    ("platform", "folder"),
    [("darwin", "home/Library/Caches/modebook"), ("win32", "local/modebook")],
)
def test_other_systems_have_their_own(
    platform: str, folder: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The usual places of macOS and Windows."""
    monkeypatch.delenv("XDG_CACHE_HOME")
    monkeypatch.setenv("LOCALAPPDATA", str(tmp_path / "local"))
    monkeypatch.setattr(sys, "platform", platform)
    assert cache_folder() == tmp_path / folder


def test_each_catalog_has_its_own_database(tmp_path: Path) -> None:
    """Two folders of one name differ; the same folder by another way is the same."""
    for name in ("one/show/catalog", "two/show/catalog"):
        (tmp_path / name).mkdir(parents=True)
    first = database_path(Catalog(tmp_path / "one" / "show" / "catalog"))
    second = database_path(Catalog(tmp_path / "two" / "show" / "catalog"))
    assert first != second
    assert first.name.startswith("show-")
    (tmp_path / "link").symlink_to(tmp_path / "one" / "show")
    around = tmp_path / "two" / ".." / "link" / "catalog"
    assert database_path(Catalog(around)) == first


def test_the_database_is_never_in_the_catalog(tmp_path: Path) -> None:
    """A catalog stays as its keepers left it."""
    root = tmp_path / "catalog"
    root.mkdir()
    assert not database_path(Catalog(root)).is_relative_to(root)


@pytest.mark.parametrize("name", [b"\xff\xfe", "Île du Nord : 2".encode(), b"x" * 255, "灯".encode() * 80])
def test_any_folder_name_gives_a_name_that_a_disk_takes(name: bytes, tmp_path: Path) -> None:
    """Bytes that are no text, spaces and colons, names as long as may be."""
    root = tmp_path / os.fsdecode(name)
    root.mkdir()
    found = database_path(Catalog(root)).name
    assert len(found) <= 100
    assert set(found) <= set("abcdefghijklmnopqrstuvwxyz0123456789-.")
    assert found.endswith(".sqlite")
