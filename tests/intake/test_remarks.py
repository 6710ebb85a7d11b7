"""Holds and conditions that stand beside a name, or in a footnote, are of the whole parameter."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, named, whys

CHART = """\
Channel\tFunction\tValue\tDescription
1\tDimmer\t0-255\t0-100%
2\tRed\t0-255\t0-100% ({condition})
3\tColor macros\t0-9\tNo function
\t\t10-255\tRainbow
"""


@pytest.mark.parametrize(
    "condition",
    [
        "only if channel 3 = 0-9",
        "only when CH3 is 0-9",
        "active if channel 3 is between 0 and 9",
        "nur wenn Kanal 3 zwischen 0 und 9",
    ],
)
def test_a_condition_behind_the_one_row_of_a_parameter_is_the_parameters(condition):
    """Red counts only while the macros rest; the words for it are no part of a range."""
    document = drafted(CHART.format(condition=condition))
    red = named(document.modes[0], "red")
    assert [(one.parameter, one.from_, one.to) for one in red.when or []] == [("color-macro", 0, 9)]
    assert red.ranges == []
    assert not document.doubts


def test_a_condition_that_is_not_understood_is_told():
    """Nobody may think that red always counts."""
    document = drafted(CHART.format(condition="only if channel 3 allows it"))
    assert whys(document) == ["a condition seems to be printed, and was not understood"]


def test_a_span_over_all_values_is_no_condition():
    """`CH3: 0-255` behind a name tells which slot is meant, and holds always."""
    document = drafted(CHART.format(condition="CH3: 0-255"))
    assert named(document.modes[0], "red").when is None


FOOTNOTE = """\
Channel\tFunction\tValue\tDescription
1\tDimmer\t0-255\t0-100%
2\tReset (1)\t0-249\tNo function
\t\t250-255\tReset to factory settings

(1) The value must be held for at least 3 seconds.
"""


def test_a_hold_told_of_the_name_is_of_what_it_does():
    """Resting needs no hold; the reset does."""
    reset = named(drafted(FOOTNOTE).modes[0], "reset")
    assert [piece.hold_s for piece in reset.ranges] == [None, 3.0]
    assert reset.note is None


def test_a_footnote_with_a_figure_is_kept_as_a_note():
    """A sentence with 2,800 K in it is no span, and is not lost."""
    text = FOOTNOTE.replace(
        "The value must be held for at least 3 seconds.", "Below 2,800 K the output falls."
    )
    assert named(drafted(text).modes[0], "reset").note == "Below 2,800 K the output falls."


def test_turning_from_end_to_end_is_what_a_pan_does():
    """`Rotation 0 to 540 deg` beside pan is its span, and no endless turning."""
    document = drafted(
        "Channel\tFunction\tValue\tDescription\n1\tPan\t0-255\tRotation 0°-540°\n2\tTilt\t0-255\t0°-270°\n"
    )
    pan = named(document.modes[0], "pan")
    assert [piece.does for piece in pan.ranges] in ([], [None])
    assert pan.span is not None


def test_how_long_something_runs_on_is_no_hold():
    """`for 60 seconds after` tells of the fan, not of the hand at the desk."""
    text = FOOTNOTE.replace(
        "The value must be held for at least 3 seconds.",
        "The fan runs on for 60 seconds after the output ended.",
    )
    assert [piece.hold_s for piece in named(drafted(text).modes[0], "reset").ranges] == [None, None]


def test_what_sets_a_speed_is_no_condition():
    """`the speed is set with channel 9` tells where to look, and rules nothing."""
    rows = "1\tPrism\t0-19\tOut\n\t\t20-255\tIn; its speed is set with channel 2\n"
    text = f"Channel\tFunction\tValue\tDescription\n{rows}"
    assert not drafted(f"{text}2\tPrism rotation\t0-255\tSlow to fast\n").doubts
