"""What tests of rules share: one rule run on a partial document."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import pytest

from modebook.checks.examples import reading_of
from modebook.checks.finding import Fault
from modebook.checks.registry import FIXTURE_RULES, rules_of

Run = Callable[[str, Mapping[str, object]], list[Fault]]


@pytest.fixture(scope="session")
def run() -> Run:
    """A rule by name on an example's content: its faults."""

    def faults(rule: str, content: Mapping[str, object]) -> list[Fault]:
        return list(rules_of(FIXTURE_RULES)[rule].check(reading_of(content)))

    return faults
