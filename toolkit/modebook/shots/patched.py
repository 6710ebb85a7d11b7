"""The units of a rig that can be planned: patched, with a record and a known mode; and why others cannot."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from modebook.documents.layout import all_parameters
from modebook.documents.modes import Parameter
from modebook.rig.reading import PatchedRow, RigReading
from modebook.words.parameters import PARAMETERS


@dataclass
class Patched:
    """The first row of each unit that can be planned, by its number's case-folded form."""

    rows: dict[str, tuple[PatchedRow, ...]] = field(default_factory=dict)
    reasons: dict[str, str] = field(default_factory=dict)
    _words: dict[int, Mapping[str, Parameter]] = field(default_factory=dict)

    def __contains__(self, number: str) -> bool:
        return number.casefold() in self.rows

    def __getitem__(self, number: str) -> PatchedRow:
        return self.rows[number.casefold()][0]

    @property
    def numbers(self) -> Iterator[str]:
        """The units' numbers as the patch writes them, in its order."""
        for rows in self.rows.values():
            yield rows[0].unit.number

    def why(self, number: str) -> str:
        """Why a unit cannot be planned."""
        return self.reasons.get(number.casefold(), "the patch lacks it")

    def has(self, number: str, parameter: str) -> bool:
        """Whether a unit's mode has a parameter, by its key or word, that fades."""
        return number in self and self.parameter(number, parameter) is not None

    def parameter(self, number: str, name: str) -> Parameter | None:
        """A unit's parameter by key or word, of several the one with most bytes; None where it has none."""
        row = self[number]
        assert row.mode is not None
        if id(row.mode) not in self._words:
            found: dict[str, Parameter] = {}
            for parameter, _ in all_parameters(row.mode.mode):
                for told in {parameter.parameter, parameter.key or parameter.parameter}:
                    if told not in found or len(parameter.slots) > len(found[told].slots):
                        found[told] = parameter
            self._words[id(row.mode)] = found
        meant = self._words[id(row.mode)].get(name)
        return meant if meant is not None and PARAMETERS[meant.parameter].continuous else None


def patched_units(reading: RigReading) -> Patched:
    """What of a rig can be planned. Of a unit number that stands twice the first row counts."""
    found = Patched()
    for number, rows in reading.by_unit.items():
        row = rows[0]
        if row.fixture is None:
            found.reasons[number] = f"no record of {row.unit.fixture or 'its fixture'}"
        elif row.mode is None:
            found.reasons[number] = f"its mode {row.unit.mode!r} is not in the record"
        elif row.unit.address is None:
            found.reasons[number] = "it is not patched"
        else:
            parts = len(row.mode.blocks) > 1
            found.rows[number] = tuple(rows) if parts else (row,)
    return found
