"""Groups findings by their cause: forty units with one wrong mode are one paragraph."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from modebook.checks.finding import SEVERITIES, Finding
from modebook.documents.policy import Severity

_NUMBERED = re.compile(r"(?P<before>.*?)(?P<number>[0-9]{1,12})(?P<after>[^0-9]*)")


@dataclass(frozen=True, slots=True)
class Cause:
    """Findings of one rule with one cause."""

    rule: str
    severity: Severity
    fixture: str
    """The fixture that they are about; empty where they are about none."""
    mode: str
    findings: tuple[Finding, ...]

    @property
    def units(self) -> str:
        """The units for people: ``1-14, 20, 12A``."""
        return unit_ranges(finding.unit for finding in self.findings if finding.unit)

    @property
    def rows(self) -> tuple[int, ...]:
        """The rows of the file, in order."""
        return tuple(sorted({finding.row for finding in self.findings if finding.row is not None}))

    @property
    def message(self) -> str:
        """What is wrong: the sentence of the worst finding, which is the first one where all are alike."""
        return self.findings[0].message

    @property
    def messages(self) -> tuple[str, ...]:
        """The different sentences, in the order of the rows: one where the findings are alike."""
        return tuple(dict.fromkeys(finding.message for finding in self.findings))

    @property
    def help(self) -> str:
        """What to do about it."""
        return next((finding.help for finding in self.findings if finding.help), "")


def by_cause(findings: Iterable[Finding]) -> list[Cause]:
    """Findings of the same rule, severity, fixture and mode together; the worst first, then in rows' order.

    Findings about one parameter each (a coarse pan, a coarse tilt) stay apart by the place in the record,
    and those about several units at once by what their rule calls the `cause`: a group, a universe.
    """
    groups: dict[tuple[str, Severity, str, str, str], list[Finding]] = {}
    for finding in findings:
        figure = finding.figure
        fixture, mode = str(figure.get("fixture", "")), str(figure.get("mode", ""))
        place = str(figure.get("pointer", "")) or (str(figure.get("column", "")) if not fixture else "")
        place = str(figure.get("cause", "")) or place
        groups.setdefault((finding.rule, finding.severity, fixture, mode, place), []).append(finding)
    causes = [
        Cause(rule, severity, fixture, mode, tuple(sorted(group, key=lambda one: one.row or 0)))
        for (rule, severity, fixture, mode, _), group in groups.items()
    ]
    return sorted(
        causes,
        key=lambda cause: (SEVERITIES.index(cause.severity), cause.rule, cause.findings[0].row or 0),
    )


def unit_ranges(units: Iterable[str | None]) -> str:
    """Unit numbers for people, neighbors drawn together: ``1-14, 20, 12A``; each once, in the order given."""
    told: list[str] = []
    run: list[str] = []
    before: re.Match[str] | None = None
    for unit in dict.fromkeys(unit for unit in units if unit):
        match = _NUMBERED.fullmatch(unit)
        if before is None or match is None or not _follows(before, match):
            told.extend(_told(run))
            run = []
        run.append(unit)
        before = match
    told.extend(_told(run))
    return ", ".join(told)


def _follows(one: re.Match[str], two: re.Match[str]) -> bool:
    return (
        int(two["number"]) == int(one["number"]) + 1
        and one["before"] == two["before"]
        and one["after"] == two["after"]
        and len(two["number"]) >= len(one["number"])
    )


def _told(run: Sequence[str]) -> list[str]:
    return [f"{run[0]}-{run[-1]}"] if len(run) > 2 else list(run)
