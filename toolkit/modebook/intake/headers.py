"""Finds the row of titles of a grid, and parts grids whose titles stand twice side by side."""

from __future__ import annotations

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.column_stats import stats_of, texts_of
from modebook.intake.grid import Cell, Grid
from modebook.intake.headings import read_mode_head
from modebook.intake.names import read_name
from modebook.intake.titles import is_title_row, title_roles
from modebook.intake.values import read_values

_SEARCHED = 15


def find_header(grid: Grid) -> tuple[int, int] | None:
    """Index and height of the row of titles, or None."""
    for index, row in enumerate(grid.rows[:_SEARCHED]):
        if not is_title_row(texts_of(row)) and not _titles_modes(grid, index):
            continue
        height = 1
        if index + 1 < len(grid.rows) and (
            _is_second(row, grid.rows[index + 1]) or _over_slots(grid, index + 1)
        ):
            height = 2
        return index, height
    return _unknown_header(grid)


def joined_titles(grid: Grid) -> Grid:
    """The grid with titles that go over two rows in one: `Exten` above `ded`, `6` above `channels`."""
    header = find_header(grid)
    if header is None:
        return grid
    rows = list(grid.rows)
    first = header[0] + 1
    if first + 1 < len(rows) and _are_numbered(rows[first], rows[first + 1]):
        rows[first : first + 2] = [_joined(rows[first], rows[first + 1])]
        return Grid(rows, grid.place, grid.ruled)
    if header[1] == 2 and _are_stacked(rows[first - 1], rows[first]):
        rows[first - 1 : first + 1] = [_joined(rows[first - 1], rows[first])]
        return Grid(rows, grid.place, grid.ruled)
    lone = [cell for cell in rows[first] if cell.flat] if first < len(rows) else []
    if len(lone) == 1 and _is_band(lone[0], rows[first + 1 :]):
        return grid
    if header[1] == 1 and first + 1 < len(rows) and _goes_on(rows[first - 1], rows[first], rows[first + 1]):
        rows[first - 1 : first + 1] = [_joined(rows[first - 1], rows[first])]
        return Grid(rows, grid.place, grid.ruled)
    return grid


def _are_numbered(numbers: list[Cell], words: list[Cell]) -> bool:
    """Whether a row of numbers stands over a row of one word for slots: the footprints of modes."""
    over = [cell.column for cell in numbers if cell.flat]
    under = [cell.column for cell in words if cell.flat]
    return (
        len(over) > 1
        and over == under
        and all(numbers[c].flat.isdigit() and title_roles(words[c].flat)[:1] == ("slot",) for c in over)
    )


def _are_stacked(upper: list[Cell], lower: list[Cell]) -> bool:
    """Whether each word of a second row of titles ends a title of its own above: `Basic` over `mode`.

    A title for slots above many, or one title over several columns, rules them and does not begin them.
    """
    columns = [cell.column for cell in lower if cell.flat]
    over = [upper[c].flat for c in columns if c < len(upper) and upper[c].span == 1]
    if len(over) != len(columns) or not all(over) or len(set(over)) != len(over):
        return False
    if any(title_roles(text)[:1] == ("slot",) for text in over):
        return False
    return all(
        _is_cut(text, lower[c].flat) or read_mode_head(f"{text} {lower[c].flat}") is not None
        for text, c in zip(over, columns, strict=True)
    )


def _is_cut(text: str, below: str) -> bool:
    """Whether a narrow column may have cut a word in two: `Exten` over `ded`."""
    return below[:1].islower() and len(text.split()) == 1 and not title_roles(text) and not title_roles(below)


def _goes_on(titles: list[Cell], row: list[Cell], body: list[Cell]) -> bool:
    """Whether a row under the titles holds nothing but the rest of them."""
    filled = [cell for cell in row if cell.flat]
    if not filled or any(cell.column >= len(titles) or not titles[cell.column].flat for cell in filled):
        return False
    if _names_first_mode(titles, filled):
        return False
    if any(c.flat[0].isdigit() or read_slot_cell(c.flat).kind != "text" for c in filled):
        return False
    if any(read_values(c.flat) or len(c.flat) > 16 for c in filled):
        return False
    if any(read_name(cell.flat).sure or title_roles(cell.flat)[:1] == ("slot",) for cell in filled):
        return False
    return any(read_slot_cell(cell.flat).kind == "slots" for cell in body if cell.flat)


def _names_first_mode(titles: list[Cell], filled: list[Cell]) -> bool:
    """Whether nothing but the first mode's name stands in a row under the titles, under that of modes."""
    if len(filled) != 1 or len(titles) < 3 or filled[0].column >= len(titles):
        return False
    over = titles[filled[0].column]
    return over.span == 1 and title_roles(over.flat)[:1] == ("mode",)


def _joined(upper: list[Cell], lower: list[Cell]) -> list[Cell]:
    made = []
    for cell, below in zip(upper, lower, strict=True):
        cut = _is_cut(cell.flat, below.flat)
        text = f"{cell.flat}{'' if cut else ' '}{below.flat}".strip()
        made.append(Cell(text, cell.place, cell.row, cell.column, cell.span, cell.wraps))
    return made


def _unknown_header(grid: Grid) -> tuple[int, int] | None:
    """A first row of words that are no known titles, over columns that count as slots and values do."""
    for index, row in enumerate(grid.rows[:3]):
        filled = [cell for cell in row if cell.flat]
        if len(filled) < 2 or len(filled) < 0.5 * grid.width:
            continue
        if any(read_slot_cell(c.flat).kind == "slots" or read_values(c.flat) for c in filled):
            return None
        body = grid.rows[index + 1 :]
        if len(body) < 2:
            return None
        stats = [stats_of([r[c] for r in body if c < len(r)]) for c in range(grid.width)]
        counting = [c for c, s in enumerate(stats) if s.sequence and row[c].flat]
        valued = any(s.share(s.values) > 0.7 and s.ranges > 0.4 * s.values for s in stats)
        named = any(s.names >= 0.4 * s.text and s.kinds > 1 for s in stats)
        if counting and (valued or named):
            return index, 2 if _over_slots(grid, index + 1) else 1
        return None
    return None


def _over_slots(grid: Grid, index: int) -> bool:
    """Whether all words of a row stand over columns that count as slots do: titles of modes, or the rest of
    a title.
    """
    filled = [cell for cell in grid.rows[index] if cell.flat]
    body = grid.rows[index + 1 :]
    if not filled or len(body) < 2 or (len(filled) == 1 and _is_band(filled[0], body)):
        return False
    for cell in filled:
        if read_slot_cell(cell.flat).kind != "text" or read_values(cell.flat):
            return False
        stats = stats_of([r[cell.column] for r in body if cell.column < len(r)])
        if not stats.sequence:
            return False
    return True


def _is_band(cell: Cell, body: list[list[Cell]]) -> bool:
    """Whether a lone word heads a group of slots: others stand alone below it."""
    lone = [[one for one in row if one.flat] for row in body]
    heads = [row[0] for row in lone if len(row) == 1 and row[0].column == cell.column]
    return any(read_slot_cell(one.flat).kind == "text" and not read_values(one.flat) for one in heads)


def _titles_modes(grid: Grid, index: int) -> bool:
    """Whether a row with one known title and names of modes stands over columns of slots or of names."""
    row = grid.rows[index]
    filled = [cell for cell in row if cell.flat]
    if len(filled) < 2 or len(filled) < 0.6 * grid.width:
        return False
    known = [cell for cell in filled if title_roles(cell.flat)]
    if not known or any(
        read_slot_cell(cell.flat).kind == "slots" or read_values(cell.flat) for cell in filled
    ):
        return False
    body = grid.rows[index + 1 :]
    if len(body) < 2:
        return False
    numbers = 0
    for cell in filled:
        stats = stats_of([r[cell.column] for r in body if cell.column < len(r)])
        slotlike = stats.filled > 0 and stats.slots + stats.absent >= 0.75 * stats.filled and stats.slots > 0
        numbers += slotlike
        roles = title_roles(cell.flat)
        if cell in known:
            if roles[0] == "slot" and not slotlike:
                return False
        elif not slotlike and not read_mode_head(cell.flat) and stats.share(stats.names) < 0.4:
            return False
    return numbers > 0


def _is_second(upper: list[Cell], lower: list[Cell]) -> bool:
    """Whether a row goes on with the titles above it: only words, under titles that want more."""
    filled = [cell for cell in lower if cell.flat]
    if not filled:
        return False
    if is_title_row(texts_of(lower)):
        return any(not cell.flat for cell in upper) or texts_of(upper) != texts_of(lower)
    if len(filled) == 1 and len(lower) > 2 and filled[0].span > 1:
        return False
    if _names_first_mode(upper, filled):
        return False
    for cell in filled:
        if read_slot_cell(cell.flat).kind == "slots" or (
            read_values(cell.flat) and not title_roles(cell.flat)
        ):
            return False
        title = upper[cell.column].flat if cell.column < len(upper) else ""
        covered = covering(upper, cell.column)
        roles = title_roles(title or covered)
        mode = read_mode_head(cell.flat) is not None
        if not (mode or roles[:1] in (("slot",), ("mode",)) or (not title and title_roles(cell.flat))):
            return False
        if read_name(cell.flat).sure and not mode and not title_roles(cell.flat):
            return False
        if title and not mode and not title_roles(cell.flat) and roles[:1] == ("slot",):
            # One slot column with a name below it is the first row of the body.
            others = [c for c in lower if c.flat and c is not cell]
            if not others:
                return False
    return True


def covering(row: list[Cell], column: int) -> str:
    """The title of the cell that spans a column, or of the nearest filled one to its left."""
    for cell in reversed(row[: column + 1]):
        if cell.flat:
            return cell.flat if cell.column + cell.span > column or cell.span == 1 else ""
    return ""


def in_two_cells(rows: list[list[Cell]]) -> str:
    """The title of a mode whose number and name stand in two cells (`Mode 3 | Extended`) above the titles of
    its table; empty for other rows.
    """
    filled = [cell for cell in rows[0] if cell.flat]
    if len(filled) != 2 or len(rows) < 3 or filled[1].column - filled[0].column != filled[0].span:
        return ""
    number, name = (cell.flat for cell in filled)
    head = read_mode_head(number)
    if head is None or not head.strong or head.number is None or head.name != number:
        return ""
    plain = any(letter.isalpha() for letter in name) and not title_roles(name) and not read_values(name)
    return f"{number}: {name}" if plain and len(name) < 48 and is_title_row(texts_of(rows[1])) > 1 else ""


def split_sets(grid: Grid) -> list[Grid]:
    """A grid with its titles printed twice side by side, as the two grids that it is."""
    header = find_header(grid)
    if header is None:
        return [grid]
    row = (
        grid.rows[header[0] + header[1] - 1]
        if header[1] == 2 and is_title_row(texts_of(grid.rows[header[0] + 1]))
        else grid.rows[header[0]]
    )
    firsts: list[str | None] = [(title_roles(text) or (None,))[0] for text in texts_of(row)]
    texts = [text.casefold() for text in texts_of(row)]
    width = len(texts)
    for titles in grid.rows[header[0] : header[0] + header[1]]:
        # The same titles over and over: `CH | DMX | Name | CH | DMX | Name`.
        told = [text.casefold() for text in texts_of(titles)]
        for sets in (4, 3, 2):
            size = width // sets
            if size >= 2 and width == size * sets and all(told) and told == told[:size] * sets:
                return _cut(grid, [slice(at, at + size) for at in range(0, width, size)])
    first = header[0] + header[1]
    for index, text in enumerate(texts_of(row)):
        # `DMX` may be a title of slots or of values: what stands below it decides.
        below = stats_of([r[index] for r in grid.rows[first:] if index < len(r)])
        if firsts[index] == "slot" and "value" in title_roles(text) and below.ranges > 0.4 * below.filled > 0:
            firsts[index] = "value"
    slot_columns = [
        index
        for index, role in enumerate(firsts)
        if role in ("slot", "coarse") and (index == 0 or firsts[index - 1] not in ("slot", "coarse"))
    ]
    if len(slot_columns) < 2:
        return [grid]
    parts = [
        slice(start, end) for start, end in zip(slot_columns, [*slot_columns[1:], len(texts)], strict=True)
    ]
    shapes = [tuple(role for role in firsts[part] if role is not None) for part in parts]
    if len(set(shapes)) != 1 or not set(shapes[0]) & {"function", "meaning", "value"}:
        return [grid]
    if slot_columns[0] != 0 and any(firsts[: slot_columns[0]]):
        return [grid]
    return _cut(grid, parts)


def _cut(grid: Grid, parts: list[slice]) -> list[Grid]:
    """The columns of each part as a grid of its own."""
    made: list[Grid] = []
    for part in parts:
        rows = []
        for cells in grid.rows:
            piece = [
                Cell(c.text, c.place, c.row, i, min(c.span, part.stop - part.start))
                for i, c in enumerate(cells[part])
            ]
            rows.append(piece)
        made.append(Grid(rows, grid.place, grid.ruled))
    return made
