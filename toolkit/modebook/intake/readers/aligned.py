"""Finds columns in lines by where their pieces stand: for pasted text and for unruled pages."""

from __future__ import annotations

import itertools

from modebook.intake.grid import Cell, Grid, Item, Line, Place
from modebook.intake.readers.pieces import AlignedLine, Piece, piece_of
from modebook.intake.readers.subrows import TextLine, split_row
from modebook.intake.readers.titled import is_heading, titled_table
from modebook.intake.titles import is_title_row


def items_of(lines: list[AlignedLine], gap: float) -> list[Item]:
    """Grids where neighboring lines share columns, lines everywhere else. `gap`: the least width of a
    gutter.
    """
    found: list[Item] = []
    block: list[AlignedLine] = []
    at = 0
    while at < len(lines):
        line = lines[at]
        table = titled_table(lines, at, gap) if len(line.pieces) > 0 else None
        if table is not None:
            found.extend(_blocks(block, gap) if block else [])
            block = []
            at, cells, columns = table
            found.append(_grid(cells, columns))
            continue
        at += 1
        if not line.pieces:
            if block and sum(len(one.pieces) > 1 for one in block) < 2:
                found.extend(_plain(block))
                block = []
            continue
        block.append(line)
    found.extend(_blocks(block, gap) if block else [])
    return found


def _plain(lines: list[AlignedLine]) -> list[Item]:
    return [
        Line(" ".join(p.text for p in line.pieces), line.place, tuple(p.text for p in line.pieces))
        for line in lines
    ]


def _blocks(lines: list[AlignedLine], gap: float) -> list[Item]:
    """Part lines into tables and text between them: a table is a stretch with common gutters."""
    found: list[Item] = []
    at = 0
    while at < len(lines):
        if len(lines[at].pieces) < 2:
            found.extend(_plain([lines[at]]))
            at += 1
            continue
        end, columns = _longest(lines, at, gap)
        if columns is None or end - at < 2:
            found.extend(_plain([lines[at]]))
            at += 1
            continue
        found.append(_grid(lines[at:end], columns))
        at = end
    return found


def _longest(
    lines: list[AlignedLine], start: int, gap: float
) -> tuple[int, list[tuple[float, float]] | None]:
    """The end of the table that begins at a line, and its columns."""
    end = start
    columns: list[tuple[float, float]] | None = None
    used: list[AlignedLine] = []
    singles = 0
    best = (start, None)  # type: tuple[int, list[tuple[float, float]] | None]
    while end < len(lines):
        line = lines[end]
        heading = len(line.pieces) == 1 and is_heading(line.pieces[0].text)
        if heading and columns is not None:
            break
        over = columns is not None and not _is_sentence(line) and _parted(line, columns, gap)
        if over and len(line.pieces) == 2:
            # It ran over a gutter: the columns are told by the lines that do not.
            end, singles = end + 1, 0
            best = (end, columns)
            continue
        if len(line.pieces) == 1:
            if columns is None or not _within_one(line.pieces[0], columns, gap):
                break
            singles += 1
            if singles > 12:
                break
            end += 1
            continue
        trial = [*used, line]
        made = _columns(trial, gap)
        if len(made) < 2 or (
            columns is not None and len(made) < len(columns) and len(made) < _fewest(used, made)
        ):
            break
        used, columns, singles = trial, made, 0
        end += 1
        best = (end, columns)
    if columns is not None and end > best[0]:
        best = (end, columns)
    return best


def _is_sentence(line: AlignedLine) -> bool:
    """Whether a line is a sentence without a wide gap: where a gutter runs through it, that is chance."""
    text = line.pieces[0].text if len(line.pieces) == 1 else ""
    return text[:1].isupper() and text.endswith(".") and len(text.split()) > 4


def _parted(line: AlignedLine, columns: list[tuple[float, float]], gap: float) -> bool:
    """Part pieces that run over a gutter with a narrow space in it, a full cell beside the next one; whether
    there were any.
    """
    made: list[Piece] = []
    if len(line.pieces) >= len(columns):
        return False  # a cell for each column is there: a long one only reaches over the next
    for piece in line.pieces:
        over = [column for column in columns if piece.x0 < column[1] and column[0] < piece.x1]
        cut = None
        if len(over) == 2 and piece.words:
            cut = next(
                (i for i, (_, x0, _) in enumerate(piece.words) if i and abs(x0 - over[1][0]) <= gap), None
            )
        if cut is None:
            made.append(piece)
            continue
        for words in (piece.words[:cut], piece.words[cut:]):
            made.append(piece_of(words))
    parted = len(made) > len(line.pieces)
    line.pieces = made
    return parted


def _fewest(lines: list[AlignedLine], made: list[tuple[float, float]]) -> int:
    """How many columns the lines so far need: the most pieces in one line."""
    return max((len(line.pieces) for line in lines), default=0)


def _columns(lines: list[AlignedLine], gap: float) -> list[tuple[float, float]]:
    """The columns of lines: pieces that overlap across lines belong together."""
    spans = sorted((piece.x0, piece.x1) for line in lines for piece in line.pieces)
    columns: list[list[float]] = []
    for x0, x1 in spans:
        if columns and x0 < columns[-1][1] + gap * 0.5:
            columns[-1][1] = max(columns[-1][1], x1)
        else:
            columns.append([x0, x1])
    return [(a, b) for a, b in columns]


def _within_one(piece: Piece, columns: list[tuple[float, float]], gap: float) -> bool:
    """Whether a lone piece is a cell of one column: it overlaps no second one."""
    touched = [i for i, (a, b) in enumerate(columns) if piece.x0 < b + gap * 0.5 and piece.x1 > a - gap * 0.5]
    if len(touched) != 1:
        return False
    index = touched[0]
    if index == 0 and any(letter.isalpha() for letter in piece.text):
        # Words at the left edge are a heading, unless the first column holds words that long.
        return piece.x1 <= columns[0][1] and len(piece.text) < 3
    return True


def _grid(lines: list[AlignedLine], columns: list[tuple[float, float]]) -> Grid:
    rows: list[list[Cell]] = []
    for group in _apart(_groups(lines)):
        cells: list[list[TextLine]] = [[] for _ in columns]
        for line in group:
            texts: list[list[str]] = [[] for _ in columns]
            for piece in line.pieces:
                texts[_column(piece, columns)].append(piece.text)
            for column, pieces in enumerate(texts):
                if pieces:
                    cells[column].append(TextLine(" ".join(pieces), line.middle))
        place = group[0].place
        if place.box is not None and len(group) > 1:
            boxes = [line.place.box for line in group if line.place.box is not None]
            box = (
                min(b[0] for b in boxes),
                min(b[1] for b in boxes),
                max(b[2] for b in boxes),
                max(b[3] for b in boxes),
            )
            place = Place(place.page, place.sheet, place.table, place.row, box)
        for made in (
            split_row(cells) if len(group) > 1 else [[" ".join(t.text for t in cell) for cell in cells]]
        ):
            rows.append([Cell(text, place, len(rows), column) for column, text in enumerate(made)])
    if len(rows) == len(lines):
        _mark_wraps(rows, lines, columns)
    return Grid(rows, lines[0].place, ruled=False)


def _mark_wraps(rows: list[list[Cell]], lines: list[AlignedLine], columns: list[tuple[float, float]]) -> None:
    """Say of each cell whether it may go on with the one above: only a line that was full is broken."""
    last: list[float | None] = [None] * len(columns)
    for row, line in zip(rows, lines, strict=True):
        by_column: dict[int, list[Piece]] = {}
        for piece in line.pieces:
            by_column.setdefault(_column(piece, columns), []).append(piece)
        for column, pieces in by_column.items():
            right = last[column]
            if right is not None:
                first = (
                    pieces[0].words[0] if pieces[0].words else (pieces[0].text, pieces[0].x0, pieces[0].x1)
                )
                letter = (first[2] - first[1]) / max(1, len(first[0]))
                needed = right + letter + (first[2] - first[1])
                row[column].wraps = needed > columns[column][1] - 0.5 * letter
            last[column] = pieces[-1].x1


def _apart(groups: list[list[AlignedLine]]) -> list[list[AlignedLine]]:
    """Groups without the lines of titles among them, which are rows of their own."""
    found: list[list[AlignedLine]] = []
    for group in groups:
        rest: list[AlignedLine] = []
        for line in group:
            if len(group) > 1 and is_title_row([piece.text for piece in line.pieces]) > 1:
                found.extend([rest] if rest else [])
                found.append([line])
                rest = []
            else:
                rest.append(line)
        found.extend([rest] if rest else [])
    return found


def _groups(lines: list[AlignedLine]) -> list[list[AlignedLine]]:
    """Lines that are one row; the label of a merged cell, between two of its rows, is a row of its own."""
    labels = _labels(lines)
    if not labels:
        return _rows(lines)
    found: list[list[AlignedLine]] = []
    rows = _rows([line for index, line in enumerate(lines) if index not in labels])
    left = [lines[index] for index in sorted(labels)]
    for row in rows:
        while left and left[0].middle < row[-1].middle:
            found.append([left.pop(0)])
        found.append(row)
    return [*found, *([line] for line in left)]


def _labels(lines: list[AlignedLine]) -> set[int]:
    """The lines of one piece, left of all others, that stand halfway between two rows of several pieces,
    which are no further apart than other rows are.
    """
    steps = sorted(
        b.middle - a.middle
        for a, b in itertools.pairwise(lines)
        if len(a.pieces) > 1 and len(b.pieces) > 1 and b.middle > a.middle
    )
    if len(steps) < 3:
        return set()
    usual = steps[len(steps) // 2]
    return {
        index
        for index, line in enumerate(lines[1:-1], start=1)
        if len(line.pieces) == 1
        and all(len(lines[beside].pieces) > 1 for beside in (index - 1, index + 1))
        and all(line.pieces[0].x1 <= lines[beside].pieces[0].x0 for beside in (index - 1, index + 1))
        and lines[index + 1].middle - lines[index - 1].middle <= 1.25 * usual
    }


def _rows(lines: list[AlignedLine]) -> list[list[AlignedLine]]:
    """Lines that are one row: between two rules, on one stripe, or closer to each other than rows are."""
    banded = [line.band for line in lines if line.band is not None]
    if len(set(banded)) > 0.4 * len(lines) and len(banded) == len(lines) and len(set(banded)) > 2:
        by_band: list[list[AlignedLine]] = []
        for line in lines:
            if by_band and by_band[-1][0].band == line.band:
                by_band[-1].append(line)
            else:
                by_band.append([line])
        return by_band
    steps = [round(b.middle - a.middle, 1) for a, b in itertools.pairwise(lines)]
    if len(steps) < 4 or min(steps) <= 0:
        return [[line] for line in lines]
    least, most = min(steps), sorted(steps)[int(0.8 * (len(steps) - 1))]
    if most < 1.3 * least:
        return [[line] for line in lines]
    limit = (least + most) / 2
    near = sum(step < limit for step in steps)
    between = sum(0.85 * limit < step < 1.15 * limit for step in steps)
    if between > 0.1 * len(steps) or near > 0.75 * len(steps):
        return [[line] for line in lines]
    found = [[lines[0]]]
    for step, line in zip(steps, lines[1:], strict=True):
        if step < limit:
            found[-1].append(line)
        else:
            found.append([line])
    return found


def _column(piece: Piece, columns: list[tuple[float, float]]) -> int:
    def overlap(span: tuple[float, float]) -> float:
        return min(piece.x1, span[1]) - max(piece.x0, span[0])

    return max(range(len(columns)), key=lambda index: overlap(columns[index]))
