"""Tells lines of a chart from headings that are worded as they are, and reads ranges that headings hold."""

from __future__ import annotations

import re

from modebook.intake.chart_rows import ChartRow, SlotCell
from modebook.intake.grid import Line
from modebook.intake.inline_rows import rows_behind
from modebook.intake.lexicon import SURE, exact
from modebook.intake.line_values import first_range, name_and_values
from modebook.intake.loose_rows import loose_rows, values_of
from modebook.intake.values import read_values

_NUMBERED = re.compile(r"(?P<slot>\d{1,3})(?:[.:)]|\s[-–—])?\s+(?P<name>\D.*)")


def goes_on(text: str, above: list[Line]) -> bool:
    """Whether a line that begins with a number goes on with the values of the lines above it, or begins those
    of the slot above.
    """
    rows, _ = loose_rows([*above, Line(text)])
    if not rows or not rows[-1].has_value or rows[-1].raw != text:
        return False
    values = [values_of(row) for row in rows if row.has_value]
    if len(rows) > 1 and rows[-2].has_slot and not rows[-2].has_value and values[-1]:
        return values[-1][0].start == 0
    return len(values) > 1 and bool(values[-1]) and values[-1][0].start == values[-2][-1].end + 1


def is_row(text: str, above: list[Line]) -> bool:
    """Whether a line that reads as a mode's title is a row of the chart above it: it goes on with the values
    (`150-199 Fan mode silent`), or names the next slot.
    """
    return (text[:1].isdigit() and goes_on(text, above)) or _names_next_slot(text, above)


def _names_next_slot(text: str, above: list[Line]) -> bool:
    """Whether a line that reads as a mode's title, `7 Fan mode`, names the slot that comes next; the number
    may stand on the line above it.
    """
    found = _NUMBERED.fullmatch(text)
    name = exact(found["name"] if found else text)
    if name is None or name.score < SURE or not above:
        return False
    number = found["slot"] if found else above[-1].text.strip()
    if not number.isdecimal() or len(number) > 3:
        return False
    rows, _ = loose_rows(above if found else above[:-1])
    slots = [max(cell.slots) for row in rows for cell in row.slots.values() if cell.kind == "slots"]
    return bool(slots) and int(number) == slots[-1] + 1


def headed_rows(slots: tuple[int, ...], name: str, line: Line) -> list[ChartRow]:
    """The rows of a heading over one slot: its name, and its ranges where they stand in the same line
    (`CH7 Strobe: 0-9 off; 10-255 slow to fast`).
    """
    cell = SlotCell("slots", slots, run=len(slots) == 2 and slots[1] > slots[0])
    row = ChartRow(line.place, {0: cell}, name=name, raw=line.text)
    spot = first_range(name)
    if spot is None or not name[: spot[0]].strip(" :") or read_values(name[spot[0] : spot[1]])[:1] == ():
        return [row]
    told = name[: spot[0]].rstrip().endswith(":") or bool(
        re.match(r"\s*(?:[:=]|[^\W\d]{2})", name[spot[1] :])
    )
    if not told or read_values(name[spot[0] : spot[1]])[0].start != 0:
        return [row]
    name_and_values(name, row)
    return rows_behind(row)
