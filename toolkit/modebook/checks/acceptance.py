"""Which finding an acceptance covers: for the runner, which leaves it out, and for the rule on stale ones."""

from __future__ import annotations

from modebook.documents.doubts import Acceptance


def covers(acceptance: Acceptance, rule: str, pointer: str) -> bool:
    """Whether an acceptance covers a rule's finding: at its pointer, or below it."""
    return acceptance.rule == rule and (
        pointer == acceptance.pointer or pointer.startswith(acceptance.pointer + "/")
    )
