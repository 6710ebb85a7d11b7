"""A finding: one fault found by a check, with its place and its figure."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from modebook.documents.policy import Severity

Figure = Mapping[str, object]
"""What was computed, ready for JSON; units stand in the names (`step_deg`)."""

SEVERITIES: tuple[Severity, ...] = ("error", "warning", "info")
"""From the worst down."""


@dataclass(frozen=True, slots=True)
class Fault:
    """What a rule reports; the runner adds whose rule it was and in which file."""

    pointer: str
    """JSON pointer of the place in the document; for a patch the column, or nothing."""
    message: str
    """One sentence: what is wrong."""
    figure: Figure = field(default_factory=dict)
    help: str = ""
    """What would be right, in a sentence that names real modes, units or values."""
    severity: Severity | None = None
    """Where it differs from the rule's own."""
    unit: str | None = None
    """For a patch: the unit number as written."""
    row: int | None = None
    """For a patch: the line of the file."""


@dataclass(frozen=True, slots=True)
class Finding:
    """One fault found by a check."""

    rule: str
    severity: Severity
    file: str
    pointer: str
    message: str
    figure: Figure = field(default_factory=dict)
    help: str = ""
    unit: str | None = None
    row: int | None = None

    @classmethod
    def of(cls, fault: Fault, rule: str, severity: Severity, file: str) -> Finding:
        """The finding that a rule's fault makes in a file."""
        return cls(
            rule,
            fault.severity or severity,
            file,
            fault.pointer,
            fault.message,
            fault.figure,
            fault.help,
            fault.unit,
            fault.row,
        )


def worst(findings: list[Finding]) -> Literal["error", "warning", "info"] | None:
    """The worst severity among findings; None without any."""
    present = {finding.severity for finding in findings}
    return next((severity for severity in SEVERITIES if severity in present), None)
