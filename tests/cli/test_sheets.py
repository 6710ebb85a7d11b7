"""`modebook sheets` and --html: files whole or none, nobody's file replaced unasked."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest

from support.program import CATALOG, Program


def test_a_folder_of_sheets_is_made_and_not_replaced_unasked(modebook: Program, tmp_path: Path) -> None:
    """The second run writes nothing; with --overwrite it does."""
    out = tmp_path / "paper"
    assert modebook("sheets", "ossilby-pier", "-o", str(out), "--spare", "12A").status == 0
    names = {path.name for path in out.iterdir()}
    assert {
        "index.html",
        "by-position.html",
        "by-universe.html",
        "control-cards.html",
        "spare-12a.html",
    } <= names
    (out / "index.html").write_text("mine", encoding="utf-8")
    again = modebook("sheets", "ossilby-pier", "-o", str(out))
    assert again.status == 2
    assert "exists already" in again.err
    assert (out / "index.html").read_text(encoding="utf-8") == "mine"
    assert modebook("sheets", "ossilby-pier", "-o", str(out), "--overwrite").status == 0
    assert (out / "index.html").read_text(encoding="utf-8") != "mine"


def test_an_unknown_spare_writes_nothing(modebook: Program, tmp_path: Path) -> None:
    out = tmp_path / "paper"
    run = modebook("sheets", "ossilby-pier", "-o", str(out), "--spare", "9999")
    assert (run.status, out.exists()) == (2, False)
    assert run.err.count("\n") == 1


FOUND = str(CATALOG / "rigs" / "ossilby-pier" / "as-found.csv")


@pytest.mark.parametrize(
    ("words", "status"),
    [
        (("audit", "ossilby-pier"), 1),
        (("verify", "ossilby-pier", FOUND), 1),
        (("rigs",), 0),
        (("repatch", "ossilby-jetty"), 0),
    ],
)
def test_an_answer_goes_on_paper_with_a_csv_beside_it(
    modebook: Program, tmp_path: Path, words: tuple[str, ...], status: int
) -> None:
    """The page and the CSV have the rows of the answer, and --csv prints the same rows."""
    page = tmp_path / "page.html"
    assert modebook(*words, "--html", str(page)).status == status
    text = page.read_text(encoding="utf-8")
    assert text.startswith("<!doctype html>")
    assert "<script" not in text
    beside = page.with_suffix(".csv").read_text(encoding="utf-8-sig")
    assert len(list(csv.reader(io.StringIO(beside)))) > 1
    printed = modebook(*words, "--csv")
    assert printed.out.splitlines() == beside.splitlines()
    again = modebook(*words, "--html", str(page))
    assert again.status == 2
    assert "--overwrite" in again.err


@pytest.mark.parametrize("there", ["page.html", "page.csv"])
def test_one_file_that_is_there_keeps_both_from_being_written(
    modebook: Program, tmp_path: Path, there: str
) -> None:
    (tmp_path / there).write_text("mine", encoding="utf-8")
    run = modebook("audit", "ossilby-jetty", "--html", str(tmp_path / "page.html"))
    assert run.status == 2
    assert there in run.err
    assert [(path.name, path.read_text(encoding="utf-8")) for path in tmp_path.iterdir()] == [(there, "mine")]


def test_a_repatch_as_csv_has_universe_and_address_as_numbers(modebook: Program) -> None:
    """Its rows are the changes of --json, so that no spreadsheet can take 1/11 for a date."""
    changes = json.loads(modebook("repatch", "ossilby-jetty", "--json").out)["changes"]
    rows = list(csv.DictReader(io.StringIO(modebook("repatch", "ossilby-jetty", "--csv").out)))
    assert changes
    assert [
        (row["Unit"], int(row["Universe from"]), int(row["Address from"]), int(row["Universe to"]))
        for row in rows
    ] == [
        (
            one["unit"],
            one["address_from"]["universe"],
            one["address_from"]["address"],
            one["address_to"]["universe"],
        )
        for one in changes
    ]
    assert [int(row["Address to"]) for row in rows] == [one["address_to"]["address"] for one in changes]


def test_a_repatch_on_paper_shows_the_new_patch(modebook: Program, tmp_path: Path) -> None:
    """Its maps are those of the rig read from the CSV that -o writes: nothing is taken twice any more."""
    page, patch = tmp_path / "page.html", tmp_path / "patch.csv"
    modebook("repatch", "ossilby-jetty", "--html", str(page), "-o", str(patch))
    text = page.read_text(encoding="utf-8")
    assert "Taken twice" not in text
    assert "Taken twice" in _maps(modebook, "ossilby-jetty", tmp_path / "before")


def _maps(modebook: Program, rig: str, out: Path) -> str:
    modebook("sheets", rig, "-o", str(out))
    return (out / "by-universe.html").read_text(encoding="utf-8")
