"""Which value is sent for a range, for a need, and afterwards."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from modebook.documents.modes import Condition, Parameter, Range, Span
from modebook.documents.settings import Choice, Length
from modebook.shots.slot_values import (
    always_rules,
    between,
    needs_of,
    rest_of,
    safe_value,
    value_for_need,
    value_in_span,
)


def piece(low: int, high: int, **more: object) -> Range:
    return Range.model_validate({"from": low, "to": high, "meaning": "x", **more})


def parameter(*ranges: Range, **more: object) -> Parameter:
    told = {"parameter": "control", "slots": [1], "ranges": [r.model_dump(by_alias=True) for r in ranges]}
    return Parameter.model_validate({**told, **more})


def test_the_middle_of_a_range():
    """10 to 14 has its middle at 12; of an even count the lower one."""
    assert safe_value(piece(10, 14), []) == 12
    assert safe_value(piece(10, 13), []) == 11


def test_a_narrow_range_beside_a_hazard_is_met_at_its_far_end():
    """Two values, a reset right above: the lower one; a reset right below: the upper one."""
    mine = piece(10, 11)
    assert safe_value(mine, [mine, piece(12, 20, hazard="reset")]) == 10
    assert safe_value(mine, [mine, piece(0, 9, hazard="reset")]) == 11


@given(
    st.integers(0, 65535),
    st.integers(0, 65535),
    st.lists(st.tuples(st.integers(0, 65535), st.integers(0, 99))),
)
def test_it_is_within_the_range_and_never_in_a_hazard_where_that_can_be(one, two, hazards):
    """Also in 16 bits, and with hazards that lie over the range."""
    low, high = min(one, two), max(one, two)
    mine = piece(low, high)
    some = [piece(at, at + wide, hazard="reset") for at, wide in hazards]
    value = safe_value(mine, [mine, *some])
    assert low <= value <= high

    def inside(at: int) -> bool:
        return any(r.from_ <= at <= r.to and (r.from_, r.to) != (low, high) for r in some)

    free = any(not inside(at) for at in range(low, min(high, low + 400) + 1))
    if high - low <= 400 and free:
        assert not inside(value)


def test_a_length_in_a_continuous_range():
    """0.02 to 2 s over 20 to 254, from the printed span: 1.01 s is half-way, 137; 3 s is not in it."""
    stretch, span = piece(20, 254), Span.model_validate({"from": 0.02, "to": 2.0, "unit": "s"})
    assert value_in_span(stretch, span, Choice(key="a", length=Length(seconds=1.01))) == 137
    assert value_in_span(stretch, span, Choice(key="a", length=Length(seconds=3.0))) is None
    assert value_in_span(stretch, span, Choice(key="a", length=Length(packets=3))) is None


def test_needs_on_one_parameter_are_drawn_together():
    """0 to 10 and 5 to 20 leave 5 to 10; two that never meet leave nothing."""
    both = [Condition(parameter="dimmer", from_=0, to=10), Condition(parameter="dimmer", from_=5, to=20)]
    (need,) = needs_of(both)
    assert (need.low, need.high) == (5, 10)
    (none,) = needs_of([both[0], Condition(parameter="dimmer", from_=11, to=20)])
    assert none.low > none.high


def test_a_light_is_taken_as_low_as_may_be_and_a_default_that_will_do_is_kept():
    """A dimmer at 0 to 300: 0; with a printed default of 200 it stays there."""
    (need,) = needs_of([Condition(parameter="dimmer", from_=0, to=300)])
    dimmer = {"parameter": "dimmer", "slots": [1, 2]}
    assert value_for_need(need, Parameter.model_validate(dimmer)) == 0
    assert value_for_need(need, Parameter.model_validate({**dimmer, "default": 200})) == 200


def test_where_a_slot_rests():
    """A value that sets nothing, the printed default first; else one that leaves this setting; else none."""
    off = piece(0, 9, sets={"smoothing": "off"})
    idle = piece(10, 19, does="nothing")
    assert rest_of(parameter(off, idle, default=12), "smoothing", [off, idle]).value == 12
    assert rest_of(parameter(off, idle, default=0), "smoothing", [off, idle]).value == 14
    assert rest_of(parameter(off, idle, default=0), "curve", [off, idle]).value == 14
    assert rest_of(parameter(off, default=0), "curve", [off]).value == 0
    reset = piece(0, 9, hazard="reset")
    assert rest_of(parameter(reset, default=0), "curve", [reset]).value is None


def test_a_slot_that_sets_at_every_value_always_rules():
    """0-127 and 128-255 leave no value for anyone else; a hole of one value does."""
    halves = [piece(0, 127, sets={"smoothing": "off"}), piece(128, 255, sets={"smoothing": "on"})]
    assert always_rules(parameter(*halves), "smoothing")
    assert not always_rules(parameter(*halves), "curve")
    assert not always_rules(parameter(halves[0], piece(129, 255, sets={"smoothing": "on"})), "smoothing")


def test_hazards_between_two_values_are_found_from_both_sides():
    """A fade from rest to the value, or back, would pass them; those at the ends it would not."""
    some = [piece(20, 24, hazard="reset"), piece(30, 40, hazard="lamp off"), piece(5, 9)]
    assert between(0, 27, some) == [some[0]]
    assert between(50, 27, some) == [some[1]]
