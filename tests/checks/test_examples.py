"""Every rule is found, explained, and shown by a bad and a good example that do what they say."""

from __future__ import annotations

import re
from dataclasses import fields

import pytest

from modebook.checks.examples import complete, reading_of
from modebook.checks.registry import FIXTURE_RULES, rules_of
from modebook.checks.runner import run_rules

RULES = rules_of(FIXTURE_RULES)
PROMISED = {
    "slot-overlap",
    "slot-gap",
    "footprint-mismatch",
    "range-overlap",
    "range-gap",
    "default-out-of-range",
    "condition-hole",
    "path-mismatch",
    "source-missing",
    "stale-acceptance",
    "coarse-chromaticity",
    "coarse-angle",
    "coarse-hue",
    "coarse-color-temperature",
    "coarse-dimmer",
    "smoothing-unknown",
    "smoothing-unreachable",
    "smoothing-by-hand-only",
    "smoothing-without-off",
    "slow-by-default",
    "hazard-on-dmx",
}


def test_every_rule_that_people_were_promised_is_there() -> None:
    assert set(RULES) >= PROMISED


@pytest.mark.parametrize("name", RULES)
def test_a_bad_example_fires_its_rule_and_no_other(name: str) -> None:
    found = run_rules(reading_of(RULES[name].bad.content), RULES)
    assert {finding.rule for finding in found} == {name}, found


@pytest.mark.parametrize("name", RULES)
def test_a_good_example_fires_no_rule(name: str) -> None:
    assert run_rules(reading_of(RULES[name].good.content), RULES) == []


@pytest.mark.parametrize("name", RULES)
def test_every_rule_is_explained_in_plain_sentences(name: str) -> None:
    rule = RULES[name]
    for said in (rule.summary, rule.checks, rule.why, rule.bad.about, rule.good.about):
        assert said[0].isupper() or said[0].isdigit() or said.startswith(("x and y", "u' and v'")), said
        assert said.endswith("."), said
        assert not re.search(r"\*\*|<\w+>|\n|  ", said), said
    assert rule.references
    assert all(getattr(rule, field.name) for field in fields(rule))


@pytest.mark.parametrize("name", RULES)
def test_a_message_is_one_line_with_a_figure_and_help(name: str) -> None:
    for finding in run_rules(reading_of(RULES[name].bad.content), RULES):
        assert "\n" not in finding.message + finding.help
        assert finding.figure
        assert finding.help
        assert not finding.message.endswith(".") or name == "hazard-on-dmx"


def test_an_example_that_leaves_everything_out_is_a_sound_document() -> None:
    assert run_rules(reading_of({}), RULES) == []


def test_the_footprint_of_an_example_counts_cells_and_parts() -> None:
    red = {"parameter": "red", "slots": [1]}
    cells = {"count": 4, "first": 3, "stride": 2, "parameters": [red]}
    part = {"key": "tail", "footprint": 5, "parameters": [red]}
    mode = complete({"modes": [{"cells": [cells], "parts": [part]}]}).modes[0]
    assert mode.footprint == 9 + 5
