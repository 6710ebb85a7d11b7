"""Every patch rule fires on its bad example, stays silent on its good one, and says what it is for."""

from __future__ import annotations

import pytest

from modebook.checks.registry import FIXTURE_RULES, all_rules, rules_of
from modebook.rig.audit import patch_findings
from modebook.rig.examples import rig_of
from modebook.rig.rules import PACKAGE

RULES = rules_of(PACKAGE)


@pytest.mark.parametrize("name", RULES)
def test_the_bad_example_is_found(name):
    """The rule says so, and no other but what it cannot be without: neighbors that overlap."""
    found = list(patch_findings(rig_of(RULES[name].bad.content)))
    beside = {"address-overlap"} if name == "hazard-neighbor" else set()
    assert {finding.rule for finding in found} == {name} | beside
    assert all(finding.message and finding.unit and finding.row for finding in found)


@pytest.mark.parametrize("name", RULES)
def test_the_good_example_is_not(name):
    """Nothing but information, which is another rule's."""
    found = list(patch_findings(rig_of(RULES[name].good.content)))
    assert name not in {finding.rule for finding in found}
    assert all(finding.severity == "info" for finding in found)


@pytest.mark.parametrize("name", RULES)
def test_the_rule_is_explained(name):
    """Summary, what it checks, why, examples, references."""
    rule = RULES[name]
    for text in (rule.summary, rule.checks, rule.why, rule.bad.about, rule.good.about, *rule.references):
        assert text.strip()
    assert rule.references


def test_the_rules_asked_for_are_there_and_no_name_stands_twice():
    """All rules of fixtures and patches together."""
    asked = {
        "address-overlap",
        "address-shared",
        "bad-row",
        "cells-split",
        "control-slot-missing",
        "hazard-neighbor",
        "mode-mixed",
        "rdm-blocked",
        "smoothing-mixed",
        "duplicate-unit",
        "past-universe-end",
        "universe-too-slow",
        "unknown-fixture",
        "unknown-mode",
    }
    assert asked <= set(all_rules(FIXTURE_RULES, PACKAGE))
