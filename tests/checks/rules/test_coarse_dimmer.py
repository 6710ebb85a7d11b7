"""coarse-dimmer: JND by the polynomial of NEMA PS3.14, fades by hand, curves as recorded."""

from __future__ import annotations

import math
from typing import Any

import pytest

from modebook.checks.examples import reading_of
from modebook.checks.finding import Fault
from modebook.checks.rules.coarse_dimmer import RULE


def faults(parameter: dict[str, Any], **more: Any) -> list[Fault]:
    return list(RULE.check(reading_of({"modes": [{"parameters": [parameter]}], **more})))


def jnd(luminance_cd_m2: float) -> float:
    """The index of a luminance: the polynomial printed in NEMA PS3.14 (from memory)."""
    terms = (
        71.498068, 94.593053, 41.912053, 9.8247004, 0.28175407, -1.1878455, -0.18014349, 0.14710899,
        -0.017046845,
    )  # fmt: skip
    lg = math.log10(luminance_cd_m2)
    return sum(term * lg**power for power, term in enumerate(terms))


def test_8_bits_step_by_more_than_3_jnd_and_hold_a_fade_of_8_5_s() -> None:
    """From 3/255 to 4/255 of 100 cd/m2, the first step above 1 %; 255 steps at 30 packets a second."""
    (fault,) = faults({"parameter": "dimmer", "slots": [1]})
    by_hand = jnd(400 / 255) - jnd(300 / 255)
    assert fault.figure["step_jnd"] == pytest.approx(by_hand)
    assert fault.figure["longest_fade_s"] == pytest.approx(8.5)
    assert fault.figure["refresh_hz"] == 30
    assert fault.figure["bits_needed"] == 16
    assert fault.figure["curve_assumed"] is True
    assert fault.severity == "warning"


def test_16_bits_pass_and_a_dimmer_without_a_slot_too() -> None:
    assert faults({"parameter": "dimmer", "slots": [1, 2]}) == []
    assert faults({"parameter": "dimmer", "slots": []}) == []


def test_emitters_are_not_dimmers_and_an_intensity_master_is_one() -> None:
    assert faults({"parameter": "red", "slots": [1]}) == []
    assert faults({"parameter": "intensity-master", "slots": [1]})


def test_a_dimmer_on_a_range_has_its_values_alone() -> None:
    pieces = [
        {"from": 0, "to": 127, "meaning": "Dim", "span": {"from": 0, "to": 100, "unit": "%"}},
        {"from": 128, "to": 255, "meaning": "Strobe", "parameter": "strobe"},
    ]
    (fault,) = faults({"parameter": "dimmer", "slots": [1], "ranges": pieces})
    assert fault.figure["longest_fade_s"] == pytest.approx(127 / 30)
    assert fault.pointer.endswith("/ranges/0")


def curve(**choice: Any) -> dict[str, Any]:
    return {
        "settings": [
            {
                "key": "curve",
                "setting": "dimmer-curve",
                "source": "guide",
                "choices": [{"key": "made", "factory": True, **choice}],
            }
        ]
    }


def test_the_curve_of_a_new_fixture_is_used_and_named() -> None:
    """By the square law the first level above 1 % is 26/255: (26/255)**2 to (27/255)**2 of 100 cd/m2."""
    (linear,) = faults({"parameter": "dimmer", "slots": [1]})
    (square,) = faults({"parameter": "dimmer", "slots": [1]}, **curve(curve="square"))
    assert square.figure["curve"] == "square"
    assert "curve_assumed" not in square.figure
    first = jnd(100 * (27 / 255) ** 2) - jnd(100 * (26 / 255) ** 2)
    assert first - 0.01 <= float(str(square.figure["step_jnd"])) < float(str(linear.figure["step_jnd"]))


def test_a_table_is_a_curve_and_one_that_is_none_is_not_taken_for_one() -> None:
    (table,) = faults({"parameter": "dimmer", "slots": [1]}, **curve(points=[[0, 0], [1, 1]]))
    assert table.figure["curve"] == "table"
    (broken,) = faults({"parameter": "dimmer", "slots": [1]}, **curve(points=[[0.5, 0], [1, 1]]))
    assert broken.figure["curve_assumed"] is True


def test_a_range_of_a_few_values_of_many_is_judged() -> None:
    """Three values of 24 bits: full light in two steps, and at 32 bits of the same share in 767."""
    pieces = [{"from": 0, "to": 2, "meaning": "Dim", "span": {"from": 0, "to": 100, "unit": "%"}}]
    (fault,) = faults({"parameter": "dimmer", "slots": [1, 2, 3], "ranges": pieces})
    assert fault.figure["steps"] == 2
    at_32_bits = jnd(900 / 767) - jnd(800 / 767)
    assert at_32_bits > 3, "so that no number of slots does, at this share of their values"
    assert fault.figure["bits_needed"] is None
