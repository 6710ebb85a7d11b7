"""The change list: like units on one line, walking order, times, nights, the prep sheet, power cuts."""

from __future__ import annotations

from modebook.shots.change import Stage
from modebook.shots.changes import change_list, power_cut
from modebook.shots.patched import patched_units
from modebook.shots.route import Byte
from support.shots_pieces import CONTROL, MENU, RDM, WHILE_SENT

BOTH = ("1", "2")


def rows_of(reading):
    return {rows[0].unit.number: rows for rows in patched_units(reading).rows.values()}


def stage(name, choice, day="", units=BOTH):
    return Stage(name, day, {(unit, "smoothing"): choice for unit in units})


def listed(reading, *stages, start="short", prepared=False):
    known = {(unit, "smoothing"): start for unit in BOTH}
    return change_list(reading, rows_of(reading), stages, known, prepared)


def test_like_units_are_one_line_and_take_one_time_by_slot(rig):
    """Two units off at once: 2 s at the desk and a hold of 3 s, both bytes on the line."""
    told = listed(rig(CONTROL), stage("a", "off"))
    (line,) = told.setups[0].changes
    assert line.units == BOTH
    assert line.bytes == (Byte(1, 13, 12), Byte(1, 23, 12))
    assert (line.from_, line.to, line.seconds) == ("short", "off", 5)
    assert told.total_seconds_by_way == {"slot": 5, "rdm": 0, "hand": 0}


def test_what_is_so_already_is_left_alone(rig):
    """No change in the second setup, and none for what is not wanted."""
    told = listed(rig(CONTROL), stage("a", "off"), stage("b", "off"), stage("c", None))
    assert [len(one.changes) for one in told.setups] == [1, 0, 0]


def test_by_hand_each_position_is_a_line_in_walking_order_and_times_add_up(rig):
    """Truss 2 before Truss 10; two ladders of 240 s each (the house's policy)."""
    told = listed(rig(ways=[MENU]), stage("a", "off"))
    assert [(line.position, line.units) for line in told.setups[0].changes] == [
        ("Truss 2", ("2",)),
        ("Truss 10", ("1",)),
    ]
    assert told.setups[0].changes[0].path == ("Setup", "Response", "Off")
    assert told.total_seconds_by_way["hand"] == 480


def test_over_rdm_units_go_one_after_another(rig):
    """Two units, 2 s each; the UID that is not noted is an empty one and a doubt of its own line."""
    told = listed(rig(ways=[RDM]), stage("a", "off"))
    assert told.total_seconds_by_way["rdm"] == 4
    assert {line.uids for line in told.setups[0].changes} == {("7FF1:00000001",), ()}


def test_what_acts_only_while_sent_stands_and_says_what_comes_back(rig):
    """Long stands in both setups; without it the stored Short is back."""
    told = listed(rig(WHILE_SENT), stage("a", "long"), stage("b", "long"))
    assert [len(one.changes) for one in told.setups] == [1, 0]
    for one in told.setups:
        (stand,) = one.stands
        assert stand.bytes == (Byte(1, 13, 227), Byte(1, 23, 227))
        assert stand.returns == "then Short comes back"


def test_a_choice_that_is_there_already_needs_its_slot_at_rest(rig):
    """Short is stored, and the slot at 149 lets it rule: that is sent once, and stands."""
    told = listed(rig(WHILE_SENT, ways=[]), stage("a", "short"))
    (line,) = told.setups[0].changes
    assert line.bytes == (Byte(1, 13, 149), Byte(1, 23, 149))
    assert told.setups[0].faults == ()


def test_after_a_night_what_power_off_loses_is_sent_again(rig):
    """The slot's choice is kept until power off: a new day sends it again; the same day does not."""
    stages = [stage("a", "off", "1"), stage("b", "off", "1"), stage("c", "off", "2")]
    told = listed(rig(CONTROL), *stages)
    assert [len(one.changes) for one in told.setups] == [1, 0, 1]
    assert told.setups[2].changes[0].from_ == "short"


def test_after_a_night_what_nobody_knows_is_to_be_looked_at(rig):
    """A way over RDM whose keeping is not written: not a change, but a check with the way to set it again."""
    bare = {key: value for key, value in RDM.items() if key != "kept"}
    told = listed(rig(ways=[bare]), stage("a", "off", "1"), stage("b", "off", "2"))
    assert told.setups[1].changes == ()
    assert {line.data for line in told.setups[1].checks} == {"0000"}


def test_the_prep_sheet_takes_only_roads_that_outlast_power_off(rig):
    """By slot it would be gone on the way to the set: RDM stores it; then the day begins without a change."""
    told = listed(rig(CONTROL), stage("a", "off"), prepared=True)
    assert {line.by for line in told.prep} == {"rdm"}
    assert told.setups[0].changes == ()
    alone = listed(rig(CONTROL, ways=[]), stage("a", "off"), prepared=True)
    assert [line.by for line in alone.prep] == [None]
    assert "no road leaves it stored" in alone.prep[0].road
    assert len(alone.setups[0].changes) == 1


def test_in_the_shop_everything_is_on_the_floor(rig):
    """By lift on the set, 60 s each in the shop."""
    told = listed(rig(ways=[MENU], reach="lift"), stage("a", "off"), prepared=True)
    (line,) = told.prep
    assert (line.by, line.seconds, line.units) == ("hand", 120, BOTH)


def test_what_no_way_reaches_is_said_and_the_rest_is_done(rig):
    """One sentence a unit; the other setup stands."""
    told = listed(rig(CONTROL, ways=[], mode=None), stage("a", "off"), stage("b", "nothing-such"))
    assert len(told.setups[0].changes) == 1
    assert (
        "1: smoothing cannot be set to nothing-such: its record knows no such choice" in told.setups[1].faults
    )


def test_a_power_cut_sends_again_what_is_lost_and_counts_what_stays(rig):
    """By slot until power off: again. Over RDM, stored: it stays."""
    reading = rig(CONTROL)
    known = {(unit, "smoothing"): "short" for unit in BOTH}
    cut = power_cut(reading, rows_of(reading), [stage("a", "off"), stage("b", "long")], known, False, 0)
    (line,) = cut.again
    assert (line.to, line.bytes) == ("off", (Byte(1, 13, 12), Byte(1, 23, 12)))
    assert (cut.check, cut.stored) == ((), 0)
    stored = rig(ways=[RDM])
    cut = power_cut(stored, rows_of(stored), [stage("a", "off")], known, False, 0)
    assert (cut.again, cut.check, cut.stored) == ((), (), 2)


def test_what_a_person_told_is_not_known_to_be_stored(rig):
    """A power cut then asks to look, with the way to set it again."""
    reading = rig(ways=[RDM])
    known = {(unit, "smoothing"): "off" for unit in BOTH}
    cut = power_cut(reading, rows_of(reading), [stage("a", "off")], known, False, 0, told=set(known))
    assert [line.to for line in cut.check] == ["off", "off"]
    assert cut.again == ()
