"""A first look at a document, which shows most to be clean without making them whole."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from modebook.checks.reading import FixtureReading
from modebook.checks.rule import Rule
from modebook.documents.policy import Policy
from modebook.documents.quick import quick_fixture
from modebook.shelf.reading import data_without_doubles


def surely_clean(
    content: bytes, identity: str | None, rules: Mapping[str, Rule[Any]], policy: Policy
) -> bool:
    """Whether no rule finds anything in a document that is in order; False where a whole look is due.

    The rules are the same ones as ever, only what they are shown is lighter (documents/quick.py). Whatever is
    out of the ordinary, a rule that fails included, is for the whole look to judge and to put into words.
    """
    fixture = quick_fixture(data_without_doubles(content))
    if fixture is None or fixture.accepted or fixture.doubts:
        return False
    reading = FixtureReading(fixture, "", identity, policy)
    try:
        for rule in rules.values():
            for _ in rule.check(reading):
                return False
    except Exception:  # noqa: BLE001 - the whole look meets the same failure, and tells of it
        return False
    return True
