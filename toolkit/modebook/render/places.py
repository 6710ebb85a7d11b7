"""The line of each finding in its file, read only for the files that have findings to show."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.checks.finding import Finding
from modebook.shelf.errors import ShelfError
from modebook.shelf.lines import lines_of
from modebook.shelf.reading import read_bytes


def lines(findings: Sequence[Finding]) -> list[int]:
    """For each finding the line (from 1) at which its pointer leads; 1 where the file has gone meanwhile."""
    pointers: dict[str, set[str]] = {}
    for finding in findings:
        pointers.setdefault(finding.file, set()).add(finding.pointer)
    found: dict[str, dict[str, int]] = {}
    for file, wanted in pointers.items():
        try:
            found[file] = lines_of(read_bytes(file), wanted)
        except ShelfError:
            found[file] = {}
    return [found[finding.file].get(finding.pointer, 1) for finding in findings]
