"""coarse-angle: steps by hand, what is left out, and what is assumed."""

from __future__ import annotations

import math
from typing import Any

import pytest

from modebook.checks.examples import complete, reading_of
from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading
from modebook.checks.rules.coarse_angle import RULE, faults_in_mode
from modebook.documents.policy import Override, house_policy

Json = dict[str, Any]


def deg(start: float, end: float, **more: Any) -> Json:
    return {"from": start, "to": end, "unit": "deg", **more}


def content(*parameters: Json) -> Json:
    return {"modes": [{"parameters": list(parameters)}]}


def faults(*parameters: Json) -> list[Fault]:
    return list(RULE.check(reading_of(content(*parameters))))


def test_540_degrees_in_8_bits_are_steps_of_2_12_degrees_and_0_30_m_at_8_m() -> None:
    """540 / 255, and the chord 2 * 8 * sin(half of it): by hand."""
    (fault,) = faults({"parameter": "pan", "slots": [1], "span": deg(-270, 270)})
    assert fault.severity == "error"
    assert fault.figure["step_deg"] == pytest.approx(540 / 255)
    assert fault.figure["bits"] == 8
    assert fault.figure["bits_needed"] == 16
    assert fault.figure["displacement_m"] == pytest.approx(16 * math.sin(math.radians(540 / 255 / 2)))
    assert fault.figure["throw_assumed"] is True
    assert fault.message == (
        "pan moves in steps of 2.12 degrees in 8 bits; 0.1 degrees are wanted "
        "(a step moves the spot at most 0.30 m at 8 m, an assumed throw)"
    )


def test_a_known_throw_is_used_and_not_called_assumed() -> None:
    reading = reading_of(content({"parameter": "pan", "slots": [1], "span": deg(0, 540)}))
    (fault,) = faults_in_mode(reading, reading.modes[0], throw_m=20.0)
    assert fault.figure["throw_m"] == 20.0
    assert fault.figure["displacement_m"] == pytest.approx(40 * math.sin(math.radians(540 / 255 / 2)))
    assert "throw_assumed" not in fault.figure
    assert "assumed" not in fault.message


def test_16_bits_are_enough_for_any_head() -> None:
    assert faults({"parameter": "pan", "slots": [1, 2], "span": deg(0, 6000)}) == []
    (fault,) = faults({"parameter": "pan", "slots": [1, 2], "span": deg(0, 6554)})
    assert fault.figure["bits_needed"] == 24


def test_an_inverted_span_is_as_coarse() -> None:
    (fault,) = faults({"parameter": "tilt", "slots": [1], "span": deg(130, -130)})
    assert fault.figure["step_deg"] == pytest.approx(260 / 255)


def test_a_span_on_a_range_counts_the_range_s_own_values() -> None:
    pieces = [
        {"from": 0, "to": 127, "meaning": "Index", "does": "index", "span": deg(0, 540)},
        {"from": 128, "to": 255, "meaning": "Turn", "does": "rotate", "span": deg(0, 540)},
    ]
    (fault,) = faults({"parameter": "gobo-index-rotation", "slots": [1], "ranges": pieces})
    assert fault.pointer == "/modes/0/parameters/0/ranges/0"
    assert fault.severity == "warning"
    assert fault.figure["step_deg"] == pytest.approx(540 / 127)
    assert fault.figure["steps"] == 127


def test_whole_degrees_sent_step_by_one() -> None:
    (fault,) = faults({"parameter": "pan", "slots": [1, 2], "span": deg(0, 540, raw=True)})
    assert fault.figure["step_deg"] == 1
    assert "as whole degrees are sent" in fault.message
    assert faults({"parameter": "gobo-index", "slots": [1, 2], "span": deg(0, 360, raw=True)}) == []


def test_of_several_menu_states_the_coarsest_speaks_for_all() -> None:
    spans = [deg(0, 540, given="540 degrees"), deg(0, 630, given="630 degrees")]
    found = faults({"parameter": "pan", "slots": [1], "span": spans})
    assert [fault.figure["given"] for fault in found] == ["630 degrees"]


def test_a_pan_of_unrecorded_travel_is_told_without_a_step_in_degrees() -> None:
    """Over the 90 degrees that are assumed as the least: 90 / 255."""
    (fault,) = faults({"parameter": "pan", "slots": [1]})
    assert fault.figure["step_deg"] is None
    assert fault.figure["least_step_deg"] == pytest.approx(90 / 255)
    assert fault.figure["assumed_least_span_deg"] == 90
    assert "assumed" in fault.message
    assert faults({"parameter": "pan", "slots": [1, 2]}) == []
    (fault,) = faults({"parameter": "pan", "slots": [1], "span": {"from": 0, "to": 100, "unit": "%"}})
    assert fault.figure["step_deg"] is None


def test_what_cannot_be_judged_is_left_alone() -> None:
    """Zoom without degrees, a pan without a slot, a speed."""
    percent = {"from": 0, "to": 100, "unit": "%"}
    assert faults({"parameter": "zoom", "slots": [1]}) == []
    assert faults({"parameter": "blade-position", "slots": [1], "span": percent}) == []
    assert faults({"parameter": "pan", "slots": []}) == []
    assert (
        faults({"parameter": "pan-rotation", "slots": [1], "span": {"from": 0, "to": 9, "unit": "rpm"}}) == []
    )


@pytest.mark.parametrize(
    ("word", "limit"), [("pan", 0.1), ("tilt", 0.1), ("zoom", 0.5), ("blade-angle", 1), ("prism-index", 1)]
)
def test_a_step_at_its_limit_passes_and_beyond_it_does_not(word: str, limit: float) -> None:
    assert faults({"parameter": word, "slots": [1], "span": deg(0, limit * 255)}) == []
    assert faults({"parameter": word, "slots": [1], "span": deg(0, limit * 255.1)})


def test_a_parameter_in_cells_counts_once_as_written() -> None:
    tilt = {"parameter": "tilt", "slots": [1], "span": deg(0, 180)}
    cells = [{"count": 5, "first": 1, "stride": 1, "parameters": [tilt]}]
    (fault,) = RULE.check(reading_of({"modes": [{"cells": cells}]}))
    assert fault.pointer == "/modes/0/cells/0/parameters/0"


def test_help_names_the_better_mode_that_loses_least() -> None:
    pan, fine = ({"parameter": "pan", "slots": s, "span": deg(0, 540)} for s in ([1], [1, 2]))
    gobo = {"parameter": "gobo-wheel", "slots": [3]}
    modes = [
        {"name": "Short", "parameters": [pan, {"parameter": "gobo-wheel", "slots": [2]}]},
        {"name": "Bare", "parameters": [fine]},
        {"name": "Long", "number": 3, "parameters": [fine, gobo]},
    ]
    (fault,) = RULE.check(reading_of({"modes": modes}))
    assert fault.help.startswith("mode Long (3) has 16 bits, in 3 slots; the limit is 0.1 deg (")


def test_a_policy_that_sees_it_otherwise_is_kept_to() -> None:
    fixture = complete(content({"parameter": "pan", "slots": [1], "span": deg(0, 540)}))
    loose = house_policy().overridden({"pan-tilt-step": Override(value=3)})
    assert not list(RULE.check(FixtureReading(fixture, policy=loose)))
    mild = house_policy().overridden({"pan-tilt-step": Override(severity="info")})
    assert [fault.severity for fault in RULE.check(FixtureReading(fixture, policy=mild))] == ["info"]
    assert list(RULE.check(FixtureReading(fixture)))


def test_what_a_raw_range_would_take_is_told_for_the_whole_byte_range() -> None:
    """540 degrees over all values of 16 bits would do, though the range has 541 of them."""
    pieces = [{"from": 0, "to": 540, "meaning": "Degrees", "span": deg(0, 540, raw=True)}]
    (fault,) = faults({"parameter": "pan", "slots": [1, 2], "ranges": pieces})
    assert fault.figure["step_deg"] == 1
    assert fault.figure["bits_needed"] == 16
