"""From a rig to a plan: demands by the audit's own rules, no parameter lost, what stays unmet and why."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from modebook.documents.rig import Rig
from modebook.rig.audit import audit
from modebook.rig.examples import rig_of
from modebook.rig.repatch.build import repatch
from modebook.rig.repatch.errors import ImpossibleError
from modebook.rig.repatch.plan import Plan
from modebook.rig.repatch.rewrite import rewritten
from rig.repatch.rigs import CONTROL, RESPONSE, WASH, YOKE, dimmer, pan, rig

TITLES = "Unit,Fixture,Mode,Universe,Address,Group\n"


def told(plan: Plan) -> list[tuple[str, str, str, Any, Any]]:
    """The changes in short."""
    return [
        (one.unit, one.mode_from, one.mode_to, str(one.address_from), str(one.address_to))
        for one in plan.changes
    ]


def test_a_coarse_pan_gets_the_mode_that_is_fine_enough() -> None:
    """The only change is the mode, since there is room behind the unit."""
    plan = repatch(rig(TITLES + "1,Yoke,Basic,1,1,\n2,Yoke,Fine,1,5,\n"))
    assert told(plan) == [("1", "Basic", "Fine", "1/1", "1/1")]
    assert plan.unmet == ()
    assert plan.proved
    assert (plan.slots_before, plan.slots_after) == (7, 8)
    assert (plan.moved, plan.remoded) == (0, 1)


def test_the_neighbor_in_the_way_moves_and_the_rest_stays() -> None:
    """Three units side by side, the first must grow: one move."""
    plan = repatch(rig(TITLES + "1,Yoke,Basic,1,1,\n2,Yoke,Fine,1,4,\n3,Yoke,Fine,1,8,\n"))
    assert plan.moved == 1
    assert plan.remoded == 1


def test_a_mode_that_loses_a_parameter_is_never_chosen() -> None:
    """Bare would have a fine pan in fewer slots, but no dimmer: it is named, and left alone."""
    modes = [mode for mode in YOKE["modes"] if mode["name"] != "Fine"]  # type: ignore[attr-defined]
    plan = repatch(rig(TITLES + "1,Yoke,Basic,1,1,\n", {**YOKE, "modes": modes}))
    assert plan.changes == ()
    (unmet,) = plan.unmet
    assert (unmet.unit, unmet.demand, unmet.parameter, unmet.nearest) == ("1", "coarse-angle", "pan", "Bare")
    assert "lacks dimmer" in unmet.why


def test_cells_count_as_often_as_they_repeat() -> None:
    """Four reds for eight would lose four, though both modes know the word."""
    cells = [
        {"count": n, "first": 2, "stride": 1, "parameters": [{"parameter": "red", "slots": [1]}]}
        for n in (8, 4)
    ]
    wide = {"name": "Eight", "number": 1, "parameters": [pan(1)], "cells": cells[:1]}
    fine = {"name": "Four", "number": 2, "parameters": [pan(6, 7)], "cells": cells[1:]}
    plan = repatch(rig(TITLES + "1,Strip,Eight,1,1,\n", {"model": "Strip", "modes": [wide, fine]}))
    assert plan.changes == ()
    assert [(one.demand, one.nearest) for one in plan.unmet] == [("coarse-angle", "Four")]
    assert "4 red" in plan.unmet[0].why


def test_smoothing_by_the_menu_only_asks_for_the_mode_with_a_slot() -> None:
    """Remote smoothing is wanted where a slot of another mode gives it."""
    plan = repatch(rig(TITLES + "1,Wash,Short,1,1,\n"))
    assert told(plan) == [("1", "Short", "Long", "1/1", "1/1")]


@pytest.mark.parametrize(("rdm", "unmet"), [("yes", 0), ("no", 1), ("unknown", 1)])
def test_rdm_counts_only_where_the_link_passes_it(rdm: str, unmet: int) -> None:
    """A way over RDM is remote in a universe whose link passes RDM, and nowhere else."""
    way = {"by": "rdm", "pid": "0x8001", "size": 1, "values": {"off": 0, "on": 1}}
    lamp = {
        "model": "Lamp",
        "settings": [RESPONSE | {"ways": [way]}],
        "modes": [{"name": "One", "parameters": [dimmer(1, 2)]}],
    }
    plan = repatch(rig(TITLES + "1,Lamp,One,1,1,\n", lamp, links={"1": {"rdm": rdm}}))
    assert plan.changes == ()
    assert len(plan.unmet) == unmet
    assert all(one.demand == "remote-smoothing" and "RDM" in one.why for one in plan.unmet)


def test_a_unit_that_rdm_reaches_is_not_moved_to_where_it_does_not() -> None:
    """Universe 1 passes RDM and is full, universe 2 is empty and does not: the other one of two moves."""
    way = {"by": "rdm", "pid": "0x8001", "size": 1, "values": {"off": 0, "on": 1}}
    lamp = {
        "model": "Lamp",
        "settings": [RESPONSE | {"ways": [way]}],
        "modes": [{"name": "One", "footprint": 300, "parameters": [dimmer(1, 2)]}],
    }
    plain = {"model": "Plain", "modes": [{"name": "One", "footprint": 300, "parameters": [dimmer(1, 2)]}]}
    patch = TITLES + "1,Lamp,One,1,1,\n2,Plain,One,1,201,\n"
    plan = repatch(rig(patch, lamp, plain, links={"1": {"rdm": "yes"}}, repatch={"more_universes": 1}))
    assert [(one.unit, one.address_to and one.address_to.universe) for one in plan.changes] == [("2", 2)]
    assert plan.unmet == ()


def test_no_unit_is_moved_for_the_sake_of_a_link() -> None:
    """RDM would reach it in universe 2, but another universe is another cable: it stays, and is told."""
    way = {"by": "rdm", "pid": "0x8001", "size": 1, "values": {"off": 0, "on": 1}}
    modes = [{"name": "One", "parameters": [dimmer(1, 2)]}]
    lamp = {"model": "Lamp", "settings": [RESPONSE | {"ways": [way]}], "modes": modes}
    patch = TITLES + "1,Lamp,One,1,1,\n2,Lamp,One,2,1,\n"
    plan = repatch(rig(patch, lamp, links={"1": {"rdm": "no"}, "2": {"rdm": "yes"}}))
    assert plan.changes == ()
    assert [one.unit for one in plan.unmet] == ["1"]


def test_only_the_demands_that_the_rig_states_count() -> None:
    """Without demands nothing changes, coarse or not."""
    plan = repatch(rig(TITLES + "1,Yoke,Basic,1,1,\n2,Wash,Short,1,4,\n", repatch={"demands": []}))
    assert plan.changes == ()
    assert plan.unmet == ()


def test_pinned_units_stay_and_may_still_change_mode() -> None:
    """Of two units in each other's way the one that is not pinned moves."""
    patch = TITLES + "1,Yoke,Basic,1,1,\n2,Yoke,Fine,1,4,\n"
    for pinned, moves in (("1", "2"), ("2", "1")):
        plan = repatch(rig(patch, repatch={"pinned": [pinned]}))
        assert [one.unit for one in plan.changes if one.moves] == [moves]
        assert plan.remoded == 1


def test_overlaps_are_resolved_and_twins_stay_twins() -> None:
    """Two twins on one address count two moves, so the one unit in their way moves."""
    plan = repatch(rig(TITLES + "1,Yoke,Fine,1,1,\n2,Yoke,Fine,1,1,\n3,Yoke,Fine,1,3,\n"))
    assert [(one.unit, one.moves) for one in plan.changes] == [("3", True)]


def test_reserved_universes_take_nobody_in() -> None:
    """The move goes to the new universe, which rig.json allows, and not to the reserved one."""
    wide = {"model": "Wide", "modes": [{"name": "One", "footprint": 300, "parameters": [dimmer(1, 2)]}]}
    patch = TITLES + "1,Wide,One,1,1,\n2,Wide,One,1,101,\n3,Yoke,Fine,2,1,\n"
    plan = repatch(rig(patch, wide, YOKE, repatch={"reserved_universes": [2], "more_universes": 1}))
    assert [one.address_to and one.address_to.universe for one in plan.changes] == [3]
    assert (plan.universes_before, plan.universes_after) == (2, 3)


def test_a_hole_for_a_spare_is_left() -> None:
    """With 508 spare slots in every universe only one unit of four slots has room in each."""
    patch = TITLES + "1,Yoke,Fine,1,1,\n2,Yoke,Fine,1,5,\n"
    plan = repatch(rig(patch, repatch={"spare_slots": 508, "more_universes": 1}))
    assert plan.universes_after == 2
    assert plan.moved == 1


def test_a_group_is_brought_together() -> None:
    """Two keys in two universes: one of them moves."""
    patch = TITLES + "1,Yoke,Fine,1,1,Key\n2,Yoke,Fine,2,1,key\n3,Yoke,Fine,2,5,\n"
    plan = repatch(rig(patch, repatch={"together": ["key"]}))
    assert plan.moved == 1
    assert {one.unit for one in plan.changes} <= {"1", "2"}


def test_what_is_not_known_keeps_its_slots() -> None:
    """A row without a record stays, is told, and nobody is moved onto it."""
    plan = repatch(rig(TITLES + "1,Yoke,Basic,1,1,\n2,Stranger,Any,1,4,\n"))
    assert [(unit, row) for unit, row, _ in plan.aside] == [("2", 3)]
    assert [(one.unit, one.moves) for one in plan.changes] == [("1", True)]


def test_a_unit_without_an_address_gets_a_mode_and_stays_unpatched() -> None:
    """Nobody asked for it to be patched."""
    plan = repatch(rig(TITLES + "1,Yoke,Basic,,,\n2,Yoke,Fine,1,1,\n"))
    assert told(plan) == [("1", "Basic", "Fine", "None", "None")]


def test_a_unit_that_nobody_reaches_stays_if_another_can_move() -> None:
    """Of two in each other's way, the plan sends nobody to the one that is not reached at all."""
    titles = "Unit,Fixture,Mode,Address,Reach\n"
    for first, second, moves in (("not at all", "floor", "2"), ("floor", "not at all", "1")):
        plan = repatch(rig(f"{titles}1,Yoke,Fine,1/1,{first}\n2,Yoke,Fine,1/3,{second}\n"))
        assert [one.unit for one in plan.changes] == [moves]


def test_both_start_addresses_of_a_unit_stay_one_unit() -> None:
    """A mode with a part of its own is two rows and one unit."""
    ring = {"key": "ring", "footprint": 3, "parameters": [{"parameter": "red", "slots": [1]}]}
    coarse = {
        "name": "Old",
        "number": 1,
        "footprint": 6,
        "parameters": [pan(1), dimmer(2, 3)],
        "parts": [ring],
    }
    fine = {
        "name": "New",
        "number": 2,
        "footprint": 7,
        "parameters": [pan(1, 2), dimmer(3, 4)],
        "parts": [ring],
    }
    patch = "Unit,Fixture,Mode,Part,Address\n1,Two,Old,,1/1\n1,Two,Old,ring,1/4\n"
    plan = repatch(rig(patch, {"model": "Two", "modes": [coarse, fine]}))
    assert plan.remoded == 1
    assert plan.moved == 1
    assert {one.row for one in plan.changes} == {2, 3}


def test_a_mode_of_newer_firmware_is_not_planned() -> None:
    """The unit runs 1.2, and Fine was read from 2.0."""
    sources = [
        {"key": "guide", "title": "Guide", "firmware": "1.2"},
        {"key": "later", "title": "Guide", "firmware": "2.0"},
    ]
    modes = [dict(mode) for mode in YOKE["modes"]]  # type: ignore[attr-defined]
    modes[1]["source"] = "later"
    patch = "Unit,Fixture,Mode,Address,Firmware\n1,Yoke,Basic,1/1,1.2\n2,Yoke,Basic,1/11,2.0\n"
    plan = repatch(rig(patch, {**YOKE, "modes": modes, "sources": sources}))
    assert [one.unit for one in plan.changes] == ["2"]
    assert "firmware 2.0" in plan.unmet[0].why


@pytest.mark.parametrize(
    ("wishes", "words"),
    [({"pinned": ["9"]}, "'9'"), ({"together": ["fill"]}, "'fill'")],
)
def test_wishes_about_what_is_not_there_are_refused(wishes: Mapping[str, Any], words: str) -> None:
    """A pinned unit or a group that the patch lacks is a slip, and is named."""
    with pytest.raises(ImpossibleError, match=words):
        repatch(rig(TITLES + "1,Yoke,Fine,1,1,\n", repatch=wishes))


def test_json_has_the_keys_that_scripts_rely_on() -> None:
    """Changes, unmet, proof, gap and universes, with addresses as objects."""
    told_json = repatch(rig(TITLES + "1,Yoke,Basic,1,1,\n")).to_json()
    keys = {
        "changes",
        "unmet",
        "proved",
        "gap",
        "universes_before",
        "universes_after",
        "slots_before",
        "slots_after",
    }
    assert keys <= told_json.keys()
    (change,) = told_json["changes"]  # type: ignore[misc]
    assert change["address_to"] == {"universe": 1, "address": 1}  # type: ignore[index]
    assert {"unit", "mode_from", "mode_to", "address_from", "address_to"} <= set(change)  # type: ignore[arg-type]


def test_the_new_patch_audits_clean() -> None:
    """Read again, the plan's patch has no coarse finding, no overlap and no smoothing by hand."""
    patch = TITLES + "".join(
        f"{n},{'Yoke,Basic' if n % 2 else 'Wash,Short'},1,{1 + 3 * n},\n" for n in range(1, 9)
    )
    before = rig(patch)
    found = {finding.rule for finding in audit(before).findings if finding.severity != "info"}
    assert {"coarse-angle", "smoothing-by-hand-only"} <= found
    plan = repatch(before)
    after = rig(rewritten(patch.encode(), before, plan).decode())
    rules = {finding.rule for finding in audit(after).findings if finding.severity != "info"}
    assert not {rule for rule in rules if rule.startswith("coarse-")}
    assert not rules & {"address-overlap", "past-universe-end", "smoothing-by-hand-only"}
    assert repatch(after).changes == ()


def test_the_house_wishes_hold_where_rig_json_says_nothing() -> None:
    """A rig without `repatch` wants no coarse findings, remote smoothing, and footprints kept."""
    assert Rig(name="Job").repatch is None
    assert CONTROL["slots"] == [5]
    assert WASH["model"] == "Wash"


def test_a_unit_whose_address_was_not_understood_is_left_alone():
    """It sits somewhere, and nobody knows where: told, and not planned."""
    rows = [("1", "Wash", "Short", "1/1"), ("2", "Wash", "Short", "1/x")]
    patch = "unit,fixture,mode,address\n" + "".join(f"{','.join(row)}\n" for row in rows)
    plan = repatch(rig_of({"fixtures": [WASH], "patch": patch}))
    assert [(unit, row) for unit, row, _ in plan.aside] == [("2", 3)]
    assert "address was not understood" in plan.aside[0][2]
