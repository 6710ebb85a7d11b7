"""The runner: severities, acceptances, and a rule that fails."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from modebook.checks.examples import reading_of
from modebook.checks.finding import Fault, worst
from modebook.checks.reading import FixtureReading
from modebook.checks.registry import FIXTURE_RULES, rules_of
from modebook.checks.rule import Rule
from modebook.checks.runner import CRASHED, run_rules

RULES = rules_of(FIXTURE_RULES)
COARSE = {
    "modes": [{"parameters": [{"parameter": "dimmer", "slots": [1]}, {"parameter": "hue", "slots": [2]}]}]
}


def accepting(rule: str, pointer: str) -> FixtureReading:
    return reading_of(COARSE | {"accepted": [{"rule": rule, "pointer": pointer, "reason": "Work light."}]})


def test_an_accepted_finding_is_left_out_and_no_other() -> None:
    assert {finding.rule for finding in run_rules(reading_of(COARSE), RULES)} == {
        "coarse-dimmer",
        "coarse-hue",
    }
    found = run_rules(accepting("coarse-dimmer", "/modes/0/parameters/0"), RULES)
    assert [finding.rule for finding in found] == ["coarse-hue"]


def test_an_acceptance_does_not_cover_a_place_whose_name_only_begins_alike() -> None:
    found = run_rules(accepting("coarse-dimmer", "/modes/0/parameters/0/slot"), RULES)
    assert {finding.rule for finding in found} == {"coarse-dimmer", "coarse-hue", "stale-acceptance"}


def test_a_stale_acceptance_is_told_also_when_it_accepts_itself() -> None:
    found = run_rules(accepting("stale-acceptance", ""), {"stale-acceptance": RULES["stale-acceptance"]})
    assert [finding.pointer for finding in found] == ["/accepted/0"]


def test_with_one_rule_asked_for_an_acceptance_of_another_is_not_called_stale() -> None:
    reading = accepting("coarse-dimmer", "/modes/0/parameters/0")
    assert run_rules(reading, {"stale-acceptance": RULES["stale-acceptance"]}) == []


def test_a_rule_that_fails_becomes_a_finding_and_costs_no_other() -> None:
    def fails(reading: FixtureReading) -> Iterable[Fault]:
        raise KeyError("pan")

    broken: Rule[FixtureReading] = replace(RULES["slot-gap"], check=fails)
    found = run_rules(reading_of(COARSE), {"slot-gap": broken, "coarse-hue": RULES["coarse-hue"]})
    assert [finding.rule for finding in found] == [CRASHED, "coarse-hue"]
    assert found[0].figure == {"rule": "slot-gap", "error": "KeyError"}


def test_a_fault_s_own_severity_goes_before_its_rule_s() -> None:
    found = run_rules(reading_of(COARSE), RULES)
    assert {finding.rule: finding.severity for finding in found} == {
        "coarse-dimmer": "warning",
        "coarse-hue": "error",
    }
    assert worst(found) == "error"
