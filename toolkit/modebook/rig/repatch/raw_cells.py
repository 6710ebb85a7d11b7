"""A CSV's text cell by cell, with where each stands, so that one can be rewritten and no other byte."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

MARKS = ((b"\xef\xbb\xbf", "utf-8"), (b"\xff\xfe", "utf-16-le"), (b"\xfe\xff", "utf-16-be"))


@dataclass(frozen=True, slots=True)
class Cell:
    """A cell as it stands in the text: `start` and `end` include its quote marks."""

    start: int
    end: int
    quoted: bool


def unmarked(content: bytes, encoding: str) -> tuple[bytes, str, str]:
    """A file's byte order mark, its text without it, and the encoding that gives the same bytes again."""
    for mark, name in MARKS:
        if content.startswith(mark):
            return mark, content[len(mark) :].decode(name), name
    return b"", content.decode(encoding), encoding


def cells_by_line(text: str, delimiter: str) -> dict[int, list[Cell]]:
    """The cells of every row, by the line at which the row begins (from 1), read as the csv module does."""
    found: dict[int, list[Cell]] = {}
    at, line = 0, 1
    while at < len(text):
        row: list[Cell] = []
        begins = line
        while True:
            start = at
            quoted = text[at : at + 1] == '"'
            if quoted:
                at += 1
                while at < len(text):
                    if text[at] == '"':
                        if text[at + 1 : at + 2] != '"':
                            break
                        at += 1
                    elif _ends_line(text, at):
                        line += 1
                    at += 1
                at += 1
            while at < len(text) and text[at] not in (delimiter, "\r", "\n"):
                at += 1
            row.append(Cell(start, at, quoted))
            if at >= len(text) or text[at] != delimiter:
                break
            at += 1
        at += 2 if text[at : at + 2] == "\r\n" else 1
        line += 1
        found[begins] = row
    return found


def _ends_line(text: str, at: int) -> bool:
    return text[at] == "\n" or (text[at] == "\r" and text[at + 1 : at + 2] != "\n")


def content_of(text: str, cell: Cell) -> str:
    """What a cell says."""
    raw = text[cell.start : cell.end]
    if not cell.quoted:
        return raw
    close = raw.rindex('"')
    return raw[1:close].replace('""', '"') + raw[close + 1 :]


def with_cells(text: str, new: Mapping[Cell, str], delimiter: str) -> str:
    """The text with some cells saying something else; white space around them and quote marks stay."""
    parts: list[str] = []
    done = 0
    for cell in sorted(new, key=lambda one: one.start):
        parts += [text[done : cell.start], _written(text, cell, new[cell], delimiter)]
        done = cell.end
    return "".join([*parts, text[done:]])


def _written(text: str, cell: Cell, says: str, delimiter: str) -> str:
    before = content_of(text, cell)
    bare = before.strip()
    first = before.index(bare) if bare else 0
    whole = before[:first] + says + before[first + len(bare) :]
    if cell.quoted or any(sign in whole for sign in (delimiter, '"', "\r", "\n")):
        return '"' + whole.replace('"', '""') + '"'
    return whole
