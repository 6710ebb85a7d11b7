"""Resolution: bits, full scale, and the stretches that carry a physical span."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import settings as calm

from modebook.documents.bits import bits, full_scale, stretches
from modebook.documents.modes import Parameter
from support.documents import Json, parameter, parameters

CALM = calm(deadline=None, max_examples=60)
PAN = {"from": -270, "to": 270, "unit": "deg"}
RATE = {"from": 1, "to": 25, "unit": "Hz"}


@pytest.mark.parametrize(
    ("slots", "wide", "top"), [([], 0, 0), ([1], 8, 255), ([1, 2], 16, 65_535), ([4, 1, 9], 24, 16_777_215)]
)
def test_eight_bits_a_slot(slots: list[int], wide: int, top: int) -> None:
    """A slot is a byte (ANSI E1.11), so n slots count to 256^n - 1."""
    one = Parameter.model_validate({"parameter": "pan", "slots": slots})
    assert (bits(one), full_scale(one)) == (wide, top)


@pytest.mark.parametrize(("slots", "step"), [((1,), 540 / 255), ((1, 2), 540 / 65_535)])
def test_the_step_of_a_whole_parameter(slots: tuple[int, ...], step: float) -> None:
    """540 degrees in 8 bits are steps of 2.12 degrees."""
    [found] = stretches(Parameter.model_validate(parameter("pan", *slots, span=PAN)))
    assert found.step == pytest.approx(step)
    assert (found.from_value, found.to_value, found.range_index) == (0, 256 ** len(slots) - 1, None)


def test_a_range_runs_over_its_own_values() -> None:
    """1 to 25 Hz on the values 10 to 250 are steps of 0.1 Hz; a range without a span is no stretch."""
    told = parameter(
        "strobe",
        1,
        ranges=[
            {"from": 0, "to": 9, "meaning": "Open"},
            {"from": 10, "to": 250, "meaning": "Slow to fast", "span": RATE},
        ],
    )
    [found] = stretches(Parameter.model_validate(told))
    assert (found.word, found.range_index, found.steps) == ("strobe", 1, 240)
    assert found.step == pytest.approx(0.1)


def test_a_range_may_control_another_parameter() -> None:
    """0 to 127 dims, 128 to 255 strobes: each stretch carries the word that it is about."""
    told = parameter(
        "dimmer",
        1,
        ranges=[
            {"from": 0, "to": 127, "meaning": "Dim", "span": {"from": 0, "to": 100, "unit": "%"}},
            {"from": 128, "to": 255, "meaning": "Strobe", "parameter": "strobe", "span": RATE},
        ],
    )
    found = stretches(Parameter.model_validate(told))
    assert [(one.word, one.steps) for one in found] == [("dimmer", 127), ("strobe", 127)]


def test_the_whole_span_gives_way_to_ranges_in_its_unit_alone() -> None:
    """A strobe's own Hz replace a whole span in Hz, and leave one in percent."""
    told = parameter("strobe", 1, ranges=[{"from": 10, "to": 255, "meaning": "Faster", "span": RATE}])
    for span, count in (({"from": 0, "to": 30, "unit": "Hz"}, 1), ({"from": 0, "to": 100, "unit": "%"}, 2)):
        assert len(stretches(Parameter.model_validate({**told, "span": span}))) == count


def test_a_raw_number_is_its_own_step() -> None:
    """Where 3200 sent means 3200 K, the next value is 1 K further however wide the span is written."""
    told = parameter("color-temperature", 1, 2, span={"from": 2000, "to": 10_000, "unit": "K", "raw": True})
    [found] = stretches(Parameter.model_validate(told))
    assert found.step == 1


def test_one_value_alone_spans_everything() -> None:
    """Without a step between, the whole width is the step: nothing divides by zero."""
    told = parameter("zoom", 1, ranges=[{"from": 9, "to": 9, "meaning": "Wide", "span": PAN}])
    [found] = stretches(Parameter.model_validate(told))
    assert (found.steps, found.step) == (0, 540)


def test_no_slot_no_stretch() -> None:
    """An intensity that the desk makes has no resolution of its own."""
    assert stretches(Parameter.model_validate({"parameter": "dimmer", "slots": [], "span": PAN})) == []


@CALM
@given(parameters())
def test_steps_add_up_to_the_span(told: Json) -> None:
    """Whatever is written, the steps of a stretch cover its span, and it lies within the full scale."""
    one = Parameter.model_validate(told)
    for found in stretches(one):
        assert 0 <= found.from_value <= found.to_value <= full_scale(one)
        if found.steps and not found.span.raw:
            assert found.step * found.steps == pytest.approx(found.span.width)
