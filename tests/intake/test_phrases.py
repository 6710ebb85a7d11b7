"""What a description says that its values do: words negated mean the opposite, names mean nothing."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, named, whys
from modebook.intake.descriptions import describe
from modebook.intake.phrases import read_description, runs


@pytest.mark.parametrize(
    ("text", "does"),
    [
        ("No spin", "stop"),
        ("No rotation", "stop"),
        ("Keine Rotation", "stop"),
        ("No show", "nothing"),
        ("No macro", "nothing"),
        ("Forward spin, fast to slow", "rotate"),
        ("Rotating gobo 3", None),
        ("Rotating gobo 3 shake", "bounce"),
    ],
)
def test_what_a_range_does(text, does):
    """No spin is a stop, no show nothing; a rotating gobo by its number is a place on the wheel."""
    assert read_description(text).does == does


def test_what_is_not_run_does_not_run():
    """No show is no program."""
    assert runs("Show 1")
    assert not runs("No show")


@pytest.mark.parametrize(
    ("text", "does"),
    [
        ("Gobo rotation off", "stop"),
        ("Rotation arrêtée", "stop"),
        ("Shake off", "stop"),
        ("Schütteln aus", "stop"),
        ("Random off", None),
        ("Rotation on/off", "rotate"),
        ("Gobo rotation", "rotate"),
    ],
)
def test_what_is_switched_off_does_not_move(text, does):
    """`Rotation off` is a stop, not a rotation."""
    assert read_description(text).does == does


SAFE = """Slot\tFunction\tValue\tMeaning
1\tDimmer\t0-255\t0-100 %
2\tShutter\t0-3\tClosed
\t\t4-251\tStrobe with shutter open, slow to fast
\t\t252-255\tOpen
3\tControl\t0-199\tIdle
\t\t200-209\tReset, {} (hold 3 s)
\t\t210-255\tIdle
"""


@pytest.mark.parametrize(
    ("said", "ends"),
    [
        ("only when the shutter is closed", (0, 3)),
        ("shutter must be closed", (0, 3)),
        ("wenn Shutter geschlossen", (0, 3)),
        ("si l'obturateur est fermé", (0, 3)),
        ("only if shutter is open", (252, 255)),
        ("only when the shutter is closed (0-2)", (0, 2)),
    ],
)
def test_a_condition_may_say_what_another_parameter_does(said: str, ends: tuple[int, int]):
    """Its values are those at which the parameter does so; how a strobe is made is no condition."""
    document = drafted(SAFE.format(said))
    reset = named(document.modes[0], "control").ranges[1]
    assert [(one.parameter, one.from_, one.to) for one in reset.needs] == [("shutter", *ends)]
    assert not any(entry.needs for entry in named(document.modes[0], "shutter").ranges)
    assert not document.doubts


def test_a_condition_on_what_no_range_does_is_doubted():
    chart = SAFE.replace("Closed", "Dim").format("only when the shutter is closed")
    assert any("no range of Shutter does" in why for why in whys(drafted(chart)))


def test_a_decimal_comma_within_brackets_parts_nothing():
    assert describe("Strobe slow to fast (0,5-20 Hz)").meaning == "Strobe slow to fast"


def test_a_choice_keeps_both_of_its_brackets():
    chart = "Slot\tFunction\tValue\tMeaning\n1\tDimmer\t0-255\t\n2\tControl\t0-127\tFan off (max. 10 min)\n"
    document = drafted(f"{chart}\t\t128-255\tSmoothing (long)\n")
    labels = [choice.label for setting in document.settings for choice in setting.choices]
    assert labels == ["off (max. 10 min)", "long"]
