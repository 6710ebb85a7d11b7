"""Who lets its smoothing be changed without a hand on it, unit by unit, in the mode it is patched in."""

from __future__ import annotations

import json

from modebook.rig.examples import rig_of
from modebook.rig.remote import remote

CHOICES = [{"key": "off", "length": {"packets": 0}}, {"key": "on", "length": {"packets": 4}}]
RDM = {"by": "rdm", "pid": "0x8001", "size": 1, "values": {"off": 0, "on": 1}}
MENU = {"by": "menu", "path": ["Setup"]}


def fixture(model: str, *ways: dict[str, object], **more: object) -> dict[str, object]:
    setting = {"key": "smoothing", "setting": "smoothing", "choices": CHOICES, "ways": list(ways)}
    control = {
        "parameter": "control",
        "slots": [2],
        "ranges": [{"from": 0, "to": 255, "meaning": "Smooth", "sets": {"smoothing": "on"}}],
    }
    dimmer = {"parameter": "dimmer", "slots": [1]}
    modes = [{"name": "Short", "parameters": [dimmer]}, {"name": "Long", "parameters": [dimmer, control]}]
    return {"model": model, "settings": [setting], "modes": modes, **more}


FIXTURES = [
    fixture("Both", RDM, MENU),
    fixture("Hand", MENU),
    fixture("Mute"),
    {"model": "Plain", "modes": [{"name": "Short"}]},
    {"model": "Blank", "settings": [], "modes": [{"name": "Short"}]},
]

PATCH = """unit,fixture,mode,address
1,Both,Long,1/1
2,Both,Short,1/11
3,Both,Short,2/1
4,Both,Short,3/1
5,Both,Short,
6,Hand,Short,1/21
7,Hand,Long,1/31
8,Plain,Short,1/41
9,Blank,Short,1/51
10,Mute,Short,1/61
11,Nothing,Short,1/71
12,Hand,Nothing,1/81
"""


def answer():
    links = {"1": {"rdm": True}, "2": {"rdm": False}}
    return remote(rig_of({"fixtures": FIXTURES, "patch": PATCH, "rig": {"links": links}})).to_json()


def test_every_unit_is_counted_under_its_best_way():
    """By a slot only in the mode that has one; unknown fixtures and modes are unknown, not without."""
    told = answer()
    assert told["units"] == 12
    keys = ("by_slot", "by_rdm", "by_hand_only", "none", "unknown")
    assert {key: told[key] for key in keys} == {
        "by_slot": 2,
        "by_rdm": 4,
        "by_hand_only": 1,
        "none": 1,
        "unknown": 4,
    }
    assert {key: [unit["unit"] for unit in told["which"][key]] for key in keys} == {
        "by_slot": ["1", "7"],
        "by_rdm": ["2", "3", "4", "5"],
        "by_hand_only": ["6"],
        "none": ["8"],
        "unknown": ["9", "10", "11", "12"],
    }
    assert json.loads(json.dumps(told)) == told


def test_rdm_reaches_as_the_universes_link_says():
    """Yes in universe 1, no in 2, unknown in 3 and for a unit that is not patched."""
    told = answer()
    assert told["rdm_reaches"] == {"yes": 1, "no": 1, "unknown": 2}
    assert [unit["rdm_reaches"] for unit in told["which"]["by_rdm"]] == ["yes", "no", "unknown", "unknown"]


def test_a_link_for_all_other_universes_holds_where_none_is_named():
    """`other` in rig.json."""
    rig = {"links": {"other": {"rdm": "yes"}}}
    told = remote(rig_of({"fixtures": FIXTURES, "patch": PATCH, "rig": rig})).to_json()
    assert told["rdm_reaches"] == {"yes": 3, "no": 0, "unknown": 1}


def test_a_unit_over_two_rows_counts_once():
    """Its parts have one smoothing."""
    parts = [{"key": key, "footprint": 2, "parameters": []} for key in ("a", "b")]
    two = fixture("Wand", MENU) | {
        "modes": [{"name": "Two", "footprint": 4, "parameters": [], "parts": parts}]
    }
    patch = "unit,fixture,mode,part,address\n1,Wand,Two,a,1/1\n1,Wand,Two,b,1/9\n"
    told = remote(rig_of({"fixtures": [two], "patch": patch})).to_json()
    assert (told["units"], told["by_hand_only"]) == (1, 1)
