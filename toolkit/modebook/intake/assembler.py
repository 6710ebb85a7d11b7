"""The one assembler: what any reader yields becomes the modes, settings and doubts of a document."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace

from modebook.intake.chart_rows import ChartRow
from modebook.intake.charts import Walk
from modebook.intake.drafts import DraftMode, DraftParameter, Json, Unsure
from modebook.intake.entries import build_entries
from modebook.intake.folding import fold
from modebook.intake.footnotes import Footnotes
from modebook.intake.gathered import Chart, Gathered
from modebook.intake.grid import Source
from modebook.intake.headings import ModeHead, read_mode_head
from modebook.intake.legends import rows_of_mode, with_legends
from modebook.intake.mode_drafts import build_mode
from modebook.intake.prose import modes_of_prose
from modebook.intake.readings import Reading
from modebook.intake.setting_ranges import Settings


@dataclass(slots=True)
class Assembled:
    """The parts of a document that come out of the charts."""

    modes: list[Json] = field(default_factory=list)
    settings: list[Json] = field(default_factory=list)
    doubts: list[Json] = field(default_factory=list)
    readings: list[Reading] = field(default_factory=list)
    """Pointer and place of everything that was read, for the report."""


_MAY_BE_ROW = re.compile(r"^\W*\d{1,3}\b(?!\.\d{1,2}\b)|\b\d{1,3}\s*(?:[-–—…]|\.\.+)\s*\d{2,3}\b(?!\s*[%°])")
"""Text inside a chart that may be a row of it: it begins with a number, or has a stretch of values."""


def assemble(source: Source, source_key: str) -> Assembled:
    """Modes, settings and doubts of everything that a source holds; empty where it holds no chart."""
    gathered = Walk().over(source)
    _named_by_sheets(gathered.charts)
    settings = Settings()
    modes: list[DraftMode] = []
    unlikely: list[DraftMode] = []
    for chart in gathered.charts:
        for mode in _modes_of(chart, gathered, settings):
            (modes if _is_mode(mode) else unlikely).append(mode)
    if not modes:
        modes = modes_of_prose(gathered.lines, settings)
        for mode in modes if gathered.unread else []:
            why = "read out of lines alone: it is not known whose the values in the tables beside are"
            mode.unsure.append(Unsure(why, read="no ranges", place=mode.place))
    if not modes:
        # Better something with its doubts than nothing: no other table is there.
        modes = [mode for mode in unlikely if any(s.values for p in mode.parameters for s in p.stretches)]
        for mode in modes:
            why = "hardly a name in this table is known: it may be no chart"
            mode.unsure.append(Unsure(why, place=mode.place))
    modes = _without_copies(modes)
    made = _written(modes, settings, source_key)
    read = {(fold(mode.name), mode.number) for mode in modes}
    for head in gathered.lost if modes else []:
        if (fold(head.name), head.number) not in read:
            why = "a mode is titled so, and nothing was read for it"
            made.doubts.append({"pointer": "/modes", "printed": head.printed, "read": "left out", "why": why})
    return made


def _is_mode(mode: DraftMode) -> bool:
    """Whether what was read can be a mode: tables of units, messages and distances count as slots do, but
    name nothing and leave slots out.
    """
    parameters = [*mode.parameters, *(member for _, members in mode.cells for member in members)]
    known = [p for p in parameters if p.word != "other"]
    covered = [p for p in parameters if p.ranges and len(p.unsure) <= 1]
    if not known and len(covered) < 0.5 * len(parameters):
        return False
    used = {slot for p in parameters for slot in p.slots}
    gaps = max(used, default=0) > 2 * len(used) and not mode.cells
    if gaps and len(known) < 0.5 * len(parameters):
        return False
    valued = any(s.values for p in parameters for s in p.stretches)
    if valued or len(parameters) < 2:
        return True
    kinds = {(p.word, p.number, p.name.level) for p in known}
    twice = len(kinds) < len(known) and not any(p.entry.group for p in parameters)
    return len(known) >= (0.8 if twice else 0.4) * len(parameters)


def _modes_of(chart: Chart, gathered: Gathered, settings: Settings) -> list[DraftMode]:
    entries, lost = build_entries(chart.rows)
    notes = Footnotes([*gathered.footnotes, *chart.notes])
    found: list[DraftMode] = []
    for column, (head, title) in enumerate(zip(chart.heads, chart.titles, strict=True)):
        if gathered.shared:
            # What a legend says of a name is of the slots so called in this mode, and of no other's.
            entries, lost = build_entries(with_legends(rows_of_mode(chart, column), gathered.shared))
        if not any(e.slots.get(column) and e.slots[column].kind == "slots" for e in entries):
            continue
        mode = _mode(head, title, chart)
        build_mode(mode, entries, column, settings, notes, chart.told, alone=_tells_alone(chart, gathered))
        for row in _telling(lost, chart.rows):
            mode.unsure.append(Unsure("this row belongs to no slot", row.raw, "left out", "", row.place))
        for why in chart.why:
            mode.unsure.append(Unsure(why, place=chart.place))
        for text, place in chart.stray:
            if _MAY_BE_ROW.search(text):
                mode.unsure.append(
                    Unsure("this text inside the chart was not understood", text, "left out", "", place)
                )
        found.append(mode)
    return found


def _tells_alone(chart: Chart, gathered: Gathered) -> bool:
    """Whether the sentences below a chart are of its one mode: behind the last of several, they may be of
    all.
    """
    last = chart is gathered.charts[-1] and sum(bool(one.told) for one in gathered.charts) == 1
    return len(chart.heads) == 1 and (len(gathered.charts) == 1 or not last)


def _named_by_sheets(charts: list[Chart]) -> None:
    """Charts without a title on sheets of their own are called as their sheets are."""
    if len({chart.place.sheet for chart in charts if chart.place.sheet}) < 2:
        return
    for chart in charts:
        sheet = chart.place.sheet
        alone = sum(other.place.sheet == sheet for other in charts) == 1
        if sheet and alone and chart.heads == [None] and not any(chart.titles):
            chart.heads = [read_mode_head(sheet) or ModeHead(sheet, sheet, None, None, True)]


def _telling(lost: list[ChartRow], rows: list[ChartRow]) -> list[ChartRow]:
    """The rows without a slot that say something: words above the first slot are the rest of the titles."""
    first = next((i for i, row in enumerate(rows) if row.has_slot), len(rows))
    titles = [row for row in rows[:first] if not any(letter.isdigit() for letter in row.raw)]
    return [row for row in lost if not any(row is title for title in titles)]


def _mode(head: ModeHead | None, title: str, chart: Chart) -> DraftMode:
    place = chart.rows[0].place if chart.rows else chart.place
    place = replace(place, row=None) if place.page is not None else place
    if head is None:
        mode = DraftMode(title, None, None, place)
    else:
        mode = DraftMode(head.name, head.number, None, place, printed_footprint=head.footprint)
    return mode


def _without_copies(modes: list[DraftMode]) -> list[DraftMode]:
    """Two tables of one title: the same contents are one mode, different contents are two, and marked."""
    found: list[DraftMode] = []
    for mode in modes:
        twins = [m for m in found if _called(m) == _called(mode) and m.number == mode.number and mode.name]
        if any(_contents(m) == _contents(mode) for m in twins):
            continue
        if twins:
            mode.unsure.append(
                Unsure(
                    "two tables with different contents have this title",
                    mode.name,
                    "two modes",
                    "/name",
                    mode.place,
                )
            )
            mode.note = "A second table of this title."
        found.append(mode)
    return found


def _called(mode: DraftMode) -> str:
    """A mode's name for comparing: `RGB+` is another than `RGB`."""
    return fold(re.sub(r"(?<=\w)\+(?=\s|$)", " plus", mode.name))


def _contents(mode: DraftMode) -> object:
    plain = [{k: v for k, v in p.to_json().items() if k != "place"} for p in mode.parameters]
    blocks = [
        (cells, [{k: v for k, v in p.to_json().items() if k != "place"} for p in members])
        for cells, members in mode.cells
    ]
    return (plain, blocks, mode.footprint)


def _written(modes: list[DraftMode], settings: Settings, source_key: str) -> Assembled:
    made = Assembled(settings=settings.to_json(source_key))
    for index, mode in enumerate(modes):
        pointer = f"/modes/{index}"
        entry: Json = {"name": mode.name or f"{mode.footprint} slots"}
        if mode.number is not None and 1 <= mode.number <= 255:
            entry["number"] = mode.number
        entry["footprint"] = mode.footprint or 0
        entry["source"] = source_key
        if str(mode.place):
            entry["place"] = str(mode.place)
        if mode.given:
            entry["given"] = mode.given
        entry["parameters"] = []
        for number, parameter in enumerate(mode.parameters):
            entry["parameters"].append(parameter.to_json())
            at = f"{pointer}/parameters/{number}"
            made.readings.extend(_readings(parameter, at))
            made.doubts.extend(_doubt(unsure, at, tuple(parameter.slots)) for unsure in parameter.unsure)
        if mode.cells:
            entry["cells"] = []
        for number, (cells, members) in enumerate(mode.cells):
            at = f"{pointer}/cells/{number}"
            note = cells.pop("note", None)
            block = {**cells, "parameters": [member.to_json() for member in members]}
            if note:
                block["note"] = note
            entry["cells"].append(block)
            for inner, member in enumerate(members):
                made.readings.extend(_readings(member, f"{at}/parameters/{inner}"))
                made.doubts.extend(_doubt(unsure, f"{at}/parameters/{inner}", ()) for unsure in member.unsure)
        if mode.note:
            entry["note"] = mode.note
        made.modes.append(entry)
        made.doubts.extend(_doubt(unsure, pointer, unsure.slots) for unsure in mode.unsure)
    made.doubts = _once(made.doubts)
    return made


def _readings(parameter: DraftParameter, pointer: str) -> list[Reading]:
    """The rows that a parameter was read from: its own, those of its ranges and of its finer bytes."""
    entry = parameter.entry
    found = [Reading(pointer, entry.place, entry.printed)]
    stretches = [stretch for stretch in parameter.stretches if stretch.values]
    if len(parameter.ranges) == len(stretches):
        for index, stretch in enumerate(stretches):
            if "derived" not in stretch.row.why and stretch.place != entry.place:
                found.append(Reading(f"{pointer}/ranges/{index}", stretch.place, stretch.printed))
    found.extend(Reading(pointer, fine.place, fine.printed) for fine in parameter.fines)
    return found


def _doubt(unsure: Unsure, pointer: str, slots: tuple[int, ...]) -> Json:
    made: Json = {"pointer": pointer + unsure.below}
    if slots:
        made["slots"] = list(slots)
    if unsure.place is not None and str(unsure.place):
        made["place"] = str(unsure.place)
    if unsure.printed:
        made["printed"] = unsure.printed
    if unsure.read:
        made["read"] = unsure.read
    made["why"] = unsure.why
    return made


def _once(doubts: list[Json]) -> list[Json]:
    found: list[Json] = []
    for doubt in doubts:
        if doubt not in found:
            found.append(doubt)
    return found
