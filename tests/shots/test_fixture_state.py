"""The model of a unit: holds, conditions, keeping over power off, and what acts only while sent."""

from __future__ import annotations

import pytest

from modebook.shots.fixture_state import FixtureState
from support.shots_pieces import CONTROL, MENU, WHILE_SENT


def unit(reading, stored="short", **more):
    return FixtureState(reading.by_unit["1"], {"smoothing": stored}, **more)


def test_a_value_acts_only_after_its_hold(rig):
    """2 s of a hold of 3 s do nothing; 3 s do."""
    one = unit(rig(CONTROL))
    one.send([(1, 13, 12)], 2)
    assert one.now("smoothing") == "short"
    one.send([(1, 13, 12)], 3)
    assert one.now("smoothing") == "off"


def test_a_need_must_be_so_while_it_is_sent(rig):
    """Short needs the dimmer at zero: unknown or at full it does nothing."""
    one = unit(rig(CONTROL), stored="long")
    one.send([(1, 13, 17)], 5)
    assert one.now("smoothing") == "long"
    one.send([(1, 11, 255), (1, 12, 255)], 1)
    one.send([(1, 13, 17)], 5)
    assert one.now("smoothing") == "long"
    one.send([(1, 11, 0), (1, 12, 0)], 1)
    one.send([(1, 13, 17)], 5)
    assert one.now("smoothing") == "short"


def test_what_is_kept_until_power_off_uncovers_what_is_stored(rig):
    """Off by slot over a stored Short: after power off Short is back."""
    one = unit(rig(CONTROL))
    one.send([(1, 13, 12)], 3)
    one.power_off()
    assert one.now("smoothing") == "short"


def test_the_last_word_rules(rig):
    """Stored over RDM after a slot's choice takes its place, and outlasts power off."""
    one = unit(rig(CONTROL))
    one.send([(1, 13, 12)], 3)
    assert one.rdm("0x8001", "012C")
    assert one.now("smoothing") == "long"
    one.power_off()
    assert one.now("smoothing") == "long"
    assert not one.rdm("0x8001", "0009")


def test_a_value_that_acts_while_sent_overrules_and_lets_go(rig):
    """Long at 227; at 149 what the menu set is back, whatever was set meanwhile."""
    one = unit(rig(WHILE_SENT))
    one.send([(1, 13, 227)], 1)
    assert one.now("smoothing") == "long"
    assert one.by_hand(["Setup", "Response", "Off"])
    assert one.now("smoothing") == "long"
    one.send([(1, 13, 149)], 1)
    assert one.now("smoothing") == "off"
    assert not one.by_hand(["Setup", "Elsewhere", "Off"])


@pytest.mark.parametrize(("kept", "after"), [("stored", "off"), ("until power off", "short")])
def test_a_way_keeps_as_it_says(rig, kept, after):
    """At the menu too, what is kept only until power off is gone after it."""
    one = unit(rig(ways=[{**MENU, "kept": kept}]))
    assert one.by_hand(["Setup", "Response", "Off"])
    one.power_off()
    assert one.now("smoothing") == after


def test_hazards_are_written_down(rig):
    """22 is a reset; a value that goes to another unit's address is not heard."""
    one = unit(rig(CONTROL))
    one.send([(1, 13, 22)], 1)
    one.send([(1, 23, 22)], 1)
    assert one.hazards == ["reset: Reset"]
