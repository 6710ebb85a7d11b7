"""`(1)` behind a meaning is a mark where a line begins with it, and part of the meaning elsewhere."""

from __future__ import annotations

from intake.drafted import drafted

CHART = """\
Channel\tFunction\tValue\tDescription
1\tControl\t0-9\tNo function
\t\t10-19\tReset (1)
\t\t20-255\tIdle
"""


def test_the_legend_belongs_to_the_range():
    """The hold comes from the legend, and the mark goes."""
    document = drafted(f"{CHART}\n(1) Hold the value for 3 seconds.\n")
    (control,) = document.modes[0].parameters
    assert [(piece.meaning, piece.hold_s) for piece in control.ranges][1] == ("Reset", 3.0)
    assert not document.doubts


def test_without_a_legend_it_stays():
    """Nothing is taken off that nobody explains."""
    (control,) = drafted(CHART).modes[0].parameters
    assert control.ranges[1].meaning == "Reset (1)"
    assert control.ranges[1].hold_s is None


def test_raised_figures_are_marks_too():
    """`¹` begins a legend as `(1)` and `*` do, though it is a digit."""
    chart = CHART.replace("Reset (1)", "Reset¹") + "2\tFan²\t0-255\tSlow to fast\n"
    document = drafted(f"{chart}\n¹ Hold the value for 3 seconds.\n² Only while Control is at 20-255.\n")
    control, fan = document.modes[0].parameters
    assert [(piece.meaning, piece.hold_s) for piece in control.ranges][1] == ("Reset", 3.0)
    assert [(c.parameter, c.from_, c.to) for c in fan.when or []] == [("control", 20, 255)]
    assert not document.doubts


def test_a_raised_digit_is_a_mark_by_its_shape():
    """`¹` begins a legend wherever it stands: it cannot be a slot's number."""
    raised = CHART.replace("(1)", "²").replace("Control", "Control¹")
    document = drafted(f"{raised}\n¹ Kept until power off.\n² Hold the value for 4 s.\n")
    (control,) = document.modes[0].parameters
    assert [(piece.meaning, piece.hold_s) for piece in control.ranges][1] == ("Reset", 4.0)
    assert not document.doubts
