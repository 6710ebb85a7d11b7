"""Turns the rows of a grid into chart rows: repeated titles out, cells of several lines taken apart."""

from __future__ import annotations

import re
from dataclasses import replace

from modebook.intake.chart_rows import BLANK, ChartRow, SlotCell, read_slot_cell, without_byte
from modebook.intake.columns import Plan
from modebook.intake.folding import fold
from modebook.intake.grid import Cell, Grid
from modebook.intake.group_rows import is_group_heading, is_note
from modebook.intake.headings import read_slot_head
from modebook.intake.inline_rows import rows_in_matrix, rows_inside, with_values_before
from modebook.intake.names import read_name
from modebook.intake.phrases import turns_round
from modebook.intake.quantities import spans
from modebook.intake.titles import is_title_row
from modebook.intake.unwrapped_rows import joined, unwrapped
from modebook.intake.values import ELISIONS, read_values


def chart_rows(grid: Grid, plan: Plan) -> list[ChartRow]:
    """The rows below the titles, in order. Rows that say the titles again are left out."""
    titles = {fold(title) for title in plan.titles if title}
    found: list[ChartRow] = []
    body = [cells for cells in grid.rows[plan.first :] if any(cell.flat for cell in cells)]
    slots = [c for c, column in enumerate(plan.columns) if column.role in ("slot", "coarse")]
    for index, cells in enumerate(body):
        texts = [cell.flat for cell in cells]
        below = body[index + 1] if index + 1 < len(body) else None
        filled = [text for text in texts if text]
        # What goes on with a long text beside the titles begins small, and heads nothing.
        wrapped = not cells[0].flat and len(filled) == 1 and filled[0][0].islower()
        if below is not None and len(filled) == 1 and not wrapped and _heads_titles(filled[0], below, plan):
            found.append(ChartRow(cells[0].place, whole=filled[0], raw=filled[0], heads=True))
            continue
        if is_group_heading(cells, below, slots, _end_of(found)):
            found.append(ChartRow(cells[0].place, whole=filled[0], raw=filled[0]))
            continue
        if len(filled) == 1 and is_note(filled[0]):
            found.append(ChartRow(cells[0].place, whole=filled[0], raw=filled[0]))
            continue
        left_out = [text for text in filled if text in ELISIONS]
        # Where modes stand side by side, a dash says that a mode has none of what is left out.
        if left_out and all(text in ELISIONS or read_slot_cell(text).kind == "absent" for text in filled):
            found.append(ChartRow(cells[0].place, value=left_out[0], raw=left_out[0]))
            continue
        if is_title_row(texts) or (
            len(filled) > 1 and titles and all(fold(text) in titles for text in filled)
        ):
            continue
        row = _whole(cells, plan) or _by_roles(cells, plan)
        row.raw = " | ".join(filled)
        found.extend(_taken_apart(row, cells, plan))
    return _second_bytes(with_values_before(found) if grid.ruled else unwrapped(found))


def _end_of(rows: list[ChartRow]) -> int | None:
    """Where the values of the last row end; None where it has none."""
    values = read_values(rows[-1].value) if rows and rows[-1].value else ()
    return values[-1].end if values else None


def _heads_titles(text: str, below: list[Cell], plan: Plan) -> bool:
    """Whether a lone text stands above the titles of the table, which are said again."""
    if not plan.titled or not any(letter.isalpha() for letter in text) or text[0].islower():
        return False
    told = tuple(cell.flat for cell in below)
    return told == plan.titles and not read_name(text).sure and not read_values(text)


def _second_bytes(rows: list[ChartRow]) -> list[ChartRow]:
    """Rows of nothing but the next slot below a parameter that needs two: the number of its finer byte."""
    found: list[ChartRow] = []
    for row in rows:
        above = found[-1] if found else None
        if above is not None and _is_bare(row) and _is_wide(above):
            both = {
                mode: (above.slots.get(mode, BLANK), cell)
                for mode, cell in row.slots.items()
                if cell.kind == "slots"
            }
            if all(
                len(one.slots) == len(two.slots) == 1 and two.slots[0] == one.slots[0] + 1
                for one, two in both.values()
            ):
                for mode, (one, two) in both.items():
                    above.slots[mode] = SlotCell("slots", (*one.slots, *two.slots), mark=one.mark)
                above.raw = f"{above.raw} | {row.raw}"
                continue
        found.append(row)
    return found


def _is_bare(row: ChartRow) -> bool:
    """Whether nothing stands in a row but slots."""
    told = (
        row.name,
        row.meaning,
        row.value,
        row.percent,
        row.hex,
        row.default,
        row.whole,
        *row.matrix.values(),
    )
    return row.has_slot and not any(told) and not row.why


def _is_wide(row: ChartRow) -> bool:
    """Whether a row with a slot says that it is of two bytes: by its values or by its name."""
    wide = any(value.end > 255 for value in read_values(row.value)) if row.value else False
    return row.has_slot and (wide or read_name(row.name).bits == 16)


def _whole(cells: list[Cell], plan: Plan) -> ChartRow | None:
    """A row that is one text over the table."""
    filled = [cell for cell in cells if cell.flat]
    distinct = {cell.flat for cell in filled}
    if len(distinct) != 1 or not plan.columns:
        return None
    cell = filled[0]
    merged = len(filled) == len(cells) > 2 or cell.span > 1
    role = plan.columns[cell.column].role if cell.column < len(plan.columns) else "none"
    if not merged and cell.column != 0:
        return None
    slot = read_slot_head(cell.flat) if cell.flat[0].isalpha() else None
    if not merged and not slot and role in ("function", "meaning", "value", "percent", "hex", "from"):
        return None
    if not merged and slot and any(column.role == "slot" for column in plan.columns):
        return None
    if read_slot_cell(cell.flat).kind != "text" or read_values(cell.flat) or cell.flat in ELISIONS:
        return None
    return ChartRow(cell.place, whole=cell.flat)


def _by_roles(cells: list[Cell], plan: Plan) -> ChartRow:
    row = ChartRow(next((c.place for c in cells if c.flat), cells[0].place))
    coarse: dict[int, SlotCell] = {}
    fine: dict[int, SlotCell] = {}
    start = end = other = unit = ""
    for cell, column in zip(cells, plan.columns, strict=False):
        text, role, mode = cell.text.strip(), column.role, column.mode or 0
        if text[:1] in ("#", "f") and _is_unshown(text):
            row.why.append(f"a cell of this row shows no value: {text}")
            text = ""
        if role in ("slot", "coarse", "fine"):
            text, byte = without_byte(text)
            row.bits = byte or row.bits
            read = read_slot_cell(text)
            {"slot": row.slots, "coarse": coarse, "fine": fine}[role][mode] = read
            if read.kind == "text" and text.strip() not in ELISIONS:
                row.why.append(f"{cell.flat!r} stands where a slot number would")
        elif not text:
            continue
        elif role == "mode":
            row.matrix[mode] = cell.flat
        elif role == "from":
            start = text
        elif role == "to":
            end = text
        elif role == "function":
            row.name = joined(row.name, text)
            row.wraps = cell.wraps if row.wraps is None else row.wraps
        elif role == "unit" and row.meaning[-1:].isdigit() and _UNIT.fullmatch(text) and text.strip("-–—/"):
            row.meaning = f"{row.meaning} {text}"
        elif role == "unit" and _UNIT.fullmatch(text):
            unit = text  # alone it says nothing of a range
        elif role == "meaning" and row.meaning and read_name(text).bits and read_name(text).word is None:
            continue  # how many bits a slot has says nothing of what its values mean
        elif role in ("meaning", "unit"):
            row.meaning = joined(row.meaning, text)
            row.wraps = cell.wraps
        elif role == "value":
            row.value = joined(row.value, text)
        elif role in ("percent", "hex", "default", "group", "bits", "hold", "kept", "condition"):
            setattr(row, role, joined(getattr(row, role), text))
        elif role == "foreign":
            # The same in another language; where the two run in opposite ways, neither is sure.
            other = text
        elif role == "none" and any(letter.isalpha() or letter in "°%" for letter in text):
            row.meaning = joined(row.meaning, text)
    if _names_from_value(row):
        row.name, row.value = row.value, ""
    if other and turns_round(f"{row.meaning or row.name}:{other}"):
        row.why.append("the two languages of this text contradict each other")
    if start and end and _are_measures(f"{start} {unit}", f"{end} {unit}"):
        # From 2800 K to 6500 K says what all values of the slot mean, not where they lie.
        row.meaning = joined(f"{start} - {end} {unit}".strip(), row.meaning)
    elif start or end:
        row.value = f"{start}-{end}" if start and end else start or end
    for mode in {*coarse, *fine}:
        row.slots[mode] = _two(row.slots.get(mode), coarse.get(mode, BLANK), fine.get(mode, BLANK))
    if plan.matrix and row.slots:
        # One slot column serves every mode of a matrix; a mode whose cell is blank or a dash has no such
        # slot.
        number = row.slots.pop(0, BLANK)
        for mode in range(len(plan.modes)):
            said = row.matrix.get(mode, "")
            absent = not said or read_slot_cell(said).kind == "absent"
            row.slots[mode] = (
                number if not absent else (SlotCell("absent") if number.kind == "slots" else BLANK)
            )
    return row


_UNIT = re.compile(
    r"[^\w\s]{1,2}|k|hz|khz|s|ms|m|min|deg|rpm|bpm|lx|mired|°\s?[ck]?|sec|sek|seg|bits?|"
    r"per ?cent|kelvin|degrees?|hertz|seconds?|grad|degr[eé]s|grados|gradi|prozent|steps?",
    re.IGNORECASE,
)


def _are_measures(start: str, end: str) -> bool:
    """Whether two cells are the ends of what a slot measures: both have a unit, and percents are all."""
    told = spans(f"{start} - {end}")
    whole = {"%": (0, 100)}
    return (
        len(told) == 1
        and bool(spans(f"0 - {start}") and spans(f"0 - {end}"))
        and (told[0].start, told[0].end) == whole.get(told[0].unit, (told[0].start, told[0].end))
    )


def _names_from_value(row: ChartRow) -> bool:
    """Whether a slot's name stands where values would: a cell merged over the values of a heading row."""
    bare = row.has_slot and not (row.name or row.meaning or row.percent or row.hex or row.matrix)
    return bare and re.search(r"[^\W\d_]{3,}", row.value) is not None and not read_values(row.value)


def _is_unshown(text: str) -> bool:
    """Whether a spreadsheet cell shows an error, or a formula without a result, in place of a value."""
    from modebook.shelf.sheet_marks import UNWORKED

    return text in (UNWORKED, "#REF!", "#N/A", "#VALUE!", "#NAME?", "#DIV/0!", "#NUM!", "#NULL!")


def _two(slot: SlotCell | None, coarse: SlotCell, fine: SlotCell) -> SlotCell:
    first = coarse if coarse.kind == "slots" else slot if slot is not None else coarse
    if first.kind == "slots" and fine.kind == "slots":
        if first.slots == fine.slots:
            return first
        return SlotCell("slots", (*first.slots, *fine.slots), mark=first.mark or fine.mark)
    if first.kind == "slots":
        return first
    if fine.kind == "slots":
        return SlotCell("slots", fine.slots, mark=fine.mark or "fine only")
    return first if first.kind != "blank" else fine


def _lines(text: str) -> list[str]:
    return [line.strip() for line in text.split("\n") if line.strip()]


def _by_blanks(value: str, head: str, texts: list[str]) -> tuple[str, list[str], list[str]]:
    """Head, texts beside values, and other texts, where blank lines among the values say which is which."""
    lines = [line.strip() for line in value.split("\n")]
    if "" not in lines or len(texts) not in (len(lines), len(lines) + (not head)):
        return head, texts, []
    if len(texts) > len(lines) or (not head and not lines[0]):
        head, texts, lines = texts[0], texts[1:], lines[len(lines) - len(texts) + 1 :]
    pairs = list(zip(lines, texts, strict=True))
    return head, [text for line, text in pairs if line], [text for line, text in pairs if not line]


def _taken_apart(row: ChartRow, cells: list[Cell], plan: Plan) -> list[ChartRow]:
    """A row whose cells hold several lines that are rows of their own."""
    if row.whole:
        return [row]
    inside = rows_in_matrix(row) or rows_inside(row)
    if len(inside) == 1:
        row = inside[0]
    elif inside:
        return inside
    values = _lines(row.value)
    several = len(values) > 1 and all(read_values(line) for line in values)
    slots = _several_slots(cells, plan)
    if slots:
        return _slot_lines(row, slots)
    if not several:
        for name in (
            "name",
            "meaning",
            "value",
            "percent",
            "hex",
            "default",
            "group",
            "bits",
            "hold",
            "kept",
            "condition",
            "unit",
        ):
            setattr(
                row, name, " ".join(getattr(row, name).split()) if name != "meaning" else row.meaning.strip()
            )
        return [row]
    key = "meaning" if row.meaning else "name"
    texts = _lines(getattr(row, key))
    head = row.name if key == "meaning" else ""
    if key == "name" and len(texts) == len(values) + 1:
        head, texts = texts[0], texts[1:]
    if len(texts) != len(values):
        head, texts, remarks = _by_blanks(row.value, head, texts)
        row.why.extend(f"a line without values stands between the others: {text}" for text in remarks)
    if len(texts) != len(values):
        row.why.append(f"{len(values)} values and {len(texts)} texts stand in one row: they are not paired")
        row.value = " ; ".join(values)
        row.name = head or (texts[0] if key == "name" and texts and read_name(texts[0]).sure else row.name)
        row.name = " ".join(row.name.split())
        row.meaning = "" if key == "name" else row.meaning
        row.mark_unpaired()
        return [row]
    others = {name: _lines(getattr(row, name)) for name in ("percent", "hex", "default", "hold", "kept")}
    made: list[ChartRow] = []
    for index, (value, text) in enumerate(zip(values, texts, strict=True)):
        piece = replace(
            row,
            value=value,
            slots=row.slots if index == 0 else dict.fromkeys(row.slots, BLANK),
            why=list(row.why) if index == 0 else [],
        )
        piece.name = head if index == 0 and key == "meaning" else (text if key == "name" else "")
        piece.meaning = text if key == "meaning" else ""
        if key == "name" and head:
            piece.name, piece.meaning = (head if index == 0 else ""), text
        for name, lines in others.items():
            setattr(
                piece,
                name,
                lines[index] if len(lines) == len(values) else (lines[0] if lines and index == 0 else ""),
            )
        piece.name = " ".join(piece.name.split())
        made.append(piece)
    return made


def _several_slots(cells: list[Cell], plan: Plan) -> list[list[str]]:
    """Slot numbers on lines of their own within one cell: one list of lines a mode column."""
    found: list[list[str]] = []
    for cell, column in zip(cells, plan.columns, strict=False):
        if column.role != "slot":
            continue
        lines = cell.lines
        if len(lines) < 2 or any(read_slot_cell(line).kind not in ("slots", "absent") for line in lines):
            return []
        found.append(lines)
    return found if found and len({len(lines) for lines in found}) == 1 else []


def _slot_lines(row: ChartRow, slots: list[list[str]]) -> list[ChartRow]:
    count = len(slots[0])
    names, values, meanings = _lines(row.name), _lines(row.value), _lines(row.meaning)
    if len(names) != count:
        if len(names) == 1 and count <= 4:
            # Two numbers beside one name and one range: the bytes of one parameter.
            for mode, lines in enumerate(slots):
                numbers = tuple(n for line in lines for n in read_slot_cell(line).slots)
                row.slots[mode] = SlotCell("slots", numbers) if numbers else SlotCell("absent")
            row.name, row.value = " ".join(names), " ".join(values)
            return [row]
        row.why.append(f"{count} slot numbers and {len(names)} names stand in one row: they are not paired")
        row.mark_unpaired()
        return [row]
    made: list[ChartRow] = []
    for index in range(count):
        piece = replace(row, name=names[index], why=list(row.why) if index == 0 else [])
        piece.slots = {mode: read_slot_cell(lines[index]) for mode, lines in enumerate(slots)}
        piece.value = values[index] if len(values) == count else (values[0] if len(values) == 1 else "")
        piece.meaning = meanings[index] if len(meanings) == count else ("" if index else " ".join(meanings))
        made.append(piece)
    return made
