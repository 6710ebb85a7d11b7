"""Opens any chart: finds out by the first bytes what a file is, and hands it to its reader."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from pathlib import Path

from modebook.intake.errors import IntakeError
from modebook.intake.grid import Source

Progress = Callable[[str], None]
_OLD_OFFICE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
_MOST_BYTES = 64_000_000
_CHART_SHEET = re.compile(rb'^"?chart"?[,;\t]"?slots"?[,;\t]', re.MULTILINE)
"""A chart sheet of ours, which a person may pipe in or save under any name."""


def open_chart(
    path: Path | str, pages: Sequence[int] | None = None, progress: Progress | None = None
) -> Source:
    """What a file holds, as lines and grids. Raises IntakeError with file, place and remedy."""
    file = Path(path)
    try:
        with file.open("rb") as handle:
            head = handle.read(2048)
            if b"%PDF" not in head[:1024]:
                content = head + handle.read(_MOST_BYTES + 1 - len(head))
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise IntakeError(path, reason, remedy="name a file that can be read") from error
    if b"%PDF" in head[:1024]:
        from modebook.intake.readers.pdf import read_pdf

        return read_pdf(file, pages, progress)
    if pages is not None:
        raise IntakeError(
            path, "has no pages to choose from", remedy="leave the pages out: they are for PDF files"
        )
    if len(content) > _MOST_BYTES:
        raise IntakeError(path, f"is larger than {_MOST_BYTES / 1e6:.0f} MB", remedy="keep only the chart")
    return from_bytes(content, str(path), file.suffix.casefold())


def from_bytes(content: bytes, name: str, ending: str = "") -> Source:
    """As open_chart, for bytes at hand that are no PDF; the file's ending decides between CSV and text."""
    if not content.strip():
        raise IntakeError(name, "the file is empty", remedy="give a chart: PDF, XLSX, ODS, CSV, HTML or text")
    if content.startswith(_OLD_OFFICE):
        raise IntakeError(
            name,
            "is locked with a password, or of the old XLS kind",
            remedy="save it as XLSX, ODS or CSV, unlocked",
        )
    if content.startswith(b"PK\x03\x04"):
        from modebook.intake.readers.sheet import read_sheet

        return read_sheet(content, name)
    if content.startswith((b"\x89PNG", b"\xff\xd8\xff", b"GIF8", b"II*\x00", b"MM\x00*", b"RIFF")):
        raise IntakeError(
            name, "is a picture", remedy="give a PDF with text, or type it into a blank chart sheet"
        )
    start = content[:2048].lstrip().lower()
    if start.startswith((b"<!doctype html", b"<html", b"<?xml", b"<table", b"<!--")) or ending in (
        ".html",
        ".htm",
        ".xhtml",
    ):
        from modebook.intake.readers.html import read_html

        return read_html(content, name)
    if ending in (".csv", ".tsv") or _CHART_SHEET.search(content):
        from modebook.intake.readers.sheet import read_sheet

        return read_sheet(content, name)
    from modebook.shelf.delimited import decoded
    from modebook.shelf.errors import ShelfError

    try:
        text, _, notes = decoded(content, name)
    except ShelfError as error:
        remedy = (error.remedy or "").replace("as CSV ", "")
        raise IntakeError(error.file, error.problem, place=error.place, remedy=remedy) from error
    return from_text(text, name, notes)


def from_text(text: str, name: str = "the pasted text", notes: Sequence[str] = ()) -> Source:
    """A text as lines and grids; a text that is CSV is read as such."""
    from modebook.intake.readers.text import read_text

    if text.lstrip()[:1] == "<" and "<table" in text[:200_000].casefold():
        from modebook.intake.readers.html import read_html

        return read_html(text.encode(), name)
    if _is_csv(text):
        from modebook.intake.readers.sheet import read_sheet

        return read_sheet(text.encode(), name)
    source = read_text(text, name)
    source.notes.extend(notes)
    return source


def _is_csv(text: str) -> bool:
    """Whether most lines have the same number, two or more, of semicolons or of commas without spaces."""
    # A comma within quotes parts no cells.
    lines = [re.sub(r'"[^"]*"', '""', line) for line in text.splitlines()[:60] if line.strip()]
    if len(lines) < 3 or any("\t" in line for line in lines):
        return False
    for sign in (";", ","):
        counts = [line.count(sign) for line in lines]
        usual = max(set(counts), key=counts.count)
        spaced = sum(line.count(sign + " ") for line in lines)
        if usual >= 1 and counts.count(usual) >= 0.7 * len(lines) and spaced < 0.3 * sum(counts):
            return True
    return False
