"""Finds the titles of a table: titles may stand below a heading, over two rows, or again on every page."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from modebook.shelf.table import fold_title

SEARCHED_ROWS = 40
"""How far down titles are looked for."""


@dataclass(frozen=True, slots=True)
class Header:
    """Where titles stand, and what they are."""

    index: int
    """Of its first row, among the rows given."""
    height: int
    """Rows that it takes: one or two."""
    titles: tuple[str, ...]
    score: int
    """How many different known titles are in it."""


def find_header(rows: Sequence[Sequence[str]], known: Collection[str], least: int = 2) -> Header | None:
    """The row, or two rows, with the most known titles; None where no row has `least` of them.

    `known` are titles as fold_title gives them. Of equals the first counts, and one row before two.
    """
    best: Header | None = None
    for index, row in enumerate(rows[:SEARCHED_ROWS]):
        single = tuple(cell.strip() for cell in row)
        for height, titles in ((1, single), (2, _joined(single, rows, index, known))):
            if titles is None:
                continue
            score = len({folded for folded in map(fold_title, titles) if folded in known})
            rank = (score, -height)
            if score >= least and (best is None or rank > (best.score, -best.height)):
                best = Header(index, height, titles, score)
    if best is None:
        return None
    last = max((i for i, title in enumerate(best.titles) if title), default=-1)
    return Header(best.index, best.height, best.titles[: last + 1], best.score)


def repeats_header(cells: Sequence[str], folded_titles: Sequence[str]) -> bool:
    """Whether a row says the titles again, as on a new page."""
    return any(cells) and all(map(_says, cells, folded_titles))


def _says(cell: str, folded_title: str) -> bool:
    return fold_title(cell) == folded_title


def _joined(
    upper: tuple[str, ...], rows: Sequence[Sequence[str]], index: int, known: Collection[str]
) -> tuple[str, ...] | None:
    """Two rows as one: for each column whichever is known of both together, the lower and the upper."""
    if index + 1 >= len(rows):
        return None
    lower = [cell.strip() for cell in rows[index + 1]]
    found: list[str] = []
    written = titles = 0
    for column in range(max(len(upper), len(lower))):
        above = upper[column] if column < len(upper) else ""
        below = lower[column] if column < len(lower) else ""
        both = f"{above} {below}".strip()
        choices = (both, below, above)
        found.append(next((choice for choice in choices if fold_title(choice) in known), both))
        if below:
            written += 1
            titles += found[-1] != above and fold_title(found[-1]) in known
    # A row of units may hold a word that is a title too; a row of titles holds hardly anything else.
    return tuple(found) if titles * 2 > written else None
