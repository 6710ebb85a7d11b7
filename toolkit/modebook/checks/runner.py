"""Runs fixture rules over a document: faults become findings, acceptances hold, a crash is a finding."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from modebook.checks.acceptance import covers
from modebook.checks.finding import Finding
from modebook.checks.reading import FixtureReading
from modebook.checks.rule import Rule

STALE = "stale-acceptance"
"""The rule on acceptances that cover nothing; its own findings cannot be accepted."""
CRASHED = "rule-crashed"


def run_rules(reading: FixtureReading, rules: Mapping[str, Rule[Any]]) -> list[Finding]:
    """The findings of one document, those that it accepts left out.

    An acceptance covers a rule's findings at a pointer and below it. A rule that raises becomes a finding
    that names it.
    """
    found: list[Finding] = []
    for rule in rules.values():
        try:
            for fault in rule.check(reading):
                found.append(Finding.of(fault, rule.name, rule.severity, reading.file))
        except Exception as error:  # noqa: BLE001 - a rule's own fault must not cost the other rules' findings
            found.append(crash(rule.name, reading.file, error))
    accepted = reading.fixture.accepted
    if not accepted or not found:
        return found
    return [
        finding
        for finding in found
        if finding.rule == STALE or not any(covers(one, finding.rule, finding.pointer) for one in accepted)
    ]


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
