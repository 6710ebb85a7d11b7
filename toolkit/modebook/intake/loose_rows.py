"""Reads chart rows out of running lines, where no columns are left: slot, name, values, meaning in a row."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from modebook.intake.chart_rows import BLANK, ChartRow, SlotCell, read_slot_cell
from modebook.intake.from_zero import FROM_ZERO, lines_from_zero
from modebook.intake.grid import Line
from modebook.intake.headings import read_mode_head
from modebook.intake.inline_rows import rows_behind
from modebook.intake.lexicon import SURE
from modebook.intake.line_values import first_range, name_and_values, trimmed
from modebook.intake.lost_blanks import Settled, settle
from modebook.intake.names import read_name
from modebook.intake.running_columns import Columns, columns_of, in_one_form, is_group, without_group
from modebook.intake.title_lines import modes_in_titles, named_columns, title_line
from modebook.intake.titles import title_roles
from modebook.intake.values import ELISIONS, Values, read_values

_LEAD = re.compile(
    r"^(?P<slot>\d{1,3}(?:\s*(?:[-–+/&…]|,)\s*\d{1,3}){0,3}\*{0,2})(?:[.:)]|\s[-–—:])?\s+(?P<rest>\S.*)$"
)
_SLOT_BEHIND = re.compile(r"(?<=[^\W\d.)\]%°] )(?P<slot>\d{1,3}(?:\s?[-–/+&]\s?\d{1,3})?)(?=\s|$)")
_UNIT = re.compile(r"(?:k?Hz|K|ms|s|sec|rpm|bpm|deg)\b|[%°]")
_MOST = 512  # slots of a universe
_ALONE = re.compile(r"^\(?\d{1,3}\)?\*{0,2}$")


@dataclass(slots=True)
class Trail:
    """What was read so far: the last slot, the last value's end, how many slot columns the titles promise."""

    slot: int = 0
    end: int | None = None
    columns: int = 1
    values_first: bool = False
    modes: list[str] = field(default_factory=list)
    titled: bool = False
    name_first: bool = False
    settled: Settled | None = None

    def follow(self, row: ChartRow) -> None:
        """Take note of a row."""
        for cell in row.slots.values():
            if cell.kind == "slots":
                self.slot = max(cell.slots)
                self.end = None
        values = read_values(row.value) if row.value else ()
        if values:
            self.end = values[-1].end


def is_titled(lines: list[Line]) -> bool:
    """Whether a line of column titles with one for slots stands among lines."""
    return any(title_line(" ".join(line.text.split())) is not None for line in lines)


def loose_rows(lines: list[Line]) -> tuple[list[ChartRow], list[Line]]:
    """The chart rows in lines of text, and the lines that are none. Nothing is read from prose."""
    trail = Trail()
    rows: list[ChartRow] = []
    left: list[Line] = []
    lines, raised = lines_from_zero(lines, title_line)
    named = named_columns(lines)
    last: int | None = None
    ended = False
    settled: dict[int, Settled] = {}
    form = Columns()
    label = ""
    for index, line in enumerate(lines):
        text = " ".join(line.text.split())
        trail.settled = settled.get(index)
        if not text:
            continue
        # Words below an empty line, after values that reached the top, are no part of the chart.
        apart = line.place.page is None and None not in (line.place.row, last) and line.place.row > last + 1  # type: ignore[operator]
        last = line.place.row
        worded = first_range(text) is None and not _LEAD.match(text)
        ended = worded and (ended or (apart and trail.end in (255, 65535)))
        if ended:
            left.append(line)
            continue
        if named is not None and index == named.line:
            trail.columns = len(named.modes)
            trail.titled = True
            settled = _settled(lines, index + 1, named.modes)
            form = columns_of(named.roles, trail.columns, [one.text for one in lines[index + 1 :]])
            continue
        titles = title_line(text)
        if titles is not None:
            beside = named is not None and abs(index - named.line) == 1
            trail.columns = len(named.modes) if named and beside else max(1, titles.count("slot"))
            trail.titled = True
            trail.name_first = titles[0] == "function" and "slot" in titles
            if not settled:
                settled = _settled(lines, index + 1, modes_in_titles(text) or [""] * trail.columns)
            form = columns_of(titles, trail.columns, [one.text for one in lines[index + 1 :]])
            continue
        under = " ".join(lines[index + 1].text.split()) if index + 1 < len(lines) else ""
        if trail.slot and trail.end in (None, 255, 65535) and is_group(text, form, trail.slot, under):
            label = text
            continue
        told, group = without_group(text, form, trail.slot)
        told, default = in_one_form(
            told, form, trail.end, first=bool(rows) and rows[-1].has_slot and not rows[-1].value
        )
        row = _row(told, line, trail)
        if row is None:
            left.append(line)
            continue
        row.raw = text
        row.default = default
        row.group = group or label
        label = ""
        for piece in rows_behind(row):
            trail.follow(piece)
            rows.append(piece)
    if raised and rows:
        rows[0].why.append(FROM_ZERO)
    return rows, left


def _settled(lines: list[Line], start: int, modes: list[str]) -> dict[int, Settled]:
    """Of which modes the numbers are, by the indexes of lines behind a line of titles."""
    if len(modes) < 2:
        return {}
    heads = [read_mode_head(mode) for mode in modes]
    most = [head.footprint or _MOST if head is not None else _MOST for head in heads]
    found = settle([line.text for line in lines[start:]], most)
    return {start + number: one for number, one in found.items()}


def looks_like_chart(rows: list[ChartRow], left: list[Line], *, titled: bool = False) -> bool:
    """Whether lines were a chart: slots with known names or values, and little else. `titled`: a line of
    column titles stands among them."""
    if titled and any(row.has_slot for row in rows):
        return True
    worded = any(letter.isalpha() for row in rows for letter in f"{row.name}{row.meaning}")
    if not worded and not any(value.end == 255 and not value.why for row in rows for value in values_of(row)):
        # Units and their start addresses: numbers without a word.
        return False
    slots = sum(row.has_slot and (bool(row.value) or read_name(row.name).score >= SURE) for row in rows)
    bare = sum(row.has_slot and not row.name and not row.value for row in rows)
    values = sum(row.has_value for row in rows)
    if slots + min(bare, values) < 1 or slots + bare + values < 2:
        return False
    return len(left) <= 2 * len(rows)


def _behind_name(text: str, row: ChartRow, trail: Trail) -> bool:
    """Reads a line whose titles put the name before the slot: `Strobe 6 0-15 no strobe`."""
    for found in _SLOT_BEHIND.finditer(text):
        cell = read_slot_cell(found["slot"])
        name, rest = text[: found.start()].strip(), text[found.end() :].strip()
        if cell.kind != "slots" or cell.slots[0] not in (trail.slot + 1, 1) or len(cell.slots) > 4:
            continue
        spot = first_range(rest)
        if not any(letter.isalpha() for letter in name) or (spot is not None and spot[0] > 0):
            continue
        if spot is None and not read_name(name).sure:
            continue
        row.slots[0], row.name = cell, name
        if spot is not None:
            row.value, row.meaning = rest[: spot[1]].strip(), trimmed(rest[spot[1] :])
        else:
            row.meaning = rest
        return True
    return False


def _row(text: str, line: Line, trail: Trail) -> ChartRow | None:
    row = ChartRow(line.place, raw=text, loose=True)
    if text in ELISIONS:
        row.value = text
        return row
    if _ALONE.match(text):
        cell = read_slot_cell(text)
        if cell.kind != "slots":
            return None
        number = cell.slots[0]
        if trail.end is not None and number == trail.end + 1 and number != trail.slot + 1 and number > 40:
            row.value = text
            return row
        row.slots[0] = cell
        return row
    if trail.columns > 1:
        return _several_columns(text, row, trail)
    if trail.name_first and _behind_name(text, row, trail):
        return row
    whole = read_values(text) if "%" not in text else ()
    if whole:
        row.value = text
        row.why.extend(value.why for value in whole if value.why)
        return row
    lost = _lost_dash(text, trail)
    if lost:
        row.value, row.name = lost
        return row
    lead = _LEAD.match(text)
    if lead:
        cell = read_slot_cell(lead["slot"])
        rest = lead["rest"].strip()
        if _UNIT.match(rest):
            cell = BLANK  # `1 Hz - 25 Hz` measures
        if cell.kind == "slots" and _slot_not_value(lead["slot"], cell, rest, trail, row):
            row.slots[0] = cell
            name_and_values(rest, row)
            return row
        if _single_value(text, row, trail):
            return row
    spot = first_range(text)
    if spot is None:
        if len(text) > 70 or (text.endswith(".") and len(text.split()) > 6):
            return None
        if not trail.slot and not trail.end:
            return None
        row.name = text
        return row
    start, end = spot
    before, after = trimmed(text[:start]), trimmed(text[end:])
    if "value" in title_roles(before):
        before = ""  # `DMX 0-7: off` says once more that these are values
    if len(before.split()) > 8:
        return None
    if after and title_roles(before)[:1] == ("value",):
        # `Value 10-19: Open` says what kind of number it is.
        before = ""
    row.slots[0] = BLANK
    row.value = text[start:end].strip()
    row.name, row.meaning = (before, after) if before and after else (before or after, "")
    return row


def _single_value(text: str, row: ChartRow, trail: Trail) -> bool:
    """Reads a number that goes on with the values, and what it means: `19 Deep red` behind `1-18`."""
    found = re.match(r"^0{0,2}(\d{1,3})\s+([^\W\d].*)$", text)
    if not found or trail.end is None or int(found[1]) != trail.end + 1 or first_range(text) is not None:
        return False
    row.slots[0] = BLANK
    row.value, row.name = found[1], found[2]
    return True


def _lost_dash(text: str, trail: Trail) -> tuple[str, str] | None:
    """Two numbers and a text where a dash was lost: `012 047 Ramp`."""
    found = re.match(r"^(\d{1,3})\s+(\d{1,3})\s+([^\W\d].*)$", text)
    if not found:
        return None
    a, b = int(found[1]), int(found[2])
    padded = len(found[1]) == 3 and found[1].startswith("0")
    follows = trail.end is not None and a == trail.end + 1
    if a < b and (padded or follows):
        return f"{found[1]} {found[2]}", found[3]
    return None


def _slot_not_value(printed: str, cell: SlotCell, rest: str, trail: Trail, row: ChartRow) -> bool:
    """Whether a number or pair at a line's start is a slot, and not a value."""
    first = cell.slots[0]
    has_more = bool(read_values(rest)) or first_range(rest) is not None
    if len(cell.slots) == 1:
        padded = len(printed) == 3 and printed.startswith("0")
        if padded and not has_more:
            return False
        follows_value = trail.end is not None and first == trail.end + 1
        if follows_value and not has_more and first != trail.slot + 1:
            return False
        if (
            follows_value
            and first == trail.slot + 1
            and not has_more
            and trail.end is not None
            and trail.end < 255
        ):
            row.why.append(f"{printed} may be slot {first} or the value {first}")
        return not padded
    next_slot = trail.slot + 1
    next_value = 0 if trail.end is None else trail.end + 1
    if trail.end is not None and first == next_value != next_slot:
        return False  # `10-255 Macro 1 to 20` goes on with the values, whatever figures its words hold
    if has_more:
        return True
    if first == next_slot and first != next_value:
        return True
    if len(cell.slots) > 4:
        return False
    if first == next_slot == next_value:
        row.why.append(f"{printed} may be slots or values")
        return True
    return False


def _several_columns(text: str, row: ChartRow, trail: Trail) -> ChartRow | None:
    """A line that begins with one slot, or a dash, for each mode of the titles."""
    words = text.split()
    cells = [read_slot_cell(word) for word in words[: trail.columns]]
    if len(words) > trail.columns and all(cell.kind in ("slots", "absent") for cell in cells):
        row.slots = dict(enumerate(cells))
        name_and_values(" ".join(words[trail.columns :]), row)
        return row
    own = trail.settled
    if own is not None:
        row.slots = {column: SlotCell("absent", mark="-") for column in range(trail.columns)}
        row.slots.update(zip(own.columns, own.cells, strict=True))
        name_and_values(" ".join(words[own.length :]), row)
        if not own.sure:
            row.why.append(f"a blank was lost: {' '.join(words[: own.length])} may be another mode's slot")
        return row
    if _single_value(text, row, trail):
        return row
    spot = first_range(text)
    if spot is None:
        return None
    row.value = text[spot[0] : spot[1]].strip()
    row.name = (text[: spot[0]] + " " + text[spot[1] :]).strip(" :–-")
    return row


def values_of(row: ChartRow) -> tuple[Values, ...]:
    """The values that a row prints, whichever column they stand in."""
    if row.value and row.value not in ELISIONS:
        read = read_values(row.value)
        if read:
            return read
    if row.hex:
        read = read_values(row.hex, "hex")
        if read:
            return read
    if row.percent:
        return read_values(row.percent, "percent")
    return ()
