"""What all rigs are asked: resolution demands unmet, fixtures without a record, and who uses a fixture."""

from __future__ import annotations

from dataclasses import dataclass, field

from modebook.checks.finding import Finding
from modebook.rig.gathered import units_once
from modebook.rig.in_use import findings_in_use
from modebook.rig.reading import PatchedRow, RigReading


@dataclass(frozen=True, slots=True)
class UnmetUnit:
    """A unit whose mode is too coarse somewhere, and where."""

    row: PatchedRow
    findings: tuple[Finding, ...]
    """Its coarse findings of severity error or warning."""

    def to_json(self) -> dict[str, object]:
        """The unit for JSON."""
        return {
            "unit": self.row.unit.number,
            "row": self.row.unit.row,
            "fixture": self.row.identity,
            "mode": self.row.mode.mode.name if self.row.mode else self.row.unit.mode,
            "position": self.row.unit.position,
            "rules": sorted({finding.rule for finding in self.findings}),
            "severity": "error" if any(f.severity == "error" for f in self.findings) else "warning",
        }


@dataclass(slots=True)
class RigDemands:
    """What a rig leaves open."""

    unmet: list[UnmetUnit] = field(default_factory=list)
    """Units with coarse findings of severity error or warning."""
    without_record: list[PatchedRow] = field(default_factory=list)
    """Units whose fixture has no record that can be told apart and read."""

    def to_json(self) -> dict[str, object]:
        """Counts for JSON; scripts rely on the keys."""
        return {"resolution_unmet": len(self.unmet), "without_record": len(self.without_record)}

    def which_json(self) -> dict[str, object]:
        """The units for JSON."""
        return {
            "resolution_unmet": [unit.to_json() for unit in self.unmet],
            "without_record": [
                {"unit": row.unit.number, "row": row.unit.row, "fixture": row.unit.fixture}
                for row in self.without_record
            ],
        }


@dataclass(frozen=True, slots=True)
class UsingMode:
    """The units of a rig that use a fixture in one mode."""

    mode: str
    number: int | None
    """The personality number, where known."""
    known: bool
    """Whether the fixture has such a mode."""
    units: tuple[str, ...]

    def to_json(self) -> dict[str, object]:
        """The mode for JSON."""
        return {"mode": self.mode, "number": self.number, "known": self.known, "units": list(self.units)}


def demands(reading: RigReading) -> RigDemands:
    """The resolution demands that a rig does not meet, and its fixtures without a record."""
    by_row: dict[int, list[Finding]] = {}
    for finding in findings_in_use(reading, ("coarse_",)):
        if finding.severity != "info" and finding.row is not None:
            by_row.setdefault(finding.row, []).append(finding)
    found = RigDemands()
    for row in units_once(reading):
        if row.fixture is None:
            found.without_record.append(row)
        elif row.unit.row in by_row:
            found.unmet.append(UnmetUnit(row, tuple(by_row[row.unit.row])))
    return found


def using(reading: RigReading, identity: str) -> list[UsingMode]:
    """The modes in which a rig uses a fixture (``maker/model``), with their units; empty for none."""
    found: dict[tuple[str, int | None, bool], list[str]] = {}
    for row in units_once(reading):
        if row.identity == identity:
            mode = row.mode.mode if row.mode else None
            key = (mode.name, mode.number, True) if mode else (row.unit.mode, None, False)
            found.setdefault(key, []).append(row.unit.number)
    return [UsingMode(*key, tuple(units)) for key, units in found.items()]
