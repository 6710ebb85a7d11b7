"""Wrong and hostile files: one clear line each, with what would be right; nothing is run or written."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

import pytest

from modebook.intake.draft import draft, draft_text, page_numbers
from modebook.intake.errors import IntakeError
from support.pdfs import simple_pdf


def refused(path: Path, **more: object) -> IntakeError:
    """The error that a file gives; it is one line, and the folder holds nothing new afterward."""
    before = sorted(path.parent.iterdir())
    with pytest.raises(IntakeError) as caught:
        draft(path, **more)  # type: ignore[arg-type]
    assert "\n" not in str(caught.value)
    assert str(caught.value).startswith(str(path))
    assert caught.value.remedy
    assert sorted(path.parent.iterdir()) == before
    return caught.value


def test_a_scan_says_that_it_is_one_and_what_to_do(tmp_path: Path) -> None:
    error = refused(simple_pdf(tmp_path / "scan.pdf", text=False))
    assert "scan" in error.problem
    assert "text recognition" in error.remedy


def test_a_locked_pdf(tmp_path: Path) -> None:
    assert "password" in refused(simple_pdf(tmp_path / "locked.pdf", password="secret")).problem


@pytest.mark.parametrize("share", [0.1, 0.3, 0.5, 0.7, 0.9])
def test_a_pdf_cut_off_anywhere(share: float, tmp_path: Path) -> None:
    content = simple_pdf(tmp_path / "whole.pdf", 3).read_bytes()
    path = tmp_path / "cut.pdf"
    path.write_bytes(content[: int(len(content) * share)])
    refused(path)


def test_a_pdf_of_nothing_but_its_first_line(tmp_path: Path) -> None:
    path = tmp_path / "head.pdf"
    path.write_bytes(b"%PDF-1.7\n" + bytes(range(256)) * 40)
    assert "damaged" in refused(path).problem


def test_a_long_pdf_wants_pages_and_reads_only_those(tmp_path: Path) -> None:
    path = simple_pdf(tmp_path / "long.pdf", 2000)
    assert "2000 pages" in refused(path).problem
    told: list[str] = []
    with pytest.raises(IntakeError, match="no chart"):
        draft(path, pages="1990-1991", progress=told.append)
    assert told == ["page 1990 (1 of 2)", "page 1991 (2 of 2)"]


def test_pages_that_are_not_there(tmp_path: Path) -> None:
    assert "has 2 pages" in refused(simple_pdf(tmp_path / "two.pdf", 2), pages="3-4").problem


@pytest.mark.parametrize("pages", ["", "x", "4-2", "0", "1--2", "1-999999"])
def test_pages_that_are_none(pages: str) -> None:
    with pytest.raises(IntakeError):
        page_numbers(pages)


def test_pages_as_people_write_them() -> None:
    assert page_numbers("31-34, 40") == [31, 32, 33, 34, 40]


def test_a_zip_bomb_is_not_unpacked(tmp_path: Path) -> None:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("xl/workbook.xml", "<workbook/>")
        archive.writestr("xl/worksheets/sheet1.xml", b"0" * 300_000_000)
    path = tmp_path / "bomb.xlsx"
    path.write_bytes(out.getvalue())
    assert path.stat().st_size < 1_000_000
    assert "MB" in refused(path).problem


def test_a_zip_that_is_no_sheet(tmp_path: Path) -> None:
    with zipfile.ZipFile(tmp_path / "x.xlsx", "w") as archive:
        archive.writestr("hello.txt", "hello")
    assert "no sheet" in refused(tmp_path / "x.xlsx").problem


def test_a_workbook_with_macros_gives_its_values(tmp_path: Path) -> None:
    """The macro part stays a part of the file; only cells are read."""
    import openpyxl

    book = openpyxl.Workbook()
    for row in (("Channel", "Function", "Value"), ("1", "Dimmer", "0-255"), ("2", "Red", "0-255")):
        book.active.append(row)
    out = io.BytesIO()
    book.save(out)
    with zipfile.ZipFile(out, "a") as archive:
        archive.writestr("xl/vbaProject.bin", b"\xd0\xcf\x11\xe0" + bytes(200))
    path = tmp_path / "macro.xlsm"
    path.write_bytes(out.getvalue())
    assert [p.parameter for p in draft(path).document.modes[0].parameters] == ["dimmer", "red"]


def test_an_old_workbook_or_a_locked_one(tmp_path: Path) -> None:
    path = tmp_path / "old.xls"
    path.write_bytes(b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(600))
    assert "password" in refused(path).problem


def test_a_text_of_no_known_encoding(tmp_path: Path) -> None:
    path = tmp_path / "odd.txt"
    path.write_bytes(b"Slot Function\n1 Dimmer \x81\x8d\xff\n")
    assert "UTF-8" in refused(path).problem


def test_a_text_in_windows_encoding_is_read_and_said_to_be(tmp_path: Path) -> None:
    path = tmp_path / "old.txt"
    path.write_bytes("Kanal  Funktion\n1      Dimmer\n2      Grün\n".encode("cp1252"))
    read = draft(path)
    assert [p.parameter for p in read.document.modes[0].parameters] == ["dimmer", "green"]
    assert "Windows-1252" in read.notes[0]


@pytest.mark.parametrize(
    ("name", "content", "problem"),
    [
        ("empty.txt", b"", "empty"),
        ("blank.csv", b" \n \n", "empty"),
        ("photo.png", b"\x89PNG\r\n\x1a\n" + bytes(100), "picture"),
        ("null.txt", b"Slot\x00Function\n", "null"),
        ("quote.csv", b'Slot,Function\n1,"Dimmer\n', "never ends"),
        ("nothing.txt", b"There is no chart in here, only words about a lamp.\n", "no chart"),
        ("nothing.html", b"<html><body></body></html>", "no text"),
    ],
)
def test_other_files_that_are_no_charts(name: str, content: bytes, problem: str, tmp_path: Path) -> None:
    path = tmp_path / name
    path.write_bytes(content)
    assert problem in refused(path).problem


def test_a_file_that_is_missing_or_a_folder(tmp_path: Path) -> None:
    with pytest.raises(IntakeError, match="no such file"):
        draft(tmp_path / "missing.pdf")
    with pytest.raises(IntakeError, match="directory"):
        draft(tmp_path)


def test_pages_of_what_has_none(tmp_path: Path) -> None:
    path = tmp_path / "chart.txt"
    path.write_text("Slot  Function\n1     Dimmer\n", encoding="utf-8")
    assert "no pages" in refused(path, pages="1").problem


def test_a_text_without_end_is_refused() -> None:
    with pytest.raises(IntakeError, match="lines"):
        draft_text("1 Dimmer\n" * 60_000)


def test_deep_html_is_no_danger() -> None:
    page = "<table>" * 3000 + "<tr><td>1</td></tr>" + "</table>" * 3000
    with pytest.raises(IntakeError):
        draft_text(page)
