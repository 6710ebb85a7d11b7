"""Reads plain text pasted from a viewer: columns by tabs or by white space, lines where there are none."""

from __future__ import annotations

import itertools
import re
from dataclasses import replace

from modebook.intake.errors import IntakeError
from modebook.intake.grid import Item, Leaf, Line, Place, Source, grid_of
from modebook.intake.names import read_name
from modebook.intake.readers.aligned import items_of
from modebook.intake.readers.pieces import AlignedLine, Piece
from modebook.intake.readers.ragged import ragged_items
from modebook.intake.readers.sides import stretches
from modebook.intake.titles import is_title_row

_PIECE = re.compile(r"\S+(?: \S+)*")
_DRAWN = re.compile(r"\s*[├└┌╞╘╒╟╚╔╠┝┕┍┠┗┏┣─═━┄╌│┃║┬┼┴╪╧╤╫╨╥╬╩╦╋┻┳┐┤┘╗╣╝┓┫┛╡╛╕]{3,}\s*")
"""A line of a table that is drawn with letters made for it."""
_RULE = re.compile(r"\s*[+|]?[-=]{2,}(?:[+|][-=]{2,})+[+|]?\s*")
"""A line that is drawn between the rows of a table with plus and minus signs."""
_LEADERS = re.compile(r"(?<=\S)\s(?:\.{4,}|(?:\.\s){3,}\.)\s(?=\s*\S)")
"""Dots that lead the eye from one column to the next."""
_BARS = str.maketrans("│┃║", "|||")
_PAGE = re.compile(
    r"(?:^|\s)(?:page|seite|página|pagina|pág\.|pag\.)\s*\d{1,4}(?:\s*(?:/|of|von|de|di|sur)\s*\d{1,4})?\s*(?:$|\s{2})",
    re.IGNORECASE,
)
_NUMBER = re.compile(r"\s*(?:([-–—])\s*\d{1,4}\s*\1|\d{1,4}\s+(?:of|von)\s+\d{1,4})\s*", re.IGNORECASE)
"""A page's number between dashes, or of so many."""
_LAST = re.compile(r"\n[ \t]*\d{1,4}[ \t]*\n*(?=\f)|\n[ \t]*\n[ \t]*\d{1,4}\s*\Z")
"""A number alone at the end of a page, or below an empty line at the end of the text: the page's."""
_FOOT = re.compile(r"(?P<text>[^\W\d]\S*(?: \S+){2,}?) (?P<n>\d{1,3})")
"""A foot without the word page: the manual's title and a number."""
_RIGHT = re.compile(
    r"^\s*\S.*\S\s{4,}(?:page|seite|página|pagina|pág\.|pag\.|p\.|s\.)\s*\d{1,4}\s*$", re.IGNORECASE
)
_PAGE_LINES = 10
MOST_LINES = 50_000
_GUTTER = 2.0  # letters


def read_text(text: str, name: str) -> Source:
    """A text as lines and grids; rows are its line numbers. Raises IntakeError for a text without words."""
    if not text.strip():
        raise IntakeError(name, "the text is empty", remedy="paste the chart, with its column titles")
    whole = text.replace("\r\n", "\n").replace("\r", "\n")
    lines = _LAST.sub(lambda found: "\n" * found[0].count("\n"), whole).replace("\f", "\n").split("\n")
    drawn = [*lines, ""]
    lines = ["" if _DRAWN.fullmatch(line) else line.translate(_BARS) for line in lines]
    if len(lines) > MOST_LINES:
        raise IntakeError(
            name, f"has more than {MOST_LINES} lines", remedy="keep only the pages of the chart"
        )
    lines = [_LEADERS.sub(lambda dots: " " * len(dots[0]), line) for line in _without_page_lines(lines)]
    items: list[Item] = []
    block: list[tuple[int, str]] = []
    kind = ""
    for number, line in enumerate([*lines, ""], start=1):
        if kind == "bars" and _RULE.fullmatch(line):
            continue
        now = "tabs" if "\t" in line.rstrip() else ("bars" if line.count("|") >= 2 else "spaces")
        if not line.strip():
            now = kind if kind == "spaces" else ""
            if kind == "bars" and _DRAWN.fullmatch(drawn[number - 1]):
                continue
        if now != kind and block:
            items.extend(_items(block, kind))
            block = []
        kind = now
        if line.strip() or kind == "spaces":
            block.append((number, line))
    items.extend(_items(block, kind) if block else [])
    return Source(name, "text", [Leaf(None, items)])


def _without_page_lines(lines: list[str]) -> list[str]:
    """The lines, blank where a running head or foot with the page's number stood (two of a form at least) or
    the number alone.
    """
    forms = [re.sub(r"\d+", "#", line.strip()) if _PAGE.search(line) else "" for line in lines]
    for form, places in _feet(lines).items():
        for place in places:
            forms[place] = form
    for place in _turned(lines):
        forms[place] = "turned"
    return [
        "" if _NUMBER.fullmatch(line) or _is_page(line) or (form and forms.count(form) > 1) else line
        for form, line in zip(forms, lines, strict=True)
    ]


def _is_page(line: str) -> bool:
    """Whether a line is a page's number after the word for it, and nothing else."""
    found = _PAGE.fullmatch(line.strip())
    return found is not None and line.strip()[:1].isupper()


def _feet(lines: list[str]) -> dict[str, list[int]]:
    """Where lines stand that are one text with numbers that count up by one, each above an empty line and
    far from the next: the feet of pages, written as titles are. A row or a name with its number is none.
    """
    found: dict[str, list[int]] = {}
    for index, line in enumerate(lines):
        foot = _FOOT.fullmatch(line.strip())
        last = index + 1 == len(lines) or not lines[index + 1].strip()
        titled = foot is not None and all(not w[0].islower() or len(w) < 4 for w in foot["text"].split())
        if foot and last and titled and not read_name(foot["text"]).sure:
            found.setdefault(foot["text"], []).append(index)
    return {text: places for text, places in found.items() if len(places) > 1 and _are_pages(lines, places)}


def _turned(lines: list[str]) -> list[int]:
    """Where a page is turned: lines whose page number stands far to the right of their words, and the heading
    that is said again below them.
    """
    found: list[int] = []
    for index, line in enumerate(lines):
        page = _RIGHT.search(line)
        if page is None or index == 0 or lines[index - 1].strip():
            continue
        found.append(index)
        below = next((n for n in range(index + 1, len(lines)) if lines[n].strip()), None)
        if below is not None and lines[below].strip() in (one.strip() for one in lines[:index]):
            titles = re.split(r"\s{2,}", lines[below].strip())
            found.extend([] if is_title_row(titles) > 1 else [below])
    return found if len(found) > 1 else []


def _are_pages(lines: list[str], places: list[int]) -> bool:
    numbers = [int(lines[place].split()[-1]) for place in places]
    counting = all(b == a + 1 for a, b in itertools.pairwise(numbers))
    return counting and all(b - a >= _PAGE_LINES for a, b in itertools.pairwise(places))


def _items(block: list[tuple[int, str]], kind: str) -> list[Item]:
    if kind == "tabs":
        rows = [[cell.strip() for cell in line.split("\t")] for _, line in block]
        return _grid(rows, block)
    if kind == "bars":
        kept = [(number, line) for number, line in block if not re.fullmatch(r"[\s|:+=-]+", line)]
        return _grid(_barred([line.strip("\n") for _, line in kept]), kept)
    aligned = []
    for number, line in block:
        if re.fullmatch(r"[\s=_+-]{4,}", line) and line.strip():
            continue
        wide = line.expandtabs(8)
        pieces = [Piece(m[0], m.start(), m.end(), _words(m)) for m in _PIECE.finditer(wide)]
        aligned.append(AlignedLine(pieces, Place(row=number)))
    found: list[Item] = []
    left = aligned
    while True:
        more, left = ragged_items(left)
        if not more:
            return [*found, *(item for part in _beside(left) for item in items_of(part, 1.0))]
        found.extend(more)


def _beside(lines: list[AlignedLine]) -> list[list[AlignedLine]]:
    """Lines in the order of reading: of charts that stand side by side first the left one's."""
    told = [[word for piece in line.pieces for word in piece.words] for line in lines]
    found: list[list[AlignedLine]] = []
    at = 0
    for start, end, gutter in stretches(told, _GUTTER):
        found.append(lines[at:start])
        for left in (True, False):
            found.append(
                [
                    replace(line, pieces=[p for p in line.pieces if (p.x0 < gutter) is left])
                    for line in lines[start:end]
                ]
            )
        at = end
    return [*found, lines[at:]]


def _barred(lines: list[str]) -> list[list[str]]:
    """The cells between bars; a bar at every line's beginning or end is the frame."""
    framed = all(line.lstrip().startswith("|") for line in lines)
    closed = all(line.rstrip().endswith("|") for line in lines)
    rows = []
    for line in lines:
        told = line.lstrip()[1:] if framed else line
        told = told.rstrip()[:-1] if closed else told
        rows.append([cell.strip() for cell in told.split("|")])
    return rows


def _words(piece: re.Match[str]) -> tuple[tuple[str, float, float], ...]:
    return tuple(
        (w[0], piece.start() + w.start(), piece.start() + w.end()) for w in re.finditer(r"\S+", piece[0])
    )


def _grid(rows: list[list[str]], block: list[tuple[int, str]]) -> list[Item]:
    if not rows:
        return []
    if max(len(row) for row in rows) < 2:
        return [Line(row[0], Place(row=number)) for row, (number, _) in zip(rows, block, strict=True)]
    grid = grid_of(rows)
    for cells, (number, _) in zip(grid.rows, block, strict=True):
        for cell in cells:
            cell.place = Place(row=number)
    return [grid]
