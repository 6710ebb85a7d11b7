"""Audits a rig: the patch rules, the rules for the modes in use, and each universe's load."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from modebook.checks.finding import SEVERITIES, Finding
from modebook.checks.registry import rules_of
from modebook.checks.runner import crash
from modebook.rig.in_use import findings_in_use
from modebook.rig.reading import RigReading
from modebook.rig.rules import PACKAGE
from modebook.shelf.memory import collector_at_rest

_RANK = {severity: rank for rank, severity in enumerate(SEVERITIES)}


@dataclass(frozen=True, slots=True)
class UniverseLoad:
    """What a universe carries."""

    universe: int
    slots_used: int
    highest_address: int
    max_refresh_hz: float
    """How often a DMX512 line can send it, at E1.11's shortest timing."""


@dataclass(slots=True)
class Audit:
    """What an audit found, ordered by row, then rule."""

    rig: str
    patch: str
    """The patch file."""
    units: int
    """Units in the patch; one unit over several rows counts once."""
    universes: list[UniverseLoad] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
    notes: tuple[str, ...] = ()
    """What a person should know about how the patch was read."""

    @property
    def summary(self) -> dict[str, int]:
        """How many findings of each severity, the worst first."""
        return {s: sum(finding.severity == s for finding in self.findings) for s in SEVERITIES}

    def to_json(self) -> dict[str, object]:
        """The audit for JSON; scripts rely on its keys."""
        return {
            "rig": self.rig,
            "patch": self.patch,
            "units": self.units,
            "universes": [
                {
                    "universe": load.universe,
                    "slots_used": load.slots_used,
                    "highest_address": load.highest_address,
                    "max_refresh_hz": load.max_refresh_hz,
                }
                for load in self.universes
            ],
            "summary": self.summary,
            "findings": [
                {
                    "rule": finding.rule,
                    "severity": finding.severity,
                    "unit": finding.unit,
                    "row": finding.row,
                    "column": finding.pointer,
                    "message": finding.message,
                    "figure": dict(finding.figure),
                    "help": finding.help,
                }
                for finding in self.findings
            ],
            "notes": list(self.notes),
        }


def audit(reading: RigReading) -> Audit:
    """The audit of a rig. Faults of rows are findings; a rule that fails becomes a finding that names it."""
    with collector_at_rest():
        findings = [*patch_findings(reading), *findings_in_use(reading)]
        findings.sort(key=lambda finding: (finding.row or 0, _RANK[finding.severity], finding.rule))
        return Audit(
            reading.name,
            reading.patch.path,
            units_counted(reading),
            loads(reading),
            findings,
            (*reading.patch.notes, *_strangers(reading), *reading.misnamed),
        )


def patch_findings(reading: RigReading, rules: Sequence[str] | None = None) -> Iterable[Finding]:
    """What the patch rules find, all of them or some by name."""
    for name, rule in rules_of(PACKAGE).items():
        if rules is not None and name not in rules:
            continue
        try:
            for fault in rule.check(reading):
                yield Finding.of(fault, name, rule.severity, reading.patch.path)
        except Exception as error:  # noqa: BLE001 - one rule's own fault must not cost the others' findings
            yield crash(name, reading.patch.path, error)


def loads(reading: RigReading) -> list[UniverseLoad]:
    """What each universe in use carries, in order."""
    from modebook.response.timing import max_refresh_hz

    return [
        UniverseLoad(
            universe.number,
            universe.slots_used,
            universe.highest_address,
            round(max_refresh_hz(universe.highest_address), 3),
        )
        for universe in reading.universes
    ]


def units_counted(reading: RigReading) -> int:
    """How many units a patch has: rows of one number count once if they are parts of one unit."""
    total = sum(1 for row in reading.rows if not row.unit.number)
    for rows in reading.by_unit.values():
        total += len(rows) if rows[0].mode is None or len(rows[0].mode.blocks) < 2 else 1
    return total


def _strangers(reading: RigReading) -> list[str]:
    if not reading.strangers:
        return []
    return [f"rig.json speaks of units that the patch lacks: {', '.join(reading.strangers)}"]
