"""coarse-chromaticity: pairs, limits, and steps worked out by the definition of u' and v'."""

from __future__ import annotations

from typing import Any

import pytest

from modebook.checks.examples import reading_of
from modebook.checks.finding import Fault
from modebook.checks.rules.coarse_chromaticity import RULE

Json = dict[str, Any]
SPAN = {"from": 0, "to": 0.8, "unit": "1"}


def faults(*parameters: Json) -> list[Fault]:
    return list(RULE.check(reading_of({"modes": [{"parameters": list(parameters)}]})))


def xy(x: list[int], y: list[int], **more: Any) -> list[Json]:
    return [{"parameter": "cie-x", "slots": x, **more}, {"parameter": "cie-y", "slots": y, **more}]


def uv(x: float, y: float) -> tuple[float, float]:
    """u' and v' by their definition (CIE 15)."""
    under = -2 * x + 12 * y + 3
    return 4 * x / under, 9 * y / under


def test_8_bits_are_two_steps_of_chromaticity_difference_near_whites() -> None:
    """On the black bodies at 6500 K, x 0.3135, y 0.3237 (from memory): by the definition of u' and v'."""
    (fault,) = faults(*xy([1], [2], span=SPAN))
    assert fault.severity == "error"
    assert fault.pointer == "/modes/0/parameters/0"
    assert fault.figure["pointers"] == ["/modes/0/parameters/0", "/modes/0/parameters/1"]
    assert fault.figure["step_x"] == pytest.approx(0.8 / 255)
    (u_a, v_a), (u_b, v_b) = uv(0.3135, 0.3237), uv(0.3135 + 0.8 / 255, 0.3237)
    by_hand = ((u_b - u_a) ** 2 + (v_b - v_a) ** 2) ** 0.5
    assert fault.figure["step_delta_uv_prime"] == pytest.approx(by_hand, rel=0.03)
    assert fault.figure["near_white_multiples"] == pytest.approx(by_hand / 0.0011, rel=0.03)
    assert fault.figure["bits_needed"] == 16
    assert isinstance(fault.figure["bt2020_step_delta_uv_prime"], float)


def test_16_bits_pass_both_limits() -> None:
    assert faults(*xy([1, 2], [3, 4], span=SPAN)) == []


def test_one_coarse_coordinate_is_enough() -> None:
    (fault,) = faults(*xy([1, 2], [3], span=SPAN))
    assert (fault.figure["bits"], fault.figure["bits_x"], fault.figure["bits_y"]) == (8, 16, 8)


def test_between_the_limits_it_is_a_warning_about_four_decimals() -> None:
    """0.1 in 255 steps are 0.00039 each: not seen, but no four decimals either."""
    (fault,) = faults(*xy([1], [2], span={"from": 0.3, "to": 0.4, "unit": "1"}))
    assert fault.severity == "warning"
    assert "four decimals" in fault.message
    assert "common practice, no source" in fault.help
    assert fault.figure["bits_needed"] == 16


def test_a_span_of_no_more_than_255_decimals_passes_in_8_bits() -> None:
    assert faults(*xy([1], [2], span={"from": 0.31, "to": 0.3355, "unit": "1"})) == []


def test_without_a_span_0_to_0_8_is_assumed_and_said_to_be() -> None:
    (fault,) = faults(*xy([1], [2]))
    assert fault.figure["span_assumed"] is True
    assert "assumed 0 to 0.8" in fault.message
    assert faults(*xy([1, 2], [3, 4])) == []


def test_pairs_are_made_within_a_cell_block_and_told_once() -> None:
    cells = [{"count": 4, "first": 1, "stride": 2, "parameters": xy([1], [2], span=SPAN)}]
    found = list(RULE.check(reading_of({"modes": [{"cells": cells}]})))
    assert [fault.pointer for fault in found] == ["/modes/0/cells/0/parameters/0"]


def test_two_pairs_of_a_mode_are_judged_apart() -> None:
    fine, coarse = xy([1, 2], [3, 4], span=SPAN), xy([5], [6], span=SPAN)
    assert [fault.pointer for fault in faults(*fine, *coarse)] == ["/modes/0/parameters/2"]


def test_an_x_without_a_y_is_left_alone() -> None:
    assert faults({"parameter": "cie-x", "slots": [1], "span": SPAN}) == []


def test_so_few_values_that_no_distance_can_be_told_are_an_error_without_one() -> None:
    pieces = [
        {"from": 0, "to": 10, "meaning": "x", "span": SPAN},
        {"from": 11, "to": 255, "meaning": "No function", "does": "nothing"},
    ]
    (fault,) = faults(*xy([1], [2], ranges=pieces))
    assert fault.severity == "error"
    assert fault.figure["step_delta_uv_prime"] is None
    assert fault.figure["step_x"] == pytest.approx(0.08)


def test_u_and_v_are_compared_directly() -> None:
    """0.62 / 255 of u' is 0.00243 of delta u'v', by hand."""
    span = {"from": 0, "to": 0.62, "unit": "1"}
    (fault,) = faults(
        {"parameter": "cie-u-prime", "slots": [1], "span": span},
        {"parameter": "cie-v-prime", "slots": [2], "span": span},
    )
    assert fault.figure["step_delta_uv_prime"] == pytest.approx(0.62 / 255)
    narrow = {"from": 0.1, "to": 0.3, "unit": "1"}
    assert not faults(
        {"parameter": "cie-u-prime", "slots": [1], "span": narrow},
        {"parameter": "cie-v-prime", "slots": [2], "span": narrow},
    )
