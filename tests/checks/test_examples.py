"""Every rule is found, explained, and shown by a bad and a good example that do what they say."""

from __future__ import annotations

import pytest

from modebook.checks.examples import reading_of
from modebook.checks.registry import FIXTURE_RULES, rules_of
from modebook.checks.runner import run_rules

RULES = rules_of(FIXTURE_RULES)


@pytest.mark.parametrize("name", RULES)
def test_the_bad_example_fires_its_rule_and_no_other(name: str) -> None:
    found = run_rules(reading_of(RULES[name].bad.content), RULES)
    assert {finding.rule for finding in found} == {name}, found


@pytest.mark.parametrize("name", RULES)
def test_the_good_example_fires_no_rule(name: str) -> None:
    assert run_rules(reading_of(RULES[name].good.content), RULES) == []


def test_an_example_that_leaves_everything_out_is_a_sound_document() -> None:
    assert run_rules(reading_of({}), RULES) == []
