"""Findings as SARIF 2.1.0 (OASIS), for programs that show results of static analysis."""

from __future__ import annotations

from pathlib import PurePath
from typing import Any
from urllib.parse import quote

from modebook import __version__
from modebook.checks.bulk import CheckResult
from modebook.checks.registry import FIXTURE_RULES, rules_of
from modebook.render.jsons import to_json
from modebook.render.places import lines

_LEVEL = {"error": "error", "warning": "warning", "info": "note"}


def sarif(result: CheckResult) -> str:
    """One SARIF log with one run; the rules that fired are described in it."""
    rules = rules_of(FIXTURE_RULES)
    fired = sorted({finding.rule for finding in result.findings})
    index = {name: position for position, name in enumerate(fired)}
    results: list[dict[str, Any]] = []
    for finding, line in zip(result.findings, lines(result.findings), strict=True):
        results.append(
            {
                "ruleId": finding.rule,
                "ruleIndex": index[finding.rule],
                "level": _LEVEL[finding.severity],
                "message": {"text": finding.message + (f"; {finding.help}" if finding.help else "")},
                "locations": [
                    {
                        "physicalLocation": {
                            "artifactLocation": {"uri": quote(PurePath(finding.file).as_posix())},
                            "region": {"startLine": line},
                        },
                        "logicalLocations": [{"fullyQualifiedName": finding.pointer}],
                    }
                ],
                "properties": {"figure": dict(finding.figure)},
            }
        )
    described = [
        _described(name, rules[name].summary if name in rules else name, rules.get(name)) for name in fired
    ]
    driver = {"name": "modebook", "version": __version__, "rules": described}
    return to_json(
        {
            "$schema": "https://json.schemastore.org/sarif-2.1.0.json",
            "version": "2.1.0",
            "runs": [{"tool": {"driver": driver}, "results": results}],
        }
    )


def _described(name: str, summary: str, rule: Any) -> dict[str, Any]:
    described: dict[str, Any] = {"id": name, "shortDescription": {"text": summary}}
    if rule is not None:
        described["fullDescription"] = {"text": rule.checks}
        described["help"] = {"text": rule.why}
    return described
