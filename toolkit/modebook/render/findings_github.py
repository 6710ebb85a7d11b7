"""Findings as workflow annotation lines, as code hosts' build logs read them."""

from __future__ import annotations

from modebook.checks.bulk import CheckResult
from modebook.render.places import lines

_LEVEL = {"error": "error", "warning": "warning", "info": "notice"}


def github(result: CheckResult) -> str:
    """One ``::error file=...,line=...,title=...::message`` line a finding."""
    out = []
    for finding, line in zip(result.findings, lines(result.findings), strict=True):
        message = finding.message + (f" - {finding.help}" if finding.help else "")
        out.append(
            f"::{_LEVEL[finding.severity]} file={_property(finding.file)},line={line},"
            f"title={_property(finding.rule)}::{_data(message)}\n"
        )
    return "".join(out)


def _data(words: str) -> str:
    return words.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _property(words: str) -> str:
    return _data(words).replace(":", "%3A").replace(",", "%2C")
