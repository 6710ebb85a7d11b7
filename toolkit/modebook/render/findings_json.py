"""Findings of a check as one JSON object."""

from __future__ import annotations

from modebook.checks.bulk import CheckResult
from modebook.checks.finding import Finding
from modebook.render.jsons import to_json


def check_json(result: CheckResult) -> str:
    """``{"documents": n, "findings": [...]}``, each finding as finding_object makes it."""
    return to_json(
        {"documents": result.documents, "findings": [finding_object(finding) for finding in result.findings]}
    )


def finding_object(finding: Finding) -> dict[str, object]:
    """One finding with the keys that programs read."""
    return {
        "rule": finding.rule,
        "severity": finding.severity,
        "file": finding.file,
        "pointer": finding.pointer,
        "message": finding.message,
        "figure": dict(finding.figure),
        "help": finding.help,
    }
