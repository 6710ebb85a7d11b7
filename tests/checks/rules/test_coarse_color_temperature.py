"""coarse-color-temperature: spans in kelvin and mired, raw numbers, and what cannot be judged."""

from __future__ import annotations

from typing import Any

import pytest

from modebook.checks.examples import complete, reading_of
from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading
from modebook.checks.rules.coarse_color_temperature import RULE
from modebook.documents.policy import Override, house_policy


def content(**parameter: Any) -> dict[str, Any]:
    return {"modes": [{"parameters": [{"parameter": "color-temperature", **parameter}]}]}


def faults(**parameter: Any) -> list[Fault]:
    return list(RULE.check(reading_of(content(**parameter))))


def test_the_step_in_kelvin_is_the_span_over_255() -> None:
    (fault,) = faults(slots=[1], span={"from": 1800, "to": 20000, "unit": "K"})
    assert fault.figure["step_k"] == pytest.approx(18200 / 255)
    assert fault.figure["bits_needed"] == 16
    assert fault.figure["at_k"] == 2700
    assert fault.figure["near_white_multiples"] == pytest.approx(
        float(str(fault.figure["step_delta_uv_prime"])) / 0.0011
    )


def test_a_narrow_span_and_two_bytes_pass() -> None:
    assert faults(slots=[1], span={"from": 2700, "to": 6500, "unit": "K"}) == []
    assert faults(slots=[1, 2], span={"from": 1000, "to": 20000, "unit": "K"}) == []


def test_kelvins_sent_as_numbers_pass() -> None:
    assert faults(slots=[1, 2], span={"from": 0, "to": 65535, "unit": "K", "raw": True}) == []


def test_a_span_outside_the_whites_is_not_judged() -> None:
    assert faults(slots=[1], span={"from": 8000, "to": 40000, "unit": "K"}) == []


def test_a_span_in_mired_is_linear_in_mired() -> None:
    """50 to 600 mired in 255 steps are 2.16 mired each, wherever they are."""
    (fault,) = faults(slots=[1], span={"from": 50, "to": 900, "unit": "mired"})
    assert fault.figure["step_mired"] == pytest.approx(850 / 255)
    assert faults(slots=[1, 2], span={"from": 50, "to": 900, "unit": "mired"}) == []


def test_without_a_span_in_kelvin_nothing_is_said() -> None:
    assert faults(slots=[1]) == []
    assert faults(slots=[1], span={"from": 0, "to": 100, "unit": "%"}) == []


def test_the_whites_are_the_policy_s() -> None:
    fixture = complete(content(slots=[1], span={"from": 1800, "to": 20000, "unit": "K"}))
    cool = house_policy().overridden({"white-from": Override(value=6000)})
    (fault,) = RULE.check(FixtureReading(fixture)) or [None]
    assert fault is not None
    cooler = list(RULE.check(FixtureReading(fixture, policy=cool)))
    assert not cooler, "71 K count less near 6000 K"


def test_a_span_on_a_range_counts_its_own_values() -> None:
    pieces = [
        {"from": 0, "to": 9, "meaning": "Off"},
        {"from": 10, "to": 109, "meaning": "White", "span": {"from": 2700, "to": 6500, "unit": "K"}},
        {"from": 110, "to": 255, "meaning": "No function", "does": "nothing"},
    ]
    (fault,) = faults(slots=[1], ranges=pieces)
    assert fault.figure["step_k"] == pytest.approx(3800 / 99)
    assert fault.pointer.endswith("/ranges/1")


def test_a_range_of_a_few_values_of_many_is_judged() -> None:
    """Three values of 24 bits: 3800 K in two steps."""
    pieces = [{"from": 0, "to": 2, "meaning": "White", "span": {"from": 2700, "to": 6500, "unit": "K"}}]
    (fault,) = faults(slots=[1, 2, 3], ranges=pieces)
    assert fault.figure["step_k"] == pytest.approx(1900)
    assert fault.figure["bits_needed"] == 32
