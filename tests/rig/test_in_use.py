"""The rules on a mode in use, by what is known of the very unit: its menu, its settings, its place."""

from __future__ import annotations

import pytest

from modebook.rig.audit import audit
from modebook.rig.examples import rig_of
from modebook.rig.in_use import findings_in_use

SPANS = [
    {"from": 0, "to": 540, "unit": "deg", "given": "Setup > Pan: 540"},
    {"from": 0, "to": 630, "unit": "deg", "given": "Setup > Pan: 630"},
]
CHOICES = [
    {"key": "off", "length": {"packets": 0}},
    {"key": "some", "length": {"packets": 4}},
    {"key": "long", "length": {"packets": 8}, "factory": True},
    {"key": "riddle"},
]
HEAD = {
    "model": "Head",
    "settings": [
        {
            "key": "smoothing",
            "setting": "smoothing",
            "choices": CHOICES,
            "ways": [{"by": "menu", "path": ["Setup", "Response"]}],
        }
    ],
    "modes": [
        {
            "name": "M",
            "parameters": [
                {"parameter": "pan", "slots": [1], "span": SPANS},
                {"parameter": "dimmer", "slots": [2, 3]},
            ],
        }
    ],
}
PATCH = "unit,fixture,mode,address,position,reach\n1,Head,M,1/1,Truss 2,lift\n2,Head,M,1/11,,\n"


def of_unit(rule: str, unit: str, **rig):
    found = audit(rig_of({"fixtures": [HEAD], "patch": PATCH, "rig": rig})).findings
    return [finding for finding in found if (finding.rule, finding.unit) == (rule, unit)]


@pytest.mark.parametrize(
    ("menu", "span_deg"),
    [
        ({}, 630),
        ({"Setup > Pan": "540"}, 540),
        ({"setup>pan": "630"}, 630),
        ({"Setup > Pan": "360"}, 630),
        ({"Setup > Tilt": "540"}, 630),
    ],
)
def test_a_pan_of_two_spans_is_the_units_own_else_the_worst_and_one_finding(menu, span_deg):
    """Steps of 540 or 630 degrees over 255; a state that no span names decides nothing."""
    (finding,) = of_unit("coarse-angle", "1", units={"1": {"menu": menu}})
    assert finding.figure["span_deg"] == span_deg
    assert finding.figure["step_deg"] == pytest.approx(span_deg / 255)
    (other,) = of_unit("coarse-angle", "2", units={"1": {"menu": menu}})
    assert other.figure["span_deg"] == 630


def test_spans_on_ranges_in_cells_and_parts_are_the_units_own_too():
    """Wherever a list of spans stands."""
    pan = {
        "parameter": "pan",
        "slots": [1],
        "ranges": [{"from": 0, "to": 255, "meaning": "Pan", "span": SPANS}],
    }
    mode = {
        "name": "M",
        "footprint": 4,
        "parameters": [],
        "cells": [{"count": 2, "first": 1, "stride": 1, "parameters": [pan]}],
        "parts": [{"key": "head", "footprint": 2, "parameters": [pan | {"key": "p"}]}],
    }
    head = HEAD | {"modes": [mode]}
    patch = "unit,fixture,mode,part,address\n1,Head,M,,1/1\n1,Head,M,head,1/11\n"
    rig = {"units": {"1": {"menu": {"Setup > Pan": "540"}}}}
    found = audit(rig_of({"fixtures": [head], "patch": patch, "rig": rig})).findings
    spans = [f.figure["span_deg"] for f in found if f.rule == "coarse-angle"]
    assert spans == [540, 540]


def test_a_unit_that_is_set_otherwise_is_not_slow_by_default():
    """Its factory choice no longer counts; its neighbor's does."""
    known = {"1": {"settings": {"smoothing": "off"}}}
    assert not of_unit("slow-by-default", "1", units=known)
    assert len(of_unit("slow-by-default", "2", units=known)) == 1


def test_a_unit_that_is_known_to_be_slow_is_told_so():
    """4 packets are more than the policy's 2, and it is no new fixture."""
    (finding,) = of_unit("slow-by-default", "1", units={"1": {"settings": {"smoothing": "some"}}})
    assert finding.figure["length_packets"] == 4
    assert finding.figure["set_by"] == "rig.json"
    assert (
        finding.message == "rig.json says that its smoothing is set to some: 4 packets; 2 packets are wanted"
    )


def test_a_choice_of_unknown_length_is_no_figure_and_one_that_is_none_changes_nothing():
    """The riddle has no length to judge; a choice that the record lacks leaves the factory's."""
    assert not of_unit("slow-by-default", "1", units={"1": {"settings": {"smoothing": "riddle"}}})
    (finding,) = of_unit("slow-by-default", "1", units={"1": {"settings": {"smoothing": "silk"}}})
    assert finding.figure["choice"] == "long"


@pytest.mark.parametrize("rule", ["smoothing-by-hand-only", "smoothing-unknown"])
def test_who_must_be_walked_to_is_told_with_position_and_reach(rule):
    """Also that they are not known."""
    (one,), (two,) = of_unit(rule, "1"), of_unit(rule, "2")
    assert (one.figure["position"], one.figure["reach"]) == ("Truss 2", "lift")
    assert (two.figure["position"], two.figure["reach"]) == (None, None)


def test_only_the_families_asked_for_are_judged():
    """For questions over many rigs."""
    reading = rig_of({"fixtures": [HEAD], "patch": PATCH})
    assert {finding.rule for finding in findings_in_use(reading, ("coarse_",))} == {"coarse-angle"}
