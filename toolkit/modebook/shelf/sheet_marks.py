"""What a sheet shows beside a cell's value: percent signs, errors, formulas whose result was not saved."""

from __future__ import annotations

import posixpath
import re
import zipfile
from collections.abc import Callable
from dataclasses import dataclass, field

from modebook.shelf.sheet_xml import Handler, cell_place

Marks = dict[tuple[int, int], str]
"""By row and column, from 0: ``%``, or the text that the cell shows in place of a value."""
Parse = Callable[[zipfile.ZipFile, str, Handler], None]

_PERCENT_FORMATS = frozenset({9, 10})  # ECMA-376, part 1, 18.8.30: 0% and 0.00%
UNWORKED = "formula without a saved result"
"""Shown for a formula that no program has worked out; the formula itself is never passed on."""
_QUOTED = re.compile(r'"[^"]*"|\\.|\[[^\]]*\]')


@dataclass
class Styles(Handler):
    """Which cell formats show percent (ECMA-376, part 1, 18.8.10 and 18.8.30)."""

    percent: set[int] = field(default_factory=lambda: set(_PERCENT_FORMATS))
    formats: list[bool] = field(default_factory=list)
    inside: bool = False

    def start(self, name: str, attributes: dict[str, str]) -> None:
        """A number format, or a format of cells."""
        if name == "numFmt" and "%" in _QUOTED.sub("", attributes.get("formatCode", "")):
            self.percent.add(_number(attributes.get("numFmtId")))
        elif name == "cellXfs":
            self.inside = True
        elif name == "xf" and self.inside:
            self.formats.append(_number(attributes.get("numFmtId")) in self.percent)

    def end(self, name: str) -> None:
        """The formats of cells are over."""
        if name == "cellXfs":
            self.inside = False


@dataclass
class XlsxMarks(Handler):
    """The marks of one worksheet."""

    formats: list[bool]
    marks: Marks = field(default_factory=dict)
    at: tuple[int, int] = (-1, -1)
    row: int = -1
    kind: str = ""
    percent: bool = False
    part: str = ""
    texts: dict[str, str] = field(default_factory=dict)

    def start(self, name: str, attributes: dict[str, str]) -> None:
        """A row, a cell, its formula or its value."""
        if name == "row":
            told = _number(attributes.get("r"))
            self.row = told - 1 if told > 0 else self.row + 1
            self.at = (self.row, -1)
        elif name == "c":
            self.at = cell_place(attributes.get("r", "")) or (self.row, self.at[1] + 1)
            self.kind, self.texts = attributes.get("t", "n"), {}
            style = _number(attributes.get("s"))
            self.percent = 0 <= style < len(self.formats) and self.formats[style]
        elif name in ("v", "f"):
            self.part = name
            self.texts[name] = ""

    def text(self, data: str) -> None:
        """Part of a formula or value."""
        if self.part:
            self.texts[self.part] += data

    def end(self, name: str) -> None:
        """A cell is over."""
        if name in ("v", "f"):
            self.part = ""
        elif name == "c":
            value = self.texts.get("v", "").strip()
            if self.kind == "e":
                self.marks[self.at] = value or "#N/A"
            elif not value and "f" in self.texts:
                self.marks[self.at] = UNWORKED
            elif self.percent and self.kind == "n" and value:
                self.marks[self.at] = "%"


def xlsx_marks(archive: zipfile.ZipFile, parse: Parse) -> dict[str, Marks]:
    """The marks of each worksheet, by its name."""
    names = {name.casefold(): name for name in archive.namelist()}
    book, links, styles = _Book(), _Links(), Styles()
    for part, handler in (
        ("xl/workbook.xml", book),
        ("xl/_rels/workbook.xml.rels", links),
        ("xl/styles.xml", styles),
    ):
        if part in names:
            parse(archive, names[part], handler)
    found: dict[str, Marks] = {}
    for title, link in book.sheets:
        target = posixpath.normpath(posixpath.join("/xl", links.targets.get(link, ""))).lstrip("/")
        if target.casefold() in names:
            marks = XlsxMarks(styles.formats)
            parse(archive, names[target.casefold()], marks)
            found[title] = marks.marks
    return found


@dataclass
class _Book(Handler):
    sheets: list[tuple[str, str]] = field(default_factory=list)

    def start(self, name: str, attributes: dict[str, str]) -> None:
        if name == "sheet":
            self.sheets.append((attributes.get("name", ""), attributes.get("id", "")))


@dataclass
class _Links(Handler):
    targets: dict[str, str] = field(default_factory=dict)

    def start(self, name: str, attributes: dict[str, str]) -> None:
        if name == "Relationship":
            self.targets[attributes.get("Id", "")] = attributes.get("Target", "")


def _number(text: str | None) -> int:
    return int(text) if text and text.isascii() and text.isdigit() and len(text) < 10 else -1
