"""Finds charts without rules that stand side by side: what is over the left one is not over the right."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.grid import Place
from modebook.intake.readers.pieces import AlignedLine, Piece, Word, piece_of
from modebook.intake.readers.titled import title_pieces
from modebook.intake.titles import title_roles

Stretch = tuple[int, int, float]
"""The first of some lines, the line behind the last, and where across the page they are parted."""
_ROWS = 2  # rows of slots that bear a side out
_HEADINGS = 4  # lines that may stand over the titles


def stretches(lines: Sequence[Sequence[Word]], size: float) -> list[Stretch]:
    """Where two charts stand side by side in lines of words, from the top.

    Each has a line of titles that begins with one for slots, and a gutter parts all their lines. `size`: the
    height of letters, or the least width of a gutter in letters.
    """
    found: list[Stretch] = []
    edge = min((line[0][1] for line in lines if line), default=0.0)
    at = 0
    while at < len(lines):
        one = _beginning(lines, at, edge, size, found[-1][1] if found else 0)
        if one is not None:
            found.append(one)
        at = one[1] if one is not None else at + 1
    return found


def sides(line: Sequence[Word], gutter: float) -> tuple[list[Word], list[Word]]:
    """The words of a line left and right of a gutter."""
    return [word for word in line if word[1] < gutter], [word for word in line if word[1] >= gutter]


def _beginning(
    lines: Sequence[Sequence[Word]], index: int, edge: float, size: float, least: int
) -> Stretch | None:
    """The stretch whose right chart has its titles in a line."""
    pieces = _pieces(lines[index], 0.75 * size)
    for at, piece in enumerate(pieces):
        before = pieces[at - 1].x1 if at else edge
        if piece.x0 - before < size or not _begins(pieces[at:]):
            continue
        start, end, gutter = _stretch(lines, index, (before, piece.x0), size, least)
        parted = [sides(line, gutter) for line in lines[start:end]]
        titles = [_titles_of([one[side] for one in parted], size) for side in (0, 1)]
        tops = [top for top in titles if top is not None]
        if len(tops) == 2 and _same_kind(*(_pieces(parted[top][n], size)[0] for n, top in enumerate(tops))):
            return _below_others(lines, start, start + min(tops), gutter, size), end, gutter
    return None


def _pieces(line: Sequence[Word], gap: float) -> list[Piece]:
    runs: list[list[Word]] = []
    for word in line:
        if runs and word[1] - runs[-1][-1][2] <= gap:
            runs[-1].append(word)
        else:
            runs.append([word])
    return [piece_of(tuple(run)) for run in runs]


def _titles(pieces: list[Piece]) -> list[Piece] | None:
    return title_pieces(AlignedLine(pieces, Place())) if len(pieces) > 1 else None


def _begins(pieces: list[Piece]) -> bool:
    """Whether pieces are the titles of a chart, that of its slots first."""
    titles = _titles(pieces)
    if titles is None or title_roles(titles[0].text)[:1] != ("slot",):
        return False
    roles = {role for title in titles for role in title_roles(title.text)[:1]}
    return bool({"function", "meaning", "value"} & roles)


def _same_kind(left: Piece, right: Piece) -> bool:
    """Whether two first titles are of slots: `DMX` may title values, unless both charts begin so."""
    return "value" not in title_roles(right.text) or left.text.casefold() == right.text.casefold()


def _titles_of(lines: list[list[Word]], size: float) -> int | None:
    """Which of some lines has the titles of a chart; None where no rows with slots stand below it."""
    rows = [_pieces(line, 0.75 * size) for line in lines]
    titled = next((index for index, pieces in enumerate(rows) if pieces and _begins(pieces)), None)
    if titled is None:
        return None
    slots = sum(bool(p) and read_slot_cell(p[0].text).kind == "slots" for p in rows[titled + 1 :])
    return titled if slots >= _ROWS else None


def _stretch(
    lines: Sequence[Sequence[Word]], index: int, gutter: tuple[float, float], size: float, least: int
) -> Stretch:
    """How far up and down from a line a gutter goes, and its middle; no titles over both sides are in it."""
    open_ = [gutter]
    ends = [index, index + 1]
    for way, numbers in ((1, range(index + 1, len(lines))), (0, range(index - 1, least - 1, -1))):
        for number in numbers:
            left = [part for part in _without(open_, lines[number]) if part[1] - part[0] >= size]
            if not left:
                break
            if _over_both(lines[number], (left[-1][0] + left[-1][1]) / 2, size):
                while way and ends[1] > index + 1 and len(_pieces(lines[ends[1] - 1], 0.75 * size)) < 2:
                    ends[1] -= 1  # its heading
                break
            open_ = left
            ends[way] = number + way
    low, high = max(open_, key=lambda part: part[1] - part[0])
    return ends[0], ends[1], (low + high) / 2


def _over_both(line: Sequence[Word], gutter: float, size: float) -> bool:
    """Whether a line is the titles of a table that goes over both sides."""
    if _titles(_pieces(line, 0.75 * size)) is None:
        return False
    parted = [_pieces(side, 0.75 * size) for side in sides(line, gutter) if side]
    return any(not _begins(side) and all(title_roles(piece.text) for piece in side) for side in parted)


def _below_others(
    lines: Sequence[Sequence[Word]], start: int, titles: int, gutter: float, size: float
) -> int:
    """Where the headings over the titles begin: lines with one text a side at most."""
    first = titles
    while first > max(start, titles - _HEADINGS):
        parted = sides(lines[first - 1], gutter)
        if any(len(_pieces(side, 0.75 * size)) > 1 for side in parted):
            break
        first -= 1
    return first


def _without(parts: list[tuple[float, float]], line: Sequence[Word]) -> list[tuple[float, float]]:
    """What words leave of stretches across the page."""
    for _, x0, x1 in line:
        cut: list[tuple[float, float]] = []
        for low, high in parts:
            if x1 <= low or x0 >= high:
                cut.append((low, high))
            else:
                cut.extend([(low, x0), (x1, high)])
        parts = [part for part in cut if part[1] > part[0]]
    return parts
