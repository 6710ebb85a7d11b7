"""What a rule is: a name after the fault, a severity, an explanation with examples, and a check."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Generic, TypeVar

from modebook.checks.finding import Fault
from modebook.documents.policy import Severity

Subject = TypeVar("Subject")


@dataclass(frozen=True, slots=True)
class Example:
    """A small subject that shows a rule firing, or not firing; a test runs every one."""

    about: str
    """One sentence: what the example shows."""
    content: Mapping[str, object]
    """For a fixture rule: a fixture document, of which everything but the point may be left out (see
    examples.complete). For a patch rule: a rig with its patch (see the rig's own examples)."""


@dataclass(frozen=True, slots=True)
class Rule(Generic[Subject]):
    """One rule. Its module is named like it, with underscores, and holds it as RULE."""

    name: str
    severity: Severity
    summary: str
    """The fault in one sentence."""
    checks: str
    """What it checks, and how the figures are computed."""
    why: str
    """Why it matters on the day."""
    bad: Example
    good: Example
    references: tuple[str, ...]
    """Standards, or 'common practice, no source'."""
    check: Callable[[Subject], Iterable[Fault]]
