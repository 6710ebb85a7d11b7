"""Compares a list read off the fixtures with the plan: what hangs, listens or is set otherwise."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field

from modebook.checks.finding import SEVERITIES
from modebook.documents.policy import Severity
from modebook.documents.rig import Reach, YesNoUnknown
from modebook.rig.differences import Difference, Notes, differences, extra, missing, unread
from modebook.rig.found_reading import AsFound
from modebook.rig.matching import Identities, match, planned_units
from modebook.rig.reading import RigReading


@dataclass(frozen=True, slots=True)
class Deviation:
    """One thing that is otherwise than planned, with the unit's place."""

    rule: str
    severity: Severity
    unit: str
    planned: object
    """As planned, ready for JSON; None where nothing was."""
    found: object
    message: str
    task: str
    """What the person at the fixture does; empty where there is nothing to do."""
    position: str = ""
    reach: Reach | None = None
    row: int | None = None
    """The row of the list; None for a unit that it lacks."""
    patch_row: int | None = None
    how: str = ""
    """What the two were matched by."""
    fixture: str = ""
    rdm: YesNoUnknown = "unknown"
    """Whether RDM passes in its universe, as the rig says."""
    column: str = ""
    by_rdm: bool = False
    """Whether RDM can set it right where it passes."""

    def to_json(self) -> dict[str, object]:
        """The deviation for JSON; scripts rely on its keys."""
        return {
            "rule": self.rule,
            "unit": self.unit,
            "planned": self.planned,
            "found": self.found,
            "severity": self.severity,
            "message": self.message,
            "task": self.task,
            "fixture": self.fixture,
            "position": self.position or None,
            "reach": self.reach,
            "row": self.row,
            "patch_row": self.patch_row,
            "column": self.column or None,
            "how": self.how or None,
            "by_rdm": self.by_rdm,
            "rdm_reaches": self.rdm,
        }


@dataclass(slots=True)
class Verification:
    """What a comparison came to: findings in the order of severity, rule and patch."""

    rig: str
    patch: str
    as_found: str
    units: int
    rows: int
    matched: int
    """Units that at least one row is about."""
    doubtful: int
    by: dict[str, int] = field(default_factory=dict)
    """How many rows were matched by what."""
    findings: list[Deviation] = field(default_factory=list)
    notes: tuple[str, ...] = ()

    @property
    def summary(self) -> dict[str, int]:
        """How many findings of each severity, the worst first."""
        return {s: sum(finding.severity == s for finding in self.findings) for s in SEVERITIES}

    def to_json(self) -> dict[str, object]:
        """The comparison for JSON; scripts rely on its keys."""
        return {
            "rig": self.rig,
            "patch": self.patch,
            "as_found": self.as_found,
            "units": self.units,
            "rows": self.rows,
            "matched": self.matched,
            "doubtful": self.doubtful,
            "matched_by": dict(self.by),
            "summary": self.summary,
            "findings": [finding.to_json() for finding in self.findings],
            "notes": list(self.notes),
        }


def verify(reading: RigReading, as_found: AsFound) -> Verification:
    """Compare a list with a rig. What the plan does not say, or the list does not, is not compared."""
    identities = Identities(reading)
    matching = match(reading, as_found, identities)
    notes = Notes()
    found = [unread(fault) for fault in as_found.faults]
    for one in matching.matches:
        found += differences(one, identities, notes)
    found += [missing(unit) for unit in matching.missing]
    found += [extra(reading, row, identities) for row in matching.extra]
    findings = [_placed(reading, one) for one in found]
    findings.sort(
        key=lambda one: (SEVERITIES.index(one.severity), one.rule, one.patch_row or 10**9, one.row or 0)
    )
    return Verification(
        reading.name,
        reading.patch.path,
        as_found.path,
        len(planned_units(reading)),
        len(as_found.rows),
        len({id(one.planned) for one in matching.matches}),
        sum(bool(one.doubt) for one in matching.matches),
        dict(Counter(one.how for one in matching.matches)),
        findings,
        (*reading.patch.notes, *as_found.notes, *notes.told()),
    )


def _placed(reading: RigReading, one: Difference) -> Deviation:
    row = one.planned.first if one.planned else None
    address = row.unit.address if row else None
    universe = address.universe if address else (one.row.universe if one.row else None)
    return Deviation(
        one.rule,
        one.severity,
        one.unit,
        one.was,
        one.now,
        one.message,
        one.task,
        (row.unit.position if row else "") or (one.row.position if one.row else ""),
        row.reach if row else None,
        one.line or (one.row.row if one.row else None),
        row.unit.row if row else None,
        one.how,
        one.fixture,
        reading.link(universe).rdm if universe else "unknown",
        one.column,
        one.by_rdm,
    )
