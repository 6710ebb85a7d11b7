"""Units together: mixed modes, blocked RDM, missing control slots, what the cures cost."""

from __future__ import annotations

from modebook.rig.audit import audit, patch_findings
from modebook.rig.examples import rig_of
from modebook.rig.grouping import by_cause

DIMMER = {"parameter": "dimmer", "slots": [1, 2]}
RDM = {"by": "rdm", "pid": "0x8001", "size": 1, "values": {"off": 0, "on": 1}}
MENU = {"by": "menu", "path": ["Setup"]}


def control(slot: int) -> dict[str, object]:
    ranges = [{"from": 0, "to": 255, "meaning": "Off", "sets": {"smoothing": "off"}}]
    return {"parameter": "control", "slots": [slot], "ranges": ranges}


def fixture(model: str, *ways):
    choices = [
        {"key": "off", "length": {"packets": 0}, "factory": True},
        {"key": "on", "length": {"packets": 2}},
    ]
    return {
        "model": model,
        "settings": [{"key": "smoothing", "setting": "smoothing", "choices": choices, "ways": list(ways)}],
        "modes": [
            {"name": "Short", "parameters": [DIMMER]},
            {"name": "Long", "parameters": [DIMMER, control(3)]},
            {"name": "Zoomed", "parameters": [DIMMER, {"parameter": "zoom", "slots": [3]}]},
            {
                "name": "All",
                "footprint": 9,
                "parameters": [DIMMER, {"parameter": "zoom", "slots": [3]}, control(4)],
            },
        ],
    }


FIXTURES = [fixture("Both", RDM, MENU), fixture("Hand", MENU), fixture("Remote", RDM)]


def run(rule: str, rows: str, **rig):
    patch = "unit,fixture,mode,address,group,reach\n" + rows
    return list(patch_findings(rig_of({"fixtures": FIXTURES, "patch": patch, "rig": rig}), [rule]))


def test_a_fixture_in_several_modes_is_told_once_a_group_with_what_the_cure_costs():
    """Three Long, one Short, one Zoomed: to Long they take 1 and 0 slots more. The first of the others."""
    rows = "1,Both,Short,1/1,key,\n2,Both,Long,1/11,key,\n3,Both,Long,1/21,Key,\n4,Both,Zoomed,1/31,key,\n"
    rows += "5,Both,Long,1/41,key,\n6,Both,Short,1/51,back,\n7,Hand,Short,1/61,key,\n"
    (finding,) = run("mode-mixed", rows)
    assert (finding.unit, finding.row, finding.severity) == ("1", 2, "info")
    assert finding.figure["cost_slots"] == 1
    assert finding.figure["modes"] == [
        {"mode": "Long", "footprint": 3, "units": ["2", "3", "5"]},
        {"mode": "Short", "footprint": 2, "units": ["1"]},
        {"mode": "Zoomed", "footprint": 3, "units": ["4"]},
    ]


def test_of_as_many_the_mode_that_stands_first_is_the_measure():
    """One and one: the later unit is told."""
    (finding,) = run("mode-mixed", "1,Both,All,1/1,key,\n2,Both,Short,1/11,key,\n")
    assert (finding.unit, finding.figure["cost_slots"]) == ("2", 7)


def test_findings_about_different_groups_are_different_paragraphs():
    """Same fixture and mode, two groups: two causes."""
    rows = "".join(
        f"{n},Both,{m},1/{10 * n + 1},{g},\n"
        for n, (m, g) in enumerate(
            [("Long", "a"), ("Long", "a"), ("Short", "a"), ("Long", "b"), ("Long", "b"), ("Short", "b")]
        )
    )
    assert len(by_cause(run("mode-mixed", rows))) == 2


def test_blocked_rdm_is_one_finding_a_universe_on_the_first_unit_that_needs_it():
    """Universe 1 has a slot's unit first; 2 passes; 3 is not known; in 4 all have a slot."""
    rows = "1,Both,Long,1/1,,floor\n2,Both,Short,1/11,,ladder\n3,Remote,Short,1/21,,\n4,Hand,Short,1/31,,\n"
    rows += "5,Both,Short,2/1,,\n6,Both,Short,3/1,,\n7,Both,Long,4/1,,\n"
    links = {"1": {"rdm": "no"}, "2": {"rdm": "yes"}, "4": {"rdm": "no"}}
    one, three, four = run("rdm-blocked", rows, links=links)
    assert (one.unit, one.severity, one.figure["universe"]) == ("2", "warning", 1)
    assert one.figure["units"] == ["1", "2", "3"]
    assert one.figure["units_only_rdm"] == ["2", "3"]
    assert one.figure["reached"] == {"ladder": 1, "unknown": 1}
    assert (three.unit, three.severity, three.figure["rdm"]) == ("6", "info", "unknown")
    assert (four.unit, four.severity) == ("7", "info")
    assert len(by_cause([one, three, four])) == 3


def test_the_mode_with_the_slot_is_the_one_that_loses_least_then_the_smallest():
    """Short goes to Long, 1 slot more; Zoomed keeps its zoom in All, 6 slots more."""
    short, zoomed = run(
        "control-slot-missing", "1,Hand,Short,1/1,,\n2,Hand,Zoomed,1/11,,\n3,Hand,Long,1/21,,\n"
    )
    assert (short.figure["mode_with_slot"], short.figure["cost_slots"]) == ("Long", 1)
    assert (zoomed.figure["mode_with_slot"], zoomed.figure["cost_slots"]) == ("All", 6)
    assert "1 slot more" in short.help
    assert {short.severity, zoomed.severity} == {"warning"}


def test_a_missing_slot_is_for_information_where_rdm_passes():
    """In universe 1 it does; in 2 nobody knows; Hand has no such way."""
    rows = "1,Both,Short,1/1,,\n2,Both,Short,2/1,,\n3,Hand,Short,1/11,,\n"
    found = run("control-slot-missing", rows, links={"1": {"rdm": "yes"}})
    assert [(f.unit, f.severity) for f in found] == [("1", "info"), ("2", "warning"), ("3", "warning")]


def test_cells_are_kept_before_words():
    """A mode of four cells goes to the one with four cells, though its words are other ones."""
    cell = [{"parameter": "hue", "slots": [1]}]
    other = [{"parameter": "red", "slots": [1]}]
    pixels = fixture("Pixels", MENU)
    pixels["modes"] = [
        {
            "name": "Hues",
            "parameters": [],
            "cells": [{"count": 4, "first": 1, "stride": 1, "parameters": cell}],
        },
        {"name": "One", "parameters": [{"parameter": "hue", "slots": [1]}, control(2)]},
        {
            "name": "Reds",
            "parameters": [control(1)],
            "cells": [{"count": 4, "first": 2, "stride": 1, "parameters": other}],
        },
    ]
    patch = "unit,fixture,mode,address\n1,Pixels,Hues,1/1\n"
    (finding,) = patch_findings(rig_of({"fixtures": [pixels], "patch": patch}), ["control-slot-missing"])
    assert finding.figure["mode_with_slot"] == "Reds"
    assert finding.figure["parameters_lost"] == ["hue"]


def test_every_finding_of_an_audit_tells_its_cost_and_a_mode_its_difference():
    """8 to 16 bits: from 1 slot to 2; by hand to the slot: from 1 to 3; others cost none, or unknown."""
    thing = fixture("Thing", MENU)
    thing["modes"] = [
        {"name": "Coarse", "parameters": [{"parameter": "dimmer", "slots": [1]}]},
        {"name": "Fine", "parameters": [DIMMER]},
        {"name": "Full", "parameters": [DIMMER, control(3)]},
    ]
    patch = (
        "unit,fixture,mode,address\n1,Thing,Coarse,1/1\n2,Thing,Coarse,1/1\n3,Thing,Fine,1/1\n4,No,X,1/600\n"
    )
    found = audit(rig_of({"fixtures": [thing], "patch": patch})).findings
    assert all("cost_slots" in finding.figure for finding in found)
    cost = {(f.rule, f.unit): f.figure["cost_slots"] for f in found}
    assert cost["coarse-dimmer", "1"] == 1
    assert cost["smoothing-by-hand-only", "1"] == 2
    assert cost["smoothing-by-hand-only", "3"] == 1
    assert cost["control-slot-missing", "3"] == 1
    assert cost["address-overlap", "3"] == 0
    assert cost["unknown-fixture", "4"] is None
    (coarse,) = [f for f in found if (f.rule, f.unit) == ("coarse-dimmer", "1")]
    assert coarse.help.startswith("mode Fine has 16 bits, in 2 slots, 1 slot more; the limit is 3 JND")


def test_a_cure_that_no_mode_offers_has_no_cost():
    """One mode, and it is too coarse."""
    one = {"model": "One", "modes": [{"name": "M", "parameters": [{"parameter": "dimmer", "slots": [1]}]}]}
    found = audit(rig_of({"fixtures": [one], "patch": "unit,fixture,mode,address\n1,One,M,1/1\n"})).findings
    assert [(f.rule, f.figure["cost_slots"]) for f in found] == [("coarse-dimmer", None)]
