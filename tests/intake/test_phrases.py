"""What a description says that its values do: words negated mean the opposite, names mean nothing."""

from __future__ import annotations

import pytest

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
