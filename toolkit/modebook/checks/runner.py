"""Runs fixture rules over a document: faults become findings, acceptances are kept to, a crash is a finding."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from modebook.checks.finding import Fault, Finding
from modebook.checks.reading import FixtureReading
from modebook.checks.rule import Rule

STALE = "stale-acceptance"
CRASHED = "rule-crashed"


def run_rules(reading: FixtureReading, rules: Mapping[str, Rule[Any]]) -> list[Finding]:
    """The findings of one document, those that it accepts left out.

    An acceptance covers a rule at a pointer and below it. One that covers no finding goes to the rule
    `stale-acceptance`, if that rule is among `rules`. A rule that raises becomes a finding that names it.
    """
    found: list[Finding] = []
    for rule in rules.values():
        try:
            for fault in rule.check(reading):
                found.append(Finding.of(fault, rule.name, rule.severity, reading.file))
        except Exception as error:  # noqa: BLE001 - a rule's own fault must not cost the other rules' findings
            found.append(crash(rule.name, reading.file, error))
    accepted = reading.fixture.accepted
    if not accepted:
        return found
    used: set[int] = set()
    kept: list[Finding] = []
    for finding in found:
        by = _covering(finding, accepted)
        if by is None:
            kept.append(finding)
        else:
            used.add(by)
    if STALE in rules:
        for index, acceptance in enumerate(accepted):
            if index not in used and acceptance.rule in rules:
                fault = Fault(
                    f"/accepted/{index}",
                    f"the acceptance of {acceptance.rule} at {acceptance.pointer or 'the document'} "
                    "covers no finding",
                    {"rule": acceptance.rule, "pointer": acceptance.pointer},
                    "take it out: the fault that it accepted is gone",
                )
                kept.append(Finding.of(fault, STALE, rules[STALE].severity, reading.file))
    return kept


def crash(rule: str, file: str, error: Exception) -> Finding:
    """The finding that a rule's own fault becomes."""
    return Finding(
        CRASHED,
        "error",
        file,
        "",
        f"the rule {rule} failed on this document: {type(error).__name__}: {error}",
        {"rule": rule, "error": type(error).__name__},
        "this is a fault of the program: please report it with the document",
    )


def _covering(finding: Finding, accepted: Iterable[Any]) -> int | None:
    for index, acceptance in enumerate(accepted):
        if acceptance.rule == finding.rule and (
            finding.pointer == acceptance.pointer or finding.pointer.startswith(acceptance.pointer + "/")
        ):
            return index
    return None
