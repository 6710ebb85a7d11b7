"""Titles over two lines above modes side by side: the modes' names over `Slot` each, or under one `Slot`."""

from __future__ import annotations

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.headings import read_mode_head
from modebook.intake.names import read_name
from modebook.intake.readers.pieces import AlignedLine, Piece
from modebook.intake.titles import title_roles
from modebook.intake.values import read_values


def mode_titles(upper: AlignedLine, lower: AlignedLine, below: AlignedLine | None) -> list[Piece] | None:
    """A piece for each column, modes by their names; None where two lines are no such titles.

    below: the first line of the table, which must have a slot for some mode.
    """
    if below is None or not below.pieces or len(upper.pieces) < 2 or len(lower.pieces) < 2:
        return None
    if not any(read_slot_cell(piece.text).kind == "slots" for piece in below.pieces[: len(lower.pieces)]):
        return None
    if any(_is_body(piece.text) for line in (upper, lower) for piece in line.pieces):
        return None
    return _names_above(upper, lower) or _names_below(upper, lower)


def _is_body(text: str) -> bool:
    """Whether a text stands in rows of a table, not in its titles."""
    values = bool(read_values(text)) and not title_roles(text)
    return read_slot_cell(text).kind == "slots" or (values and read_mode_head(text) is None)


def _is_slot(piece: Piece) -> bool:
    return title_roles(piece.text)[:1] == ("slot",)


def _names_above(upper: AlignedLine, lower: AlignedLine) -> list[Piece] | None:
    """`Basic  Full  Function` over `Ch.  Ch.`: each of the lower titles under a name."""
    if not all(_is_slot(piece) for piece in lower.pieces):
        return None
    made: list[Piece] = []
    under = list(lower.pieces)
    for piece in upper.pieces:
        mine = [one for one in under if one.x0 < piece.x1 and piece.x0 < one.x1]
        if len(mine) > 1:
            return None
        if not mine:
            made.append(piece)
            continue
        under.remove(mine[0])
        made.append(Piece(piece.text, min(piece.x0, mine[0].x0), max(piece.x1, mine[0].x1), piece.words))
    known = [one for one in made if title_roles(one.text) and not _is_slot(one)]
    if under or not known or any(_is_slot(one) for one in made):
        return None
    return made


def _names_below(upper: AlignedLine, lower: AlignedLine) -> list[Piece] | None:
    """`Ch.  Function  Value` over `Basic  Full`: the lower names share the upper line's title for slots."""
    slots = [piece for piece in upper.pieces if _is_slot(piece)]
    if len(slots) != 1 or any(title_roles(piece.text) for piece in lower.pieces):
        return None
    at = upper.pieces.index(slots[0])
    others = [*upper.pieces[:at], *upper.pieces[at + 1 :]]
    if not others or not all(title_roles(piece.text) for piece in others):
        return None
    low = upper.pieces[at - 1].x1 if at else float("-inf")
    high = upper.pieces[at + 1].x0 if at + 1 < len(upper.pieces) else float("inf")
    if not all(low < piece.x0 and piece.x1 < high for piece in lower.pieces):
        return None
    named = [
        read_mode_head(piece.text) is not None or not read_name(piece.text).sure for piece in lower.pieces
    ]
    if not all(named):
        return None
    return sorted([*others, *lower.pieces], key=lambda piece: piece.x0)
