"""`modebook chart`: a mode's chart for people, and as a sheet that `draft` reads back without loss."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from modebook.documents.fixture import Fixture
from modebook.shelf.canonical import canonical
from support.documents import fixtures
from support.program import CATALOG, Program

DOCUMENTS = sorted((CATALOG / "fixtures").glob("*/*.json"))


def test_a_mode_is_printed_with_slots_values_and_meaning(modebook: Program) -> None:
    """The control slot's reset stands with its range, its hold, its condition and a caution."""
    out = modebook("chart", "pelluwick/torvane-40", "--mode", "basic").out
    assert "Pelluwick Torvane 40, Basic (mode 1, 16 slots, second-read)" in out
    assert "revision B, firmware 1.6" in out
    joined = " ".join(out.split())
    assert "250-255 Reset all; hold 5 s; needs dimmer at 0 and shutter at 0-19; CAUTION: reset" in joined
    assert "rotating-gobo-wheel [gobo-1]" in joined


def test_without_a_mode_all_are_printed(modebook: Program) -> None:
    """Cells are told once, with how they repeat."""
    out = modebook("chart", "hoddlefen/strimble-16").out
    assert "One color (mode 1" in out
    assert "16 cells Pixel: 4 slots apart, the first at slot 4" in " ".join(out.split())


@pytest.mark.parametrize("columns", [80, 120])
@pytest.mark.parametrize("path", DOCUMENTS, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_no_line_is_wider_than_the_terminal(
    modebook: Program, monkeypatch: pytest.MonkeyPatch, path: Path, columns: int
) -> None:
    """Every document of the catalog, at both widths."""
    monkeypatch.setenv("COLUMNS", str(columns))
    out = modebook("chart", path).out
    assert max(len(line) for line in out.splitlines()) <= columns


@pytest.mark.parametrize("path", DOCUMENTS, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_the_sheet_comes_back_as_the_same_file(modebook: Program, tmp_path: Path, path: Path) -> None:
    """CSV and workbook, out with `chart` and in with `draft -o`: byte for byte the document."""
    sheet, book = tmp_path / "sheet.csv", tmp_path / "sheet.xlsx"
    sheet.write_bytes(modebook("chart", path, "--csv").out.encode())
    modebook("chart", path, "--xlsx", book)
    for number, source in enumerate((sheet, book)):
        back = tmp_path / f"{number}.json"
        run = modebook("draft", source, "-o", back)
        assert run.status == 0, run.err
        assert back.read_bytes() == path.read_bytes()


@settings(max_examples=15, suppress_health_check=list(HealthCheck))
@given(data=fixtures())
def test_any_document_comes_back_as_the_same_file(
    modebook: Program, tmp_path_factory: pytest.TempPathFactory, data: object
) -> None:
    """As the catalog's, for any document that there can be."""
    folder = tmp_path_factory.mktemp("any")
    document = Fixture.model_validate_json(json.dumps(data), by_alias=True, by_name=False)
    path, sheet, back = folder / "a.json", folder / "a.csv", folder / "b.json"
    path.write_bytes(canonical(document))
    sheet.write_bytes(modebook("chart", path, "--csv").out.encode())
    assert modebook("draft", sheet, "-o", back).status == 0
    assert back.read_bytes() == path.read_bytes()


@pytest.mark.parametrize("path", DOCUMENTS, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_no_cell_of_a_sheet_begins_as_a_formula_does(modebook: Program, path: Path) -> None:
    """Equals, plus, minus, at, tab: a spreadsheet would compute such a cell; a number may be negative."""
    for row in csv.reader(io.StringIO(modebook("chart", path, "--csv").out)):
        for cell in row:
            if cell[:1] in ("=", "+", "-", "@", "\t", "\r"):
                float(cell)


def test_a_formula_in_a_name_is_defused_and_comes_back(modebook: Program, tmp_path: Path) -> None:
    """A label that is a formula goes into the last column, inside JSON, and is the same label after."""
    document = json.loads((CATALOG / "fixtures" / "generic" / "dimmer.json").read_text())
    document["modes"][0]["parameters"][0]["label"] = '=cmd|"/c calc"!A1'
    document["modes"][0]["name"] = "-2+3"
    path, sheet, back = tmp_path / "a.json", tmp_path / "a.csv", tmp_path / "b.json"
    path.write_text(json.dumps(document), encoding="utf-8")
    out = modebook("chart", path, "--csv").out
    assert not any(cell[:1] in ("=", "-") for row in csv.reader(io.StringIO(out)) for cell in row)
    sheet.write_bytes(out.encode())
    modebook("draft", sheet, "-o", back)
    assert json.loads(back.read_text())["modes"] == document["modes"]


def test_one_mode_may_be_given_out_alone(modebook: Program, tmp_path: Path) -> None:
    """--mode goes with every form."""
    told = modebook("chart", "pelluwick/torvane-40", "--mode", "3", "--json").json["document"]
    assert [mode["name"] for mode in told["modes"]] == ["Extended"]
    sheet = tmp_path / "one.csv"
    sheet.write_bytes(modebook("chart", "pelluwick/torvane-40", "--mode", "3", "--csv").out.encode())
    back = modebook("draft", sheet, "--json").json["document"]
    assert back.pop("doubts") == []
    assert back == told


def test_the_blank_sheet_reads_without_a_doubt(modebook: Program, tmp_path: Path) -> None:
    """Titles and one worked example, as CSV and as a workbook."""
    sheet, book = tmp_path / "blank.csv", tmp_path / "blank.xlsx"
    sheet.write_bytes(modebook("chart", "--blank").out.encode())
    modebook("chart", "--blank", "--xlsx", book)
    for source in (sheet, book):
        told = modebook("draft", source, "--json").json["document"]
        assert told["doubts"] == []
        assert [p["parameter"] for p in told["modes"][0]["parameters"]] == [
            "dimmer",
            "pan",
            "strobe",
            "control",
        ]


def test_the_page_for_printing_holds_every_row_and_no_script(modebook: Program, tmp_path: Path) -> None:
    """All meanings stand in it, escaped; nothing is fetched from elsewhere."""
    path = tmp_path / "c.html"
    document = json.loads((CATALOG / "fixtures" / "generic" / "dimmer.json").read_text())
    document["modes"][0]["parameters"][0]["label"] = "<b>Bold</b> & loud"
    (tmp_path / "a.json").write_text(json.dumps(document), encoding="utf-8")
    modebook("chart", tmp_path / "a.json", "--html", path)
    page = path.read_text(encoding="utf-8")
    assert "&lt;b&gt;Bold&lt;/b&gt; &amp; loud" in page
    assert "<script" not in page
    assert "http" not in page


def test_files_are_not_overwritten_unless_told(modebook: Program, tmp_path: Path) -> None:
    """Workbook and page alike."""
    for option in ("--xlsx", "--html"):
        path = tmp_path / f"mine{option}"
        path.write_text("mine", encoding="utf-8")
        run = modebook("chart", "generic/rgb", option, path)
        assert (run.status, path.read_text(encoding="utf-8")) == (2, "mine")
        assert "--overwrite" in run.err
        assert modebook("chart", "generic/rgb", option, path, "--overwrite").status == 0
        assert path.read_bytes() != b"mine"


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ((), "--blank"),
        (("pelluwick/torvain-40",), "pelluwick/torvane-40"),
        (("pelluwick/torvane-40", "--mode", "Basik"), "Basic"),
        (("--blank", "generic/rgb"), "sheet of its own"),
        (("nowhere.json",), "no such file"),
    ],
)
def test_what_is_not_there_is_told_with_what_is(modebook: Program, words: tuple[str, ...], told: str) -> None:
    """Status 2."""
    run = modebook("chart", *words)
    assert run.status == 2
    assert told in run.err
