"""Groups chart rows into entries: everything that is printed about one slot, or one pair of slots."""

from __future__ import annotations

import itertools
import re
from dataclasses import dataclass, field, replace

from modebook.intake.centered_groups import with_centered_groups
from modebook.intake.chart_rows import ChartRow, SlotCell
from modebook.intake.conditions import read_conditions
from modebook.intake.folding import fold
from modebook.intake.grid import Place
from modebook.intake.lexicon import phrases
from modebook.intake.loose_rows import values_of
from modebook.intake.names import read_name
from modebook.intake.values import ELISIONS, Values

_OVER_ALL = frozenset({"master", "all", "global", "general", "allgemein", "generale"})
_TOPS = (255, 65535, 16777215)


@dataclass(slots=True)
class Stretch:
    """One stretch of values with the words beside it."""

    values: tuple[Values, ...]
    text: str
    place: Place
    printed: str
    row: ChartRow
    elided: bool = False
    """Stands for rows left out."""


@dataclass(slots=True)
class Entry:
    """What is printed about the slots of one row in every mode."""

    slots: dict[int, SlotCell]
    name: str = ""
    stretches: list[Stretch] = field(default_factory=list)
    place: Place = field(default_factory=Place)
    printed: str = ""
    group: str = ""
    default: str = ""
    bits: str = ""
    condition: str = ""
    matrix: dict[int, str] = field(default_factory=dict)
    why: list[tuple[str, str]] = field(default_factory=list)
    """Doubts: why, and what was printed."""
    remarks: list[str] = field(default_factory=list)
    """Words without values beside it."""
    detached: list[ChartRow] = field(default_factory=list)
    named: bool = False
    """Whether its name was printed as a name of its own, not beside a value."""
    elision: bool = False
    """Rows of slots were left out before it."""


def build_entries(rows: list[ChartRow]) -> tuple[list[Entry], list[ChartRow]]:
    """The entries of one chart, in order, and the rows that belong to none."""
    rows = with_centered_groups(rows)
    _carry_groups(rows)
    rows = [row for row in rows if not row.whole]
    only_function = not any(row.meaning for row in rows if row.has_value or row.has_slot)
    groups, lost = _floating(rows) if _is_floating(rows) else _sequential(rows)
    entries = [_entry(group, only_function) for group in groups]
    for before, after in itertools.pairwise(entries):
        many = any(len(cell.slots) > 3 for cell in before.slots.values())  # it stands for those left out
        if before.stretches and before.stretches[-1].elided and not many:
            # Nothing of this slot's values comes after it: whole slots are left out.
            before.stretches.pop()
            after.elision = True
    return entries, lost


def _carry_groups(rows: list[ChartRow]) -> None:
    current = ""
    words = phrases("marks", "cell") | _OVER_ALL
    for row in rows:
        if row.whole:
            # A line over the table: `Head 1` rules what stands below it, any other heading ends that.
            told = fold(re.sub(r"\d+", " ", row.whole)).split()
            current = row.whole if told and set(told) <= words else ""
        if row.group:
            current = row.group
        row.group = current


def _starts_over(row: ChartRow, end: int | None) -> bool:
    values = values_of(row)
    return bool(values) and values[0].start == 0 and end is not None and end in _TOPS


def _is_floating(rows: list[ChartRow]) -> bool:
    """Whether slot numbers stand in the middle of their rows, not at the first one."""
    end: int | None = None
    seen_slot = False
    for row in rows:
        values = values_of(row)
        if row.has_slot:
            if seen_slot is False and end is not None:
                return True
            seen_slot = True
        elif values and values[0].start == 0 and not _conditional(row):
            if not seen_slot and end is None:
                # Values before any slot: a number must follow within this run.
                pass
            elif end in _TOPS:
                return True
        if values:
            end = (
                values[-1].end
                if values[-1].form != "percent"
                else (255 if values[-1].end == 255 else values[-1].end)
            )
        elif row.has_slot:
            end = None
    return False


def _conditional(row: ChartRow) -> bool:
    return bool(row.condition or read_conditions(row.name) or read_conditions(row.meaning))


def _sequential(rows: list[ChartRow]) -> tuple[list[list[ChartRow]], list[ChartRow]]:
    groups: list[list[ChartRow]] = []
    lost: list[ChartRow] = []
    end: int | None = None
    for row in rows:
        values = values_of(row)
        if row.has_slot:
            if groups and _goes_on(groups[-1], row, end):
                groups[-1].append(row)
            else:
                groups.append([row])
                end = None
        elif groups:
            if values and values[0].start == 0 and end in _TOPS and _conditional(row):
                new = ChartRow(
                    row.place,
                    dict(groups[-1][0].slots),
                    row.name,
                    row.value,
                    row.meaning,
                    raw=row.raw,
                    condition=row.condition,
                    group=row.group,
                )
                groups.append([new])
            else:
                groups[-1].append(row)
        elif any(cell.kind == "absent" for cell in row.slots.values()) and not values:
            continue
        else:
            lost.append(row)
        if values:
            end = values[-1].end
    return groups, lost


def _goes_on(group: list[ChartRow], row: ChartRow, end: int | None) -> bool:
    """Whether a row with the slot number of the group above goes on with it (merged cells filled down)."""
    first = group[0]
    mine = {mode: cell.slots for mode, cell in row.slots.items() if cell.kind == "slots"}
    theirs = {mode: cell.slots for mode, cell in first.slots.items() if cell.kind == "slots"}
    if mine != theirs:
        return False
    values = values_of(row)
    if not values or (end is not None and values[0].start == 0 and end in _TOPS):
        return False
    same = not row.name or fold(row.name) == fold(first.name)
    follows = end is not None and values[0].start == end + 1
    return same or follows or not row.meaning


def _floating(rows: list[ChartRow]) -> tuple[list[list[ChartRow]], list[ChartRow]]:
    """Runs of values from 0 to the top, each with the one slot number that stands within it."""
    runs: list[list[ChartRow]] = [[]]
    end: int | None = None
    for row in rows:
        values = values_of(row)
        if values and values[0].start == 0 and end is not None:
            run: list[ChartRow] = []
            # Rows without values at the border: those that the run above can do without go with the one
            # below.
            while runs[-1] and not values_of(runs[-1][-1]):
                run.insert(0, runs[-1].pop())
            runs.append(run)
        runs[-1].append(row)
        if values:
            end = values[-1].end
    groups: list[list[ChartRow]] = []
    lost: list[ChartRow] = []
    for index, run in enumerate(runs):
        numbers = [row for row in run if row.has_slot]
        if not numbers and index + 1 < len(runs):
            # The border row may have gone to the wrong side.
            below = runs[index + 1]
            theirs = [row for row in below if row.has_slot]
            if len(theirs) > 1 and below and below[0].has_slot and not values_of(below[0]):
                moved = below.pop(0)
                run.append(moved)
                numbers = [moved]
        while len(numbers) > 1 and run and run[0].has_slot and not values_of(run[0]):
            groups.append([run.pop(0)])
            numbers = numbers[1:]
        if len(numbers) == 1:
            head = numbers[0]
            position = next(i for i, row in enumerate(run) if row is head)
            group = [head, *run[:position], *run[position + 1 :]]
            group = _in_value_order(group)
            groups.append(group)
        elif not numbers:
            lost.extend(run)
        else:
            pieces, more = _sequential(run)
            for piece in pieces:
                piece[0].why.append("several slot numbers stand beside one run of values")
            groups.extend(pieces)
            lost.extend(more)
    return groups, lost


def _in_value_order(group: list[ChartRow]) -> list[ChartRow]:
    """The slot's row first; if it has values of its own, the slot moves to the row with the first value."""
    head, others = group[0], group[1:]
    if not values_of(head) or not others:
        return group
    first = others[0]
    if values_of(first) and values_of(first)[0].start < values_of(head)[0].start:
        start = ChartRow(
            head.place,
            dict(head.slots),
            default=head.default,
            group=head.group,
            bits=head.bits,
            raw=head.raw,
            why=head.why,
        )
        if head.meaning and head.name:
            start.name = head.name
            head.name = ""
        head.slots = {}
        head.why = []
        ordered = sorted([head, *others], key=lambda row: values_of(row)[0].start if values_of(row) else -1)
        return [start, *ordered]
    return group


def _entry(group: list[ChartRow], only_function: bool) -> Entry:
    head = group[0]
    only_function = only_function or _says_what_they_do(group)
    entry = Entry(
        dict(head.slots),
        place=head.place,
        printed=head.raw,
        group=head.group,
        default=head.default,
        bits=head.bits,
        condition=head.condition,
        matrix=dict(head.matrix),
    )
    for row in group:
        entry.why.extend((why, row.raw) for why in row.why)
        if row.default and not entry.default:
            entry.default = row.default
        if row.value in ELISIONS and row.value:
            entry.stretches.append(Stretch((), "", row.place, row.raw, row, elided=True))
            continue
        values = values_of(row)
        if row.unpaired:
            entry.name = entry.name or row.name
            entry.named = bool(entry.name)
            entry.detached.append(row)
            continue
        if not values:
            _words(entry, row, first=row is head, only_function=only_function)
            continue
        text = row.meaning if row.meaning else (row.name if only_function else "")
        if not only_function and row.name:
            if row is head or (not entry.name and not entry.stretches):
                entry.name, entry.named = row.name, True
            elif fold(row.name) != fold(entry.name):
                text = f"{row.name}: {row.meaning}" if row.meaning else row.name
        if row.hold:
            text = f"{text} (hold {row.hold if re.search(r'[a-z]', row.hold) else row.hold + ' s'})"
        if row.kept:
            text = f"{text} ({row.kept})"
        if row.condition and row is not head:
            text = f"{text} ({row.condition})"
        entry.stretches.append(Stretch(values, text, row.place, row.raw, row))
    if entry.detached and _alternate(group):
        texts = iter(entry.detached)
        entry.stretches = [replace(s, text=_told(next(texts))) for s in entry.stretches]
        entry.detached = []
    if entry.detached and not entry.stretches:
        entry.why.append(
            ("values and words stand apart and are not paired", " / ".join(row.raw for row in entry.detached))
        )
    return entry


def _says_what_they_do(group: list[ChartRow]) -> bool:
    """Whether the names of one slot's rows are what its values do (`Strobe off`, `Strobe slow to fast`),
    though other slots of the table have a column of meanings for that.
    """
    valued = [row for row in group if values_of(row)]
    names = {fold(row.name) for row in valued}
    if len(valued) < 2 or len(names) < len(valued) or "" in names or any(row.meaning for row in group):
        return False
    first = read_name(group[0].name)
    return all(row.has_slot for row in valued) or not first.sure or bool(first.rest)


def _alternate(group: list[ChartRow]) -> bool:
    """Whether the rows of a slot, a cell a line, are its number, its name, and values and words by turns."""
    if len(group) < 4 or not all(row.loose for row in group) or not group[0].has_slot:
        return False
    rows = group[1:] if group[0].name else group[2:]
    kinds = [bool(values_of(row)) for row in rows]
    if any(row.why or (values_of(row) and _told(row)) for row in rows) or values_of(group[0]):
        return False
    return kinds == [True, False] * (len(kinds) // 2)


def _told(row: ChartRow) -> str:
    return " ".join(piece for piece in (row.name, row.meaning) if piece)


def _words(entry: Entry, row: ChartRow, *, first: bool, only_function: bool) -> None:
    """A row without values: the name, or a remark."""
    if row.value or row.percent or row.hex:
        printed = row.value or row.percent or row.hex
        if not re.search(r"\d", printed) or re.search(r"[°%K]|Hz|deg|^[-+−]\d", printed):
            entry.remarks.append(printed)
        else:
            entry.why.append((f"the values {printed!r} are not understood", row.raw))
    if row.name and (first or not entry.name) and not entry.stretches:
        entry.name, entry.named = (row.name, True) if not entry.name else (entry.name, entry.named)
        if row.meaning:
            entry.remarks.append(row.meaning)
        return
    text = " ".join(piece for piece in (row.name, row.meaning) if piece)
    if not text:
        return
    if (entry.stretches and not only_function) or (entry.stretches and row.loose) or entry.stretches:
        entry.detached.append(row)
    else:
        entry.remarks.append(text)
