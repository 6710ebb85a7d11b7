"""The roads to each choice: their bytes, costs, cautions, and what closes them."""

from __future__ import annotations

from modebook.shots.route import Byte
from modebook.shots.routes import routes
from support.shots_pieces import CONTROL, DIMMER, MENU, RDM, WHILE_SENT


def roads(reading, unit="1"):
    return routes(reading, reading.by_unit[unit])["smoothing"]


def test_cheapest_first_by_the_policys_costs(rig):
    """By slot 1, over RDM 2, by ladder 15 (the house's policy)."""
    told = roads(rig(CONTROL))["off"]
    assert [(one.by, one.cost) for one in told] == [("slot", 1), ("rdm", 2), ("hand", 15)]


def test_a_slots_bytes_hold_and_return(rig):
    """10-14 at slot 3 of a unit at 1/11 is 12 to 1/13, held 3 s, then 0, the printed default."""
    slot = roads(rig(CONTROL))["off"][0]
    assert slot.bytes == (Byte(1, 13, 12),)
    assert (slot.hold_s, slot.kept) == (3, "until power off")
    assert slot.then_bytes == (Byte(1, 13, 0),)
    assert slot.stand == ()


def test_a_need_is_sent_first_and_its_caution_told(rig):
    """The dimmer at zero in both bytes; the light goes out, and that stands among the warnings."""
    slot = roads(rig(CONTROL))["short"][0]
    assert slot.needs == ("dimmer at zero",)
    assert slot.needs_bytes == (Byte(1, 11, 0), Byte(1, 12, 0))
    assert any("the light goes out" in warning for warning in slot.warnings)


def test_hazards_beside_and_on_the_way_are_told(rig):
    """Short (15-19) and Long (25-29) lie right beside the reset at 20-24; Off (10-14) does not."""
    told = roads(rig(CONTROL))
    for choice in ("short", "long"):
        assert any("reset lies right beside it, at 20-24" in one for one in told[choice][0].warnings)
    assert not any("reset" in one for one in told["off"][0].warnings)


def test_a_hazard_between_rest_and_value_is_told(rig):
    """With an idle range between the reset and Long, the way from 0 still passes the reset."""
    ranges = [
        *CONTROL["ranges"][:4],
        {"from": 25, "to": 29, "meaning": "No function", "does": "nothing"},
        {**CONTROL["ranges"][4], "from": 30, "to": 34},
    ]
    slot = roads(rig({**CONTROL, "ranges": ranges}))["long"][0]
    assert slot.warnings == ("reset lies on the way, at 20-24: in zero time, never through a fade",)


def test_what_acts_only_while_sent_stands_and_what_is_overruled_rests(rig):
    """Long stands at 227; Short, which only RDM and the menu reach, needs the slot at rest, 149."""
    told = roads(rig(WHILE_SENT))
    assert told["long"][0].stand == (Byte(1, 13, 227),)
    assert [one.by for one in told["short"]] == ["rdm", "hand"]
    assert all(one.stand == (Byte(1, 13, 149),) for one in told["short"])


def test_a_slot_that_always_rules_closes_the_other_roads(rig):
    """Off below 200, Long from there on: what RDM or the menu set would not hold."""
    ruling = {**WHILE_SENT, "ranges": [{**WHILE_SENT["ranges"][0], "to": 199}, WHILE_SENT["ranges"][2]]}
    told = roads(rig(ruling))
    assert [one.by for one in told["off"]] == ["slot"]
    assert told["short"] == ()


def test_rdm_has_uid_pid_and_data_of_its_printed_size(rig):
    """300 in two bytes is 012C, the more significant first (E1.20 sends parameter data so)."""
    reading = rig()
    first = roads(reading)["long"][0]
    assert (first.uid, first.pid, first.data) == ("7FF1:00000001", "0x8001", "012C")
    assert roads(reading, "2")["long"][0].doubts == ("its UID is not noted: find it by its address first",)


def test_rdm_goes_where_it_passes(rig):
    """Not at all where the link does not; with a doubt where nobody knows."""
    assert [one.by for one in roads(rig(rdm=False))["off"]] == ["hand"]
    unsure = roads(rig(rdm=None))["off"][0]
    assert unsure.by == "rdm"
    assert any("whether RDM passes" in doubt for doubt in unsure.doubts)


def test_what_nobody_gets_to_has_no_road_by_hand(rig):
    """Not at all: impossible, whatever it costs; an app still reaches it."""
    assert roads(rig(reach="not at all", rdm=False))["off"] == ()
    app = {"by": "app", "path": ["Light"]}
    (road,) = roads(rig(reach="not at all", ways=[app]))["off"]
    assert road.path == ("app", "Light", "Off")


def test_a_lock_is_needed_first(rig):
    """Over RDM and at the menu, in the record's words where it has some."""
    told = roads(rig(ways=[{**RDM, "locked": "open PID 0x8002"}, {**MENU, "locked": True}]))["off"]
    assert [one.needs for one in told] == [("open PID 0x8002",), ("the fixture's lock opened",)]


def test_a_parameter_of_two_bytes_and_one_in_every_cell(rig):
    """A 16-bit range of 256 to 511 is sent as 1 and 127; a control in each of two cells is sent to both."""
    piece = {"from": 256, "to": 511, "meaning": "Off", "sets": {"smoothing": "off"}, "kept": "stored"}
    wide = {"parameter": "control", "slots": [4, 3], "default": 0, "ranges": [piece]}
    assert roads(rig(wide))["off"][0].bytes == (Byte(1, 14, 1), Byte(1, 13, 127))
    cells = {
        "name": "Whole", "parameters": [DIMMER],
        "cells": [{"count": 2, "first": 3, "stride": 2, "parameters": [{**CONTROL, "slots": [2]}]}],
    }  # fmt: skip
    assert roads(rig(mode=cells))["off"][0].bytes == (Byte(1, 14, 12), Byte(1, 16, 12))


def test_a_part_has_its_own_start_address(rig):
    """The control sits in the part, patched at 2/101."""
    mode = {
        "name": "Whole", "footprint": 3, "parameters": [DIMMER],
        "parts": [{"key": "base", "footprint": 1, "parameters": [{**CONTROL, "slots": [1]}]}],
    }  # fmt: skip
    patch = "unit,fixture,mode,part,address\n1,Changer,Whole,,1/11\n1,Changer,Whole,base,2/101\n"
    told = roads(rig(mode=mode, patch=patch))["short"][0]
    assert told.bytes == (Byte(2, 101, 17),)
    assert told.needs_bytes == (Byte(1, 11, 0), Byte(1, 12, 0))


def test_what_the_record_leaves_unsaid_is_a_doubt(rig):
    """No hold, no keeping, no rest: each is a question to settle on the fixture, and the value stands."""
    piece = {"from": 10, "to": 20, "meaning": "Off", "sets": {"smoothing": "off"}}
    bare = {"parameter": "control", "slots": [3], "ranges": [piece]}
    slot = roads(rig(bare))["off"][0]
    assert slot.kept == "unknown"
    assert slot.stand == slot.bytes
    assert len([doubt for doubt in slot.doubts if "try" in doubt or "find its rest" in doubt]) == 3
