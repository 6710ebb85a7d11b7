"""What is sent for a range lies in it, and what follows comes from the record or is asked."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from modebook.documents.control_values import byte_values, hazards_beside, return_after, value_for
from modebook.documents.modes import Parameter


def control(*ranges: dict[str, object], slots: list[int] | None = None, **more: object) -> Parameter:
    told = {"parameter": "control", "slots": slots or [1], "ranges": list(ranges), **more}
    return Parameter.model_validate(told)


@given(st.data(), st.integers(1, 4))
def test_the_value_lies_in_the_middle_and_its_bytes_make_it_up(data, count):
    top = 256**count - 1
    first = data.draw(st.integers(0, top))
    last = data.draw(st.integers(first, top))
    one = control({"from": first, "to": last, "meaning": "x"}, slots=list(range(1, count + 1)))
    value = value_for(one.ranges[0])
    assert first <= value <= last
    assert abs((value - first) - (last - value)) <= 1
    assert int.from_bytes(bytes(byte_values(one, value)), "big") == value
    assert len(byte_values(one, value)) == count


IDLE = {"from": 0, "to": 9, "meaning": "No function", "does": "nothing"}
FAST = {"from": 10, "to": 14, "meaning": "Fast", "sets": {"smoothing": "off"}, "kept": "stored"}
RESET = {"from": 15, "to": 20, "meaning": "Reset", "hazard": "reset"}


def test_after_a_range_comes_the_printed_default():
    one = control(IDLE, FAST, default=3)
    assert (return_after(one, one.ranges[1]).value, return_after(one, one.ranges[1]).known) == (3, True)


def test_without_a_default_comes_the_range_that_does_nothing():
    one = control(IDLE, FAST)
    assert return_after(one, one.ranges[1]).value == 4


def test_without_either_it_is_a_question():
    one = control(FAST, RESET)
    told = return_after(one, one.ranges[0])
    assert (told.value, told.known) == (None, False)
    assert "try" in told.why


def test_a_default_inside_the_range_is_left_and_one_of_the_coarse_byte_alone_is_none():
    one = control(FAST, default=12)
    assert return_after(one, one.ranges[0]).value == 12
    coarse = control(FAST, slots=[1, 2], coarse_default=0)
    assert return_after(coarse, coarse.ranges[0]).value is None


def test_what_acts_only_while_sent_is_not_returned_from():
    one = control(IDLE, FAST | {"kept": "while sent"}, default=3)
    assert return_after(one, one.ranges[1]).value == 12


def test_an_idle_range_with_a_hazard_is_no_place_to_rest():
    one = control(IDLE | {"hazard": "lamp off"}, FAST)
    assert return_after(one, one.ranges[1]).value is None


def test_a_hazard_beside_a_range_is_known_and_one_further_away_is_not():
    one = control(IDLE, FAST, RESET, {"from": 30, "to": 40, "meaning": "Lamp off", "hazard": "lamp off"})
    assert [each.meaning for each in hazards_beside(one, one.ranges[1])] == ["Reset"]
    assert hazards_beside(one, one.ranges[0]) == ()
