"""A list of shots out of a table: rows become cues in setups and shots; faults are told row by row."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from modebook.documents.base import slug
from modebook.documents.shots import Cue, Setup, Shot, ShotFault, Shots
from modebook.rig.grouping import unit_ranges
from modebook.rig.reading import RigReading
from modebook.shelf.errors import ShelfError
from modebook.shelf.table import Row, Table, fold_title
from modebook.shelf.tables import read_table, table_from_bytes
from modebook.shots import notation
from modebook.shots.order import ordered
from modebook.shots.patched import patched_units
from modebook.shots.titles import KNOWN, SUCH_AS, TIMES, Column, columns_of
from modebook.words.intents import Intent
from modebook.words.parameters import PARAMETERS

T = TypeVar("T")
U = TypeVar("U")
_SAME: tuple[Column, ...] = ("day", "scene", "setup", "shot")
"""Columns in which a blank means 'as above': people write a setup once, over its first cue."""
_SYNONYMS = {
    "": "dimmer",
    "intensity": "dimmer",
    "int": "dimmer",
    "dim": "dimmer",
    "level": "dimmer",
    "brightness": "dimmer",
    "x": "cie-x",
    "y": "cie-y",
    "cct": "color-temperature",
    "kelvin": "color-temperature",
}


def read_shots(path: Path | str, reading: RigReading, *, sheet: str | None = None) -> Shots:
    """The shots in a CSV, XLSX or ODS file, against a rig's patch.

    Raises ShelfError where the file cannot be read at all or names no units. A row that cannot be read is a
    fault and its cue is left out; one that can be read in part is a fault and stays, without that part.
    """
    return shots_from_table(read_table(path, KNOWN, sheet=sheet, such_as=SUCH_AS), reading)


def shots_from_text(text: str, reading: RigReading, path: str = "shots.csv") -> Shots:
    """The shots in the text of a CSV."""
    return shots_from_table(table_from_bytes(text.encode(), path, KNOWN, such_as=SUCH_AS), reading)


def shots_from_table(table: Table, reading: RigReading) -> Shots:
    """The shots in a table. Raises ShelfError where it lacks the units or the level that a cue goes to."""
    at = columns_of(table.titles)
    needed: Column
    for needed in ("units", "to"):
        if needed not in at:
            found = ", ".join(repr(title) for title in table.titles if title)
            lacking = "which units move" if needed == "units" else "to what level"
            raise ShelfError(
                table.path,
                f"the columns are {found}: none says {lacking}",
                place=f"row {table.title_row}",
                remedy=f"add one titled {needed!r}",
            )
    reader = _Reader(table, at, reading)
    if "time" in at and "seconds" not in at and fold_title(table.titles[at["time"]]) in TIMES:
        title = table.titles[at["time"]]
        reader.notes.append(
            f"no column says how long cues take: {title!r} was read as when they start, and cues are at once "
            "where no intent speaks against it; title the other column 'seconds'"
        )
    for row in table.rows:
        reader.take(row)
    return reader.shots()


class _Reader:
    """Reads row after row, and keeps what holds from above: the setup, the shot, when the last cue ended."""

    def __init__(self, table: Table, at: dict[Column, int], reading: RigReading) -> None:
        self.table, self.at, self.reading = table, at, reading
        self.units = notation.UnitNames(reading)
        self.above: dict[Column, str] = {}
        self.faults: list[ShotFault] = []
        self.notes = list(table.notes)
        self.found: list[tuple[tuple[str, str, str, str], Cue]] = []
        self.ended: dict[tuple[str, str, str, str], float] = {}
        self.levels: dict[tuple[tuple[str, str, str, str], str, str], float] = {}
        self.patched = patched_units(reading)
        self.unsaid: list[int] = []
        """Rows of cues of which nobody says where they start."""

    def text(self, row: Row, column: Column) -> str:
        """A cell as written; empty where there is no such column."""
        place = self.at.get(column)
        return row.cells[place].strip() if place is not None else ""

    def fault(self, row: Row, column: Column, why: str) -> None:
        """Keep a fault; the column is told by its title."""
        place = self.at.get(column)
        title = self.table.titles[place] if place is not None else column
        name = self.text(row, "cue")
        self.faults.append(ShotFault(row.number, name, title, self.text(row, column), why))

    def read(self, row: Row, column: Column, read: Callable[[str], T], missing: U) -> T | U:
        """A cell's value, `missing` where it is blank; a fault and `missing` where it cannot be read."""
        text = self.text(row, column)
        if not text or text in ("-", "\u2013"):
            return missing
        try:
            return read(text)
        except ValueError as error:
            self.fault(row, column, str(error))
            return missing

    def take(self, row: Row) -> None:
        """Take one row: a cue, a heading, or nothing."""
        if row.blank:
            return
        self._as_above(row)
        if not self.text(row, "units"):
            if any(self.text(row, column) for column in ("to", "from", "intent", "seconds")):
                self.fault(row, "units", "no units: write which lights move")
            elif not any(self.text(row, column) for column in _SAME):
                self.notes.append(f"row {row.number} was taken for a heading")
            return
        place = self._place()
        units = self._units(row)
        parameter = self._parameter(row)
        if units is None or parameter is None:
            return
        units = self._that_have(row, units, parameter)
        target = self.read(row, "to", notation.level, None)
        if not units or target is None:
            if target is None and not self.text(row, "to"):
                self.fault(row, "to", "no level: write where the cue goes, in percent")
            return
        faults = len(self.faults)
        intent = self._intent(row)
        seconds_s = self._seconds(row, intent)
        if intent is None or seconds_s is None:
            return
        start_s = self.read(row, "time", notation.seconds, self.ended.get(place, 0.0))
        if len(self.faults) > faults and self.text(row, "time") and start_s == self.ended.get(place, 0.0):
            self.notes.append(f"row {row.number} was taken to follow the cue before it")
        fps = self.read(row, "fps", notation.frames, None)
        rate = fps or (self.reading.rig.camera.fps if self.reading.rig.camera else None)
        cue = Cue(
            row=row.number,
            name=self.text(row, "cue") or f"row {row.number}",
            units=tuple(units),
            units_written=self.text(row, "units"),
            parameter=parameter,
            from_percent=self._from(row, place, units, parameter, target),
            to_percent=target,
            start_s=start_s,
            seconds_s=seconds_s,
            intent=intent,
            fps=fps,
            shutter_deg=self.read(row, "shutter", lambda text: notation.shutter(text, rate), None),
            note=self.text(row, "note"),
        )
        self.found.append((place, cue))
        self.ended[place] = max(self.ended.get(place, 0.0), cue.end_s)
        for unit in units:
            self.levels[place, unit, parameter] = target

    def _as_above(self, row: Row) -> None:
        for depth, column in enumerate(_SAME):
            text = self.text(row, column)
            if text:
                if text != self.above.get(column):
                    for below in _SAME[depth + 1 :]:
                        if below in self.at and not self.text(row, below):
                            self.above.pop(below, None)
                self.above[column] = text

    def _place(self) -> tuple[str, str, str, str]:
        day, scene, setup, shot = (self.above.get(column, "") for column in _SAME)
        if not setup:
            # Without setups each shot is one; without either the scene, the day, or the whole list.
            setup = f"shot {shot}" if shot else (f"scene {scene}" if scene else "all shots")
        return day, scene, setup, shot or "all cues"

    def _units(self, row: Row) -> list[str] | None:
        try:
            units = self.units.meant(self.text(row, "units"))
        except ValueError as error:
            self.fault(row, "units", str(error))
            return None
        missing = [unit for unit in units if unit.casefold() not in self.patched]
        if missing:
            told = "; ".join(f"{unit}: {self.patched.why(unit)}" for unit in missing[:6])
            self.fault(row, "units", f"a cue on units that cannot be planned ({told}): the others stay")
        return [unit for unit in units if unit not in missing]

    def _parameter(self, row: Row) -> str | None:
        told = slug(self.text(row, "parameter")) if self.text(row, "parameter") else ""
        word = _SYNONYMS.get(told, told)
        if word in PARAMETERS or any(self.patched.has(unit, word) for unit in self.patched.numbers):
            return word
        from rapidfuzz import process

        near = process.extract(word, list(PARAMETERS), limit=3, score_cutoff=60)
        hint = f": is {' or '.join(str(name) for name, _, _ in near)} meant?" if near else ""
        self.fault(row, "parameter", f"no parameter {self.text(row, 'parameter')!r} is known{hint}")
        return None

    def _that_have(self, row: Row, units: list[str], parameter: str) -> list[str]:
        without = [unit for unit in units if not self.patched.has(unit, parameter)]
        if without:
            told = f"the modes of {unit_ranges(without)} have no {parameter} that fades: left out of this cue"
            self.fault(row, "parameter", told)
        return [unit for unit in units if unit not in without]

    def _intent(self, row: Row) -> Intent | None:
        text = self.text(row, "intent")
        if not text:
            return "any"
        try:
            return notation.intent(text)
        except ValueError as error:
            self.fault(row, "intent", str(error))
            return None

    def _seconds(self, row: Row, intent: Intent | None) -> float | None:
        text = self.text(row, "seconds")
        if not text or text in ("-", "\u2013"):
            if intent in ("smooth", "unseen"):
                self.fault(row, "seconds", f"a cue that must be {intent} takes time: write how many seconds")
                return None
            return 0.0
        if text.casefold() in notation.INTENT_WORDS and notation.INTENT_WORDS[text.casefold()] == "snap":
            return 0.0
        try:
            told_s = notation.seconds(text)
        except ValueError as error:
            self.fault(row, "seconds", str(error))
            return None
        place = self.at["seconds"]
        if row.kind(place) == "date" and told_s >= 60.0:
            # Typed as 0:03 a sheet keeps three minutes, and not three seconds.
            minutes = f"{told_s / 60:g} minutes"
            self.notes.append(f"row {row.number}: the sheet's time {text} was read as {minutes}")
        return told_s

    def _from(
        self, row: Row, place: tuple[str, str, str, str], units: list[str], parameter: str, target: float
    ) -> float:
        """Where the cue starts: as written, else where these units were left in this shot, else far away."""
        before = {self.levels[key] for unit in units if (key := (place, unit, parameter)) in self.levels}
        last = max(before, default=None)
        if len(before) > 1 and self.text(row, "from").casefold() in notation.AS_BEFORE:
            told = " and ".join(f"{level:g}" for level in sorted(before))
            self.notes.append(f"row {row.number}: its lights stand at {told} % before: the highest is taken")
        missing = last if last is not None else (0.0 if target > 0 else 100.0)
        if last is None and self.text(row, "from").casefold() in notation.AS_BEFORE:
            self.unsaid.append(row.number)
        if self.text(row, "from").casefold() in notation.AS_BEFORE:
            return missing
        return self.read(row, "from", notation.level, missing)

    def shots(self) -> Shots:
        """All that was read, in shooting order."""
        if self.unsaid:
            rows = unit_ranges([str(row) for row in self.unsaid])
            self.notes.append(f"row {rows}: no level to start from; taken from 0 % up, or from full to 0 %")
        placed, faults = ordered(self.found)
        self.faults += faults
        setups: list[Setup] = []
        by_setup: dict[tuple[str, str, str], dict[str, list[Cue]]] = {}
        for (day, scene, setup, shot), cue in placed:
            by_setup.setdefault((day, scene, setup), {}).setdefault(shot, []).append(cue)
        for (day, scene, setup), shots in by_setup.items():
            made = tuple(Shot(name, tuple(cues)) for name, cues in shots.items())
            setups.append(Setup(setup, day, scene, made))
        self.faults.sort(key=lambda fault: fault.row)
        return Shots(self.table.path, tuple(setups), tuple(self.faults), tuple(dict.fromkeys(self.notes)))
