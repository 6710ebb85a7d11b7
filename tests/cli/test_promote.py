"""`modebook promote`: a standing raised with who and when, refused while the record does not bear it."""

from __future__ import annotations

import datetime
import json
import shutil
from pathlib import Path
from typing import Any

import pytest

from support.program import CATALOG, Program

BY = ("--by", "R. Quill", "--date", "2026-05-01")


@pytest.fixture
def catalog(tmp_path: Path) -> Path:
    """A catalog of the demo's transcribed Brumlet 7 and its draft Torvane 12, which has an open doubt."""
    folder = tmp_path / "fixtures" / "pelluwick"
    folder.mkdir(parents=True)
    for name in ("brumlet-7", "torvane-12"):
        shutil.copy(CATALOG / "fixtures" / "pelluwick" / f"{name}.json", folder)
    return tmp_path


def document(catalog: Path, name: str) -> dict[str, Any]:
    """A document of the catalog."""
    path = catalog / "fixtures" / "pelluwick" / f"{name}.json"
    told: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return told


def put(catalog: Path, told: dict[str, Any], *where: str) -> None:
    """Write a document into the catalog."""
    path = catalog.joinpath(*where)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(json.dumps(told), encoding="utf-8")


def test_a_draft_with_an_open_doubt_is_refused_and_untouched(modebook: Program, catalog: Path) -> None:
    """The doubt is told, and what to type; status 1."""
    path = catalog / "fixtures" / "pelluwick" / "torvane-12.json"
    before = path.read_bytes()
    run = modebook("promote", "pelluwick/torvane-12", "--to", "transcribed", *BY, catalog=catalog)
    assert (run.status, run.out) == (1, "")
    assert "doubt is open" in run.err
    assert f"modebook draft {path} --interactive" in run.err
    assert path.read_bytes() == before
    told = modebook("promote", path, "--to", "transcribed", *BY, "--json", catalog=None)
    assert told.status == 1
    assert told.json["standing"] == "draft"
    assert len(told.json["refused"]) == 1


def test_a_settled_draft_is_raised_with_who_and_when(modebook: Program, catalog: Path) -> None:
    """And found from then on, without asking for drafts."""
    told = document(catalog, "torvane-12")
    for doubt in told["doubts"]:
        doubt["settled"] = {"by": "A", "date": "2026", "decision": "as read"}
    put(catalog, told, "fixtures", "pelluwick", "torvane-12.json")
    assert modebook("find", "torvane", "--json", catalog=catalog).json["total"] == 0
    note = ("--note", "Beside the paper.")
    run = modebook("promote", "Pelluwick/Torvane 12", "--to", "transcribed", *BY, *note, catalog=catalog)
    assert run.status == 0
    assert "draft → transcribed, by R. Quill" in run.out
    after = document(catalog, "torvane-12")
    assert after["standing"] == "transcribed"
    assert after["promotions"][-1] == {
        "to": "transcribed",
        "by": "R. Quill",
        "date": "2026-05-01",
        "note": "Beside the paper.",
    }
    assert modebook("find", "torvane", "--json", catalog=catalog).json["total"] > 0


def test_today_is_the_date_unless_told(modebook: Program, catalog: Path) -> None:
    """As ISO 8601 writes it."""
    modebook("promote", "pelluwick/brumlet-7", "--to", "proved", "--by", "A", catalog=catalog)
    days = {datetime.date.today().isoformat()}
    assert document(catalog, "brumlet-7")["promotions"][-1]["date"] in days


def test_second_read_needs_a_reading_that_agrees(modebook: Program, catalog: Path) -> None:
    """None is there; one differs; one agrees."""
    words = ("promote", "pelluwick/brumlet-7", "--to", "second-read", *BY)
    run = modebook(*words, catalog=catalog)
    assert run.status == 1
    assert "readings/pelluwick/brumlet-7/" in run.err
    reading = document(catalog, "brumlet-7")
    reading["modes"][0]["footprint"] += 1
    where = ("readings", "pelluwick", "brumlet-7", "second.json")
    put(catalog, reading, *where)
    run = modebook(*words, catalog=catalog)
    assert run.status == 1
    assert "/modes/0/footprint" in run.err
    assert document(catalog, "brumlet-7")["standing"] == "transcribed"
    reading["modes"][0]["footprint"] -= 1
    put(catalog, reading, *where)
    assert modebook(*words, catalog=catalog).status == 0
    assert document(catalog, "brumlet-7")["standing"] == "second-read"


def test_a_file_finds_the_readings_of_the_catalog_that_it_lies_in(modebook: Program, catalog: Path) -> None:
    """Named by its path, from anywhere; --reading names another."""
    put(catalog, document(catalog, "brumlet-7"), "readings", "pelluwick", "brumlet-7", "second.json")
    path = catalog / "fixtures" / "pelluwick" / "brumlet-7.json"
    assert modebook("promote", path, "--to", "second-read", *BY, catalog=None).status == 0


def test_a_reading_may_be_named(modebook: Program, catalog: Path, tmp_path: Path) -> None:
    """Wherever it lies."""
    put(tmp_path, document(catalog, "brumlet-7"), "mine.json")
    words = ("--to", "second-read", *BY, "--reading", tmp_path / "mine.json")
    assert modebook("promote", "pelluwick/brumlet-7", *words, catalog=catalog).status == 0


@pytest.mark.parametrize(
    ("words", "status", "told"),
    [
        (("pelluwick/brumlet-7", "--to", "transcribed", *BY), 1, "is no rise"),
        (("pelluwick/torvane-12", "--to", "proved", *BY), 1, "have it transcribed first"),
        (("pelluwick/brumlet-7", "--to", "proved", "--by", " "), 1, "Nobody is named"),
        (("pelluwick/brumlet-7", "--to", "proved", "--by", "A", "--date", "May"), 1, "'May' is no date"),
        (("pelluwick/brumlet-7", "--to", "golden", *BY), 2, "golden"),
        (("pelluwick/brumlet-7", "--to", "proved"), 2, "--by"),
        (("pelluwick/brumlet-8", "--to", "proved", *BY), 2, "pelluwick/brumlet-7"),
    ],
)
def test_what_is_no_promotion_is_refused(
    modebook: Program, catalog: Path, words: tuple[str, ...], status: int, told: str
) -> None:
    """Refused by the record: status 1; not understood: status 2; the file is as it was in either case."""
    files = sorted((catalog / "fixtures").rglob("*.json"))
    before = [path.read_bytes() for path in files]
    run = modebook("promote", *words, catalog=catalog)
    assert run.status == status
    assert told in " ".join(run.err.split())
    assert "Traceback" not in run.err
    assert [path.read_bytes() for path in files] == before
