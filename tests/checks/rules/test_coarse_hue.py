"""coarse-hue: steps by hand, and the circle that is assumed."""

from __future__ import annotations

from typing import Any

import pytest

from modebook.checks.examples import reading_of
from modebook.checks.finding import Fault
from modebook.checks.rules.coarse_hue import RULE


def faults(**parameter: Any) -> list[Fault]:
    content = {"modes": [{"parameters": [{"parameter": "hue", **parameter}]}]}
    return list(RULE.check(reading_of(content)))


def test_a_circle_in_8_bits_steps_by_360_over_255_degrees() -> None:
    (fault,) = faults(slots=[1], span={"from": 0, "to": 360, "unit": "deg"})
    assert fault.figure["step_deg"] == pytest.approx(360 / 255)
    assert fault.figure["bits_needed"] == 16
    assert "span_assumed" not in fault.figure
    assert fault.message == "hue moves in steps of 1.41 degrees in 8 bits; 1 degree is wanted"


@pytest.mark.parametrize("span", [None, {"from": 0, "to": 100, "unit": "%"}])
def test_without_degrees_the_whole_circle_is_assumed_and_said_to_be(span: Any) -> None:
    (fault,) = faults(slots=[1], **({"span": span} if span else {}))
    assert fault.figure["span_assumed"] is True
    assert "assumed 360 degrees" in fault.message
    assert faults(slots=[1, 2]) == []


def test_a_stretch_of_hue_narrow_enough_for_8_bits_passes() -> None:
    assert faults(slots=[1], span={"from": 0, "to": 255, "unit": "deg"}) == []


def test_a_hue_in_a_range_of_another_parameter_is_judged() -> None:
    """Half of a color wheel's values run over the circle: 360 / 127."""
    pieces = [
        {"from": 0, "to": 127, "meaning": "Filters"},
        {
            "from": 128,
            "to": 255,
            "meaning": "Hue",
            "parameter": "hue",
            "span": {"from": 0, "to": 360, "unit": "deg"},
        },
    ]
    content = {"modes": [{"parameters": [{"parameter": "color-wheel", "slots": [1], "ranges": pieces}]}]}
    (fault,) = RULE.check(reading_of(content))
    assert fault.figure["step_deg"] == pytest.approx(360 / 127)
    assert fault.message.startswith("hue (128-255 of color-wheel) moves")


def test_a_hue_without_a_slot_is_left_alone() -> None:
    assert faults(slots=[]) == []
