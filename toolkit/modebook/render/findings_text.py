"""Findings of a check for people: by file, worst first, each with its line, its figure in words, and help."""

from __future__ import annotations

import textwrap
from collections import Counter
from collections.abc import Mapping
from typing import TYPE_CHECKING

from modebook.render.terminal import paint, width

if TYPE_CHECKING:
    from modebook.checks.bulk import CheckResult
    from modebook.checks.finding import Finding

SEVERITY_STYLE: Mapping[str, str] = {"error": "bold red", "warning": "yellow", "info": "cyan"}


def text(result: CheckResult) -> str:
    """Every finding in a short paragraph, and a line that counts them."""
    from modebook.checks.finding import SEVERITIES
    from modebook.render.places import lines

    out: list[str] = []
    at = lines(result.findings)
    order = sorted(
        zip(result.findings, at, strict=True),
        key=lambda pair: (pair[0].file, SEVERITIES.index(pair[0].severity), pair[1]),
    )
    file = None
    for finding, line in order:
        if finding.file != file:
            file = finding.file
            out.append(("" if not out else "\n") + paint(file, "bold"))
        out.append(paragraph(finding, f"line {line}"))
    if out:
        out.append("")
    out.append(
        summary(result.findings, f"{result.documents} document{'s' * (result.documents != 1)} checked")
    )
    if result.findings:
        out.append("`modebook check --explain RULE` tells what a rule checks, and why.")
    return "\n".join(out) + "\n"


def paragraph(finding: Finding, place: str) -> str:
    """One finding: severity, rule and place on a line, then what is wrong and what would be right."""
    severity = paint(finding.severity, SEVERITY_STYLE[finding.severity])
    head = f"  {severity} {paint(finding.rule, 'bold')}  {place}"
    if finding.pointer:
        head += f"  {paint(finding.pointer, 'dim')}"
    body = _wrapped(sentence(finding.message))
    if finding.help:
        body += "\n" + _wrapped("→ " + sentence(finding.help))
    return f"{head}\n{body}"


def summary(findings: list[Finding], what: str) -> str:
    """``12 documents checked: 2 errors, 1 warning.``"""
    from modebook.checks.finding import SEVERITIES

    counts = Counter(finding.severity for finding in findings)
    words = {"error": ("error", "errors"), "warning": ("warning", "warnings"), "info": ("remark", "remarks")}
    told = [
        f"{counts[severity]} {words[severity][counts[severity] != 1]}"
        for severity in SEVERITIES
        if counts[severity]
    ]
    return f"{what}: {', '.join(told) if told else 'nothing to find'}."


def sentence(words: str) -> str:
    """Words as a sentence: a capital at the start, a stop at the end."""
    words = words.strip()
    return words[:1].upper() + words[1:] + ("" if words.endswith((".", "?", "!")) else ".")


def _wrapped(words: str) -> str:
    return textwrap.fill(
        words, width=width(), initial_indent="    ", subsequent_indent="    ", break_on_hyphens=False
    )
