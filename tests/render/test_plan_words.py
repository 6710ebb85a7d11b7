"""A change in words: values gathered, cautions first, what it returns to, questions once."""

from __future__ import annotations

from modebook.render.plan_words import head_words, questions, seconds_words, step_words, ways_words
from modebook.shots.change import Change, bytes_words
from modebook.shots.route import Byte

SLOT = Change(
    step=0,
    units=("1", "2", "10"),
    fixture="Invented 1",
    mode="Whole",
    setting="smoothing",
    setting_label="Response",
    from_=None,
    from_label="not known",
    to="off",
    to_label="Off",
    by="slot",
    kept="until power off",
    seconds=5,
    needs=("dimmer at zero",),
    needs_bytes=(Byte(1, 1, 0),),
    bytes=(Byte(1, 3, 12), Byte(1, 13, 12), Byte(2, 3, 7)),
    hold_s=3,
    then="back to 0: the printed default",
    then_bytes=(Byte(1, 3, 0),),
    warnings=("reset lies right beside it",),
    doubts=("try it",),
)


def test_values_that_are_the_same_stand_together():
    """Each value once, with all its addresses."""
    assert bytes_words(SLOT.bytes) == "1/3, 1/13 at 12; 2/3 at 7"


def test_a_change_tells_cautions_then_needs_then_what_to_send_then_what_follows():
    """In the order in which a person needs them; what is in doubt comes last."""
    assert list(step_words(SLOT)) == [
        ("caution", "reset lies right beside it"),
        ("first", "dimmer at zero (1/1 at 0)"),
        ("do", "1/3, 1/13 at 12; 2/3 at 7, in zero time, hold 3 s"),
        ("then", "1/3 at 0 (back to 0: the printed default)"),
        ("ask", "try it"),
    ]
    assert head_words(SLOT) == "Response: not known → Off"


def test_a_question_stands_once_with_its_units_in_their_order():
    """Asked twice about three units, it is one line."""
    assert questions([SLOT, SLOT]) == {"Invented 1, Response by slot: try it": ["1", "2", "10"]}


def test_times_as_a_person_says_them():
    """Seconds below two minutes, then minutes; ways without any time are left out."""
    assert [seconds_words(value) for value in (5, 119, 480)] == ["5 s", "119 s", "8 min"]
    assert ways_words({"slot": 5.0, "rdm": 0.0, "hand": 480.0}) == "by slot 5 s, by hand 8 min"
