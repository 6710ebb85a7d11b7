"""`modebook draft`: a chart of any format in, a draft with its doubts out, nothing overwritten."""

from __future__ import annotations

import io
import json
import zipfile
from pathlib import Path
from typing import Any

import pytest

from support.pdfs import simple_pdf
from support.program import CATALOG, Program, Run

DEMO = CATALOG / "charts" / "snorrigand-quindle-30.pdf"
WHO = ("--maker", "Snorrigand", "--model", "Quindle 30", "--category", "moving yoke")
TEXT = """\
Mode 1: Basic (3 channels)
Slot  Function  Value    Meaning
1     Dimmer    0-255
2     Strobe    0-9      Open
                8-255    Slow to fast
3     Red       0-255
"""
ROWS = (
    ("Slot", "Function", "Value", "Meaning"),
    ("1", "Dimmer", "0-255", ""),
    ("2", "Strobe", "0-9", "Open"),
    ("", "", "10-255", "Slow to fast"),
    ("3", "Red", "0-255", ""),
)


def feed(monkeypatch: pytest.MonkeyPatch, content: bytes) -> None:
    """Put bytes on standard input."""
    monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(content), encoding="utf-8"))


def test_the_demo_chart_is_read_with_its_two_doubts(modebook: Program) -> None:
    """A person is told modes, parameters and doubts, each with its place, and that nothing was kept."""
    run = modebook("draft", DEMO, *WHO)
    assert run.status == 0
    assert "2 modes, 14 parameters, 2 open doubts" in run.out
    assert "Basic, slot 3, pan, span  page 2, table 1, row 6" in run.out
    assert "printed  540°" in run.out
    assert "15-29 overlaps 10-19" in run.out
    assert "Nothing is kept" in run.out
    assert "page 2 (2 of 3)" in run.err


def test_only_the_asked_pages_are_read(modebook: Program) -> None:
    """Page 3 alone is the second mode."""
    run = modebook("draft", DEMO, "--pages", "3", *WHO, "--json")
    assert [mode["name"] for mode in run.json["document"]["modes"]] == ["Extended"]
    assert run.json["document"]["sources"][0]["pages"] == "3"
    assert run.err == "reading page 3 (1 of 1) ...\n"


def test_json_has_the_documented_keys(modebook: Program) -> None:
    """Each doubt has all six keys; a document without doubts has an empty list of them."""
    told = modebook("draft", DEMO, "--json").json
    assert set(told) == {"document", "notes", "written"}
    for doubt in told["document"]["doubts"]:
        assert list(doubt) == ["pointer", "slots", "place", "printed", "read", "why"]
    assert told["document"]["doubts"][0]["slots"] == [3]


def test_what_the_caller_knows_stands_in_the_document(modebook: Program, tmp_path: Path) -> None:
    """Maker, model, category, title, revision, firmware."""
    source = ("--source-title", "Quindle guide", "--revision", "B", "--firmware", "1.4")
    told = modebook("draft", DEMO, *WHO, *source, "--json").json["document"]
    assert (told["maker"], told["model"], told["category"]) == ("Snorrigand", "Quindle 30", "moving yoke")
    assert told["standing"] == "draft"
    assert told["sources"] == [
        {"key": "chart", "title": "Quindle guide", "revision": "B", "firmware": "1.4"},
    ]


def test_o_and_a_catalog_files_it_where_check_expects_it(modebook: Program, tmp_path: Path) -> None:
    """fixtures/<maker>/<model>.json; check agrees with the path and tells of the open doubts."""
    (tmp_path / "fixtures").mkdir()
    run = modebook("draft", DEMO, *WHO, "-o", tmp_path)
    file = tmp_path / "fixtures" / "snorrigand" / "quindle-30.json"
    assert file.is_file()
    assert f"written: {file}" in run.err
    assert f"modebook draft {file} --interactive" in run.out
    findings = modebook("check", file, "--json").json["findings"]
    rules = {finding["rule"] for finding in findings}
    assert "doubts-open" in rules
    assert "path-mismatch" not in rules


def test_a_draft_is_found_only_when_asked_for(modebook: Program, tmp_path: Path) -> None:
    """`find` leaves it out, and --drafts has it."""
    (tmp_path / "fixtures").mkdir()
    modebook("draft", DEMO, *WHO, "-o", tmp_path)
    assert modebook("find", "--json", catalog=tmp_path).json["modes"] == []
    assert len(modebook("find", "--drafts", "--json", catalog=tmp_path).json["modes"]) == 2


def test_a_catalog_needs_to_know_whose_chart_it_is(modebook: Program, tmp_path: Path) -> None:
    """Without maker and model there is no path."""
    (tmp_path / "fixtures").mkdir()
    run = modebook("draft", DEMO, "-o", tmp_path)
    assert run.status == 2
    assert "--maker and --model" in run.err
    assert list((tmp_path / "fixtures").iterdir()) == []


def test_a_place_that_is_neither_file_nor_catalog_is_refused(modebook: Program, tmp_path: Path) -> None:
    """A folder without a catalog, a name without .json."""
    for place in (tmp_path, tmp_path / "draft.txt"):
        run = modebook("draft", DEMO, *WHO, "-o", place)
        assert run.status == 2
        assert run.err.count("\n") == 4, "three pages' progress and one line"
    assert list(tmp_path.iterdir()) == []


def test_nothing_is_overwritten_unless_told(modebook: Program, tmp_path: Path) -> None:
    """The second draft is refused whole, its report included; --overwrite lets it."""
    file, report = tmp_path / "q.json", tmp_path / "q.html"
    assert modebook("draft", DEMO, *WHO, "-o", file).status == 0
    kept = file.read_bytes()
    again = modebook("draft", DEMO, "--maker", "Other", "--model", "Other", "-o", file, "--report", report)
    assert again.status == 2
    assert "exists already" in again.err
    assert "--interactive" in again.err
    assert file.read_bytes() == kept
    assert not report.exists()
    told = ("--maker", "Other", "--model", "Other", "-o", file, "--report", report, "--overwrite")
    assert modebook("draft", DEMO, *told).status == 0
    assert json.loads(file.read_text())["maker"] == "Other"
    assert f"modebook draft {file} --interactive" in report.read_text(encoding="utf-8")
    assert modebook("draft", DEMO, "--report", report).status == 2


def _csv() -> bytes:
    return "\n".join(",".join(row) for row in ROWS).encode()


def _html() -> bytes:
    rows = "".join("<tr>" + "".join(f"<td>{cell}</td>" for cell in row) + "</tr>" for row in ROWS)
    return f"<html><body><table>{rows}</table></body></html>".encode()


def _text() -> bytes:
    return "\n".join("\t".join(row) for row in ROWS).encode()


def _xlsx() -> bytes:
    import openpyxl

    book = openpyxl.Workbook()
    for row in ROWS:
        book.active.append(row)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def _ods() -> bytes:
    from odf import opendocument
    from odf.table import Table, TableCell, TableRow
    from odf.text import P

    document = opendocument.OpenDocumentSpreadsheet()
    table = Table(name="Chart")
    for row in ROWS:
        line = TableRow()
        for cell in row:
            made = TableCell(valuetype="string")
            made.addElement(P(text=cell))
            line.addElement(made)
        table.addElement(line)
    document.spreadsheet.addElement(table)
    out = io.BytesIO()
    document.write(out)
    return out.getvalue()


@pytest.mark.parametrize(
    ("name", "content"),
    [("c.csv", _csv), ("c.html", _html), ("c.txt", _text), ("c.xlsx", _xlsx), ("c.ods", _ods)],
)
def test_every_format_gives_the_same_mode(modebook: Program, tmp_path: Path, name: str, content: Any) -> None:
    """One chart in five formats: words, slots and ranges are those that were typed."""
    path = tmp_path / name
    path.write_bytes(content())
    told = modebook("draft", path, "--json").json["document"]
    (mode,) = told["modes"]
    found = [
        (p["parameter"], p["slots"], [(r["from"], r["to"]) for r in p.get("ranges", [])])
        for p in mode["parameters"]
    ]
    assert found == [("dimmer", [1], []), ("strobe", [2], [(0, 9), (10, 255)]), ("red", [3], [])]
    assert told["doubts"] == []


def test_text_comes_from_standard_input(modebook: Program, monkeypatch: pytest.MonkeyPatch) -> None:
    """As pasted from a viewer; a PDF there is refused in one line."""
    feed(monkeypatch, TEXT.encode())
    run = modebook("draft", "-", "--json")
    assert [p["parameter"] for p in run.json["document"]["modes"][0]["parameters"]] == [
        "dimmer",
        "strobe",
        "red",
    ]
    feed(monkeypatch, DEMO.read_bytes())
    run = modebook("draft", "-")
    assert (run.status, run.out, run.err.count("\n")) == (2, "", 1)
    assert "name the file" in run.err


def test_a_chart_sheet_comes_back_through_standard_input(
    modebook: Program, monkeypatch: pytest.MonkeyPatch
) -> None:
    """`chart --csv` into `draft -`."""
    sheet = modebook("chart", "zandroveil/glawm-200", "--csv").out
    feed(monkeypatch, sheet.encode())
    told = modebook("draft", "-", "--json").json["document"]
    wanted = json.loads((CATALOG / "fixtures" / "zandroveil" / "glawm-200.json").read_text())
    assert told.pop("doubts") == []
    assert told == wanted


def test_a_draft_in_place_of_a_chart_is_told_of(modebook: Program, tmp_path: Path) -> None:
    """Its open doubts, and what to type next; options that are about a chart are refused."""
    file = tmp_path / "q.json"
    modebook("draft", DEMO, *WHO, "-o", file)
    run = modebook("draft", file)
    assert "2 open doubts" in run.out
    assert f"modebook draft {file} --interactive" in run.out
    assert modebook("draft", file, "--json").json["document"]["model"] == "Quindle 30"
    refused = modebook("draft", file, "--maker", "Other")
    assert refused.status == 2
    assert "is a draft already" in refused.err


def test_a_spreadsheet_gives_values_and_runs_nothing(modebook: Program, tmp_path: Path) -> None:
    """A formula's cell holds its last value, which is what is read; one that was never computed is blank."""
    import openpyxl

    book = openpyxl.Workbook()
    for row in (("Slot", "Function", "Value"), ("1", "Dimmer", "0-255"), ("2", "Red", '=HYPERLINK("x")')):
        book.active.append(row)
    path = tmp_path / "formula.xlsx"
    book.save(path)
    told = modebook("draft", path, "--json").json["document"]
    assert "HYPERLINK" not in json.dumps(told)
    assert [p["parameter"] for p in told["modes"][0]["parameters"]] == ["dimmer", "red"]


def _bomb(path: Path) -> Path:
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("xl/workbook.xml", "<workbook/>")
        archive.writestr("xl/worksheets/sheet1.xml", b"0" * 300_000_000)
    return path


def _cut(path: Path) -> Path:
    whole = DEMO.read_bytes()
    path.write_bytes(whole[: len(whole) // 2])
    return path


def _written(path: Path, content: bytes) -> Path:
    path.write_bytes(content)
    return path


BAD: list[tuple[str, Any, str]] = [
    ("scan.pdf", lambda path: simple_pdf(path, text=False), "text recognition"),
    ("locked.pdf", lambda path: simple_pdf(path, password="secret"), "password"),
    ("cut.pdf", _cut, "damaged or cut off"),
    ("long.pdf", lambda path: simple_pdf(path, 2000), "2000 pages"),
    ("bomb.xlsx", _bomb, "MB"),
    ("old.xls", lambda path: _written(path, b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(600)), "password"),
    ("odd.txt", lambda path: _written(path, b"Slot Function\n1 Dimmer \x81\x8d\xff\n"), "UTF-8"),
    ("empty.csv", lambda path: _written(path, b""), "empty"),
    ("words.txt", lambda path: _written(path, b"No chart in here, only words about a lamp.\n"), "no chart"),
    ("typed.csv", lambda path: _written(path, b"chart,slots,parameter\n,x,dimmer\n"), "whole number"),
]


@pytest.mark.parametrize(("name", "make", "told"), BAD, ids=[name for name, _, _ in BAD])
def test_a_file_that_cannot_be_read_is_one_line_and_nothing_written(
    modebook: Program, tmp_path: Path, name: str, make: Any, told: str
) -> None:
    """Status 2, one line with file and remedy, and neither draft nor report nor a piece of one."""
    path = make(tmp_path / name)
    out = tmp_path / "out"
    out.mkdir()
    run = modebook("draft", path, "-o", out / "a.json", "--report", out / "a.html")
    assert run.status == 2
    assert told in run.err
    assert name in run.err
    assert _message(run).count("\n") == 1
    assert run.out == ""
    assert list(out.iterdir()) == []


def _message(run: Run) -> str:
    """Standard error without the progress."""
    return "".join(line for line in run.err.splitlines(True) if not line.startswith("reading page"))


def test_of_2000_pages_only_the_asked_ones_are_read(modebook: Program, tmp_path: Path) -> None:
    """And each is told of as it is read."""
    path = simple_pdf(tmp_path / "long.pdf", 2000)
    run = modebook("draft", path, "--pages", "1990-1991")
    assert run.err.splitlines()[:2] == [
        "reading page 1990 (1 of 2) ...",
        "reading page 1991 (2 of 2) ...",
    ]
    assert run.status == 2
    assert len(run.err.splitlines()) == 3


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--category", "moving yoek"), "moving yoke"),
        (("--maker", " "), "--maker is empty"),
        (("--pages", "4-2"), "smaller page first"),
        (("--pages", "9"), "has 3 pages"),
        (("--json", "--interactive"), "one of the two"),
        (("--interactive",), "name it with -o"),
    ],
)
def test_bad_usage_is_told_with_what_would_be_right(
    modebook: Program, words: tuple[str, ...], told: str
) -> None:
    """Status 2, no traceback."""
    run = modebook("draft", DEMO, *words)
    assert run.status == 2
    assert told in " ".join(run.err.split())
    assert "Traceback" not in run.err
