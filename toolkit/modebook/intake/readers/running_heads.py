"""Takes running heads, feet and page numbers off PDF pages, before their words can become rows."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import Any

from modebook.intake.headings import read_mode_head, read_slot_head
from modebook.intake.readers.pdf_page import Word, grouped
from modebook.intake.titles import is_title_row

_MARGIN = 0.11
"""The share of a page's height, at its top and bottom, in which running heads stand."""
_PAGE_NUMBER = re.compile(
    r"(?:(?:page|seite|pagina|página|p\.?|s\.)\s*)?[-–]?\s*\d{1,4}\s*[-–]?(?:\s*(?:/|of|von|de|di|sur)\s*\d{1,4})?",
    re.IGNORECASE,
)
_ENDS_IN_PAGE = re.compile(r"\b(?:page|seite|pagina|página|pág\.|pag\.)\s*\d{1,4}$", re.IGNORECASE)
Page = tuple[Any, list[Word]]


def without_running_heads(pages: Iterable[Page]) -> Iterator[Page]:
    """Pages with their words, less the lines at top and bottom that a neighboring page has at the same
    height with other numbers at most, and less lone page numbers.
    """
    before: set[tuple[str, int]] = set()
    held: Page | None = None
    for page, words in pages:
        mine = _keys(page, words)
        if held is not None:
            yield held[0], _without(held[0], held[1], before | mine)
            before = _keys(*held)
        held = (page, words)
    if held is not None:
        yield held[0], _without(held[0], held[1], before)


def _edges(page: Any, words: list[Word]) -> list[list[Word]]:
    height = float(page.height)
    top, bottom = _MARGIN * height, (1 - _MARGIN) * height
    lines = grouped([w for w in words if w["bottom"] < top or w["top"] > bottom])
    return [line for line in lines if not _is_chart(line)]


def _is_chart(line: list[Word]) -> bool:
    text = _text(line)
    return (
        read_mode_head(text) is not None
        or read_slot_head(text) is not None
        or is_title_row([word["text"] for word in line]) > 1
    )


def _text(line: list[Word]) -> str:
    return " ".join(str(word["text"]) for word in line)


def _key(line: list[Word]) -> tuple[str, int]:
    return re.sub(r"\d+", "#", _text(line)), round(float(line[0]["top"]) / 4)


def _keys(page: Any, words: list[Word]) -> set[tuple[str, int]]:
    return {_key(line) for line in _edges(page, words)}


def _without(page: Any, words: list[Word], others: set[tuple[str, int]]) -> list[Word]:
    gone: set[int] = set()
    for line in _edges(page, words):
        text, height = _key(line)
        repeated = any((text, near) in others for near in (height - 1, height, height + 1))
        if (repeated and _stands_apart(line, words)) or _is_page_number(page, line, words):
            gone.update(id(word) for word in line)
    return [word for word in words if id(word) not in gone]


def _stands_apart(line: list[Word], words: list[Word]) -> bool:
    """Whether white space parts a line from the page's text: the first row of a table on two pages does
    not.
    """
    return _gap(line, words) > 0.9 or not any(word["text"][:1].isdigit() for word in line[:1])


def _is_page_number(page: Any, line: list[Word], words: list[Word]) -> bool:
    """Whether a line is a page number alone, or ends in this page's number far below the text."""
    text = _text(line)
    if _PAGE_NUMBER.fullmatch(text.strip()):
        return _gap(line, words) > 1.0
    number = str(page.page_number)
    # Pages taken out of a manual keep the numbers that they had in it.
    ends = text.split()[-1] == number or _ENDS_IN_PAGE.search(text) is not None
    return ends and len(text) < 80 and _gap(line, words) > 2.0


def _gap(line: list[Word], words: list[Word]) -> float:
    """White space between a line and the nearest other line, in sizes of its letters."""
    top, bottom = min(w["top"] for w in line), max(w["bottom"] for w in line)
    size = max(bottom - top, 1.0)
    mine = {id(word) for word in line}
    gaps = [
        max(float(w["top"]) - bottom, top - float(w["bottom"]))
        for w in words
        if id(w) not in mine and (w["bottom"] <= top + 0.5 * size or w["top"] >= bottom - 0.5 * size)
    ]
    return float(min(gaps, default=1000.0) / size)
