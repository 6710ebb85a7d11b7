"""Two settings on one control slot: what one sends must leave the other as it is."""

from __future__ import annotations

from modebook.rig.examples import rig_of
from modebook.shots.change import Stage
from modebook.shots.changes import change_list
from modebook.shots.patched import patched_units
from modebook.shots.replay import models, replay
from modebook.shots.route import Byte

TWO = [{"key": "off"}, {"key": "on"}]
FIXTURE = {
    "model": "Shared",
    "settings": [
        {"key": "smoothing", "setting": "smoothing", "choices": TWO},
        {"key": "fan", "setting": "fan", "choices": TWO},
    ],
    "modes": [
        {
            "name": "Whole",
            "parameters": [
                {
                    "parameter": "control",
                    "slots": [1],
                    "default": 0,
                    "ranges": [
                        {"from": 0, "to": 9, "meaning": "No function", "does": "nothing"},
                        {
                            "from": 10, "to": 14, "meaning": "Off", "sets": {"smoothing": "off"}, "hold_s": 3,
                            "kept": "stored",
                        },
                        {
                            "from": 15, "to": 19, "meaning": "On", "sets": {"smoothing": "on"}, "hold_s": 3,
                            "kept": "stored",
                        },
                        {"from": 20, "to": 24, "meaning": "Fan", "sets": {"fan": "on"}, "kept": "while sent"},
                        {
                            "from": 30, "to": 34, "meaning": "Fan off", "sets": {"fan": "off"}, "hold_s": 3,
                            "kept": "stored",
                        },
                    ],
                }
            ],
        }
    ],
}  # fmt: skip


def stage(name: str, smoothing: str, fan: str) -> Stage:
    return Stage(name, "", {("1", "smoothing"): smoothing, ("1", "fan"): fan})


def test_a_slot_goes_back_to_what_stands_there_for_another_setting():
    """The fan stands at 22: smoothing is sent, held, and 22 comes back; with the fan off it is 0 again."""
    reading = rig_of({"fixtures": [FIXTURE], "patch": "unit,fixture,mode,address\n1,Shared,Whole,1/5"})
    rows = {some[0].unit.number: some for some in patched_units(reading).rows.values()}
    stages = [stage("a", "off", "on"), stage("b", "on", "on"), stage("c", "off", "off")]
    told = change_list(reading, rows, stages, {}, False)
    (smoothing,) = told.setups[1].changes
    assert smoothing.bytes == (Byte(1, 5, 17),)
    assert smoothing.then_bytes == (Byte(1, 5, 22),)
    assert smoothing.then == "what stands there for another setting"
    assert all(one.then_bytes == (Byte(1, 5, 0),) for one in told.setups[2].changes)
    assert {one.setting for one in told.setups[2].changes} == {"smoothing", "fan"}
    assert replay(told, stages, models(rows, {})) == []


def sets(low: int, high: int, setting: str, choice: str, kept: str) -> dict[str, object]:
    return {"from": low, "to": high, "meaning": choice, "sets": {setting: choice}, "kept": kept}


def walked(ranges: list[dict[str, object]], default: int, ways: list[dict[str, object]]):
    """One unit with one control slot, smoothing and fan to be off: the list, and what goes wrong with it."""
    settings = [{**FIXTURE["settings"][0], "ways": ways}, FIXTURE["settings"][1]]
    slot = {"parameter": "control", "slots": [1], "default": default, "ranges": ranges}
    fixture = {"model": "Shared", "settings": settings, "modes": [{"name": "Whole", "parameters": [slot]}]}
    reading = rig_of({"fixtures": [fixture], "patch": "unit,fixture,mode,address\n1,Shared,Whole,1/5"})
    rows = {some[0].unit.number: some for some in patched_units(reading).rows.values()}
    stages = [Stage("a", "", {("1", "fan"): "off", ("1", "smoothing"): "off"})]
    told = change_list(reading, rows, stages, {}, False)
    return told, replay(told, stages, models(rows, {}))


def test_a_slot_rests_where_it_sets_nothing_at_all():
    """Its default sets smoothing while sent: neither that setting nor the fan's goes back to the default."""
    told, wrong = walked(
        [
            sets(0, 9, "smoothing", "on", "while sent"),
            {"from": 10, "to": 14, "meaning": "No function", "does": "nothing"},
            sets(20, 29, "smoothing", "off", "stored"),
            sets(30, 39, "fan", "off", "stored"),
        ],
        0,
        [],
    )
    assert {one.setting: one.then_bytes for one in told.setups[0].changes} == {
        "smoothing": (Byte(1, 5, 12),),
        "fan": (Byte(1, 5, 12),),
    }
    (stands,) = told.setups[0].stands
    assert stands.bytes == (Byte(1, 5, 12),)
    assert "keep it at rest" in stands.why
    assert wrong == []


def test_no_walk_for_a_choice_that_the_slot_overrules_where_it_rests():
    """The printed default sets smoothing on, and no rest is printed: the menu's off would not hold."""
    menu = [{"by": "menu", "path": ["Setup", "Smoothing"], "choices": ["off"]}]
    told, wrong = walked([sets(0, 9, "smoothing", "on", "while sent")], 0, menu)
    assert not told.setups[0].changes
    (smoothing,) = [fault for fault in told.setups[0].faults if "smoothing" in fault]
    assert "control overrules it at its printed default" in smoothing
    assert wrong == []


def test_a_slot_at_rest_gives_way_to_a_value_that_leaves_the_setting_alone():
    """Smoothing is set at the menu and its slot must rest; the fan's value there does as well as the rest."""
    menu = [{"by": "menu", "path": ["Setup", "Smoothing"], "choices": ["off"], "kept": "stored"}]
    ranges = [
        {"from": 0, "to": 9, "meaning": "No function", "does": "nothing"},
        sets(10, 19, "smoothing", "on", "while sent"),
        sets(20, 29, "fan", "off", "while sent"),
    ]
    told, wrong = walked(ranges, 0, menu)
    assert {one.by for one in told.setups[0].changes} == {"hand", "slot"}
    assert not told.setups[0].faults
    assert [one.bytes for one in told.setups[0].stands if one.bytes] == [(Byte(1, 5, 24),)]
    assert wrong == []
    ranges[2] = {**ranges[2], "sets": {"fan": "off", "smoothing": "on"}}
    told, wrong = walked(ranges, 0, menu)
    assert any("must stand at another value" in fault for fault in told.setups[0].faults)
    assert wrong == []


def test_nobody_is_sent_to_the_menu_for_what_a_slot_must_send_anyway():
    """Off by menu is stored, but the slot would overrule it: in the shop nothing is set by hand."""
    menu = [{"by": "menu", "path": ["Setup", "Smoothing"], "choices": ["off"], "kept": "stored"}]
    slot = {
        "parameter": "control",
        "slots": [1],
        "ranges": [
            {"from": 0, "to": 9, "meaning": "As the menu", "does": "as-menu"},
            sets(10, 19, "smoothing", "off", "while sent"),
        ],
    }
    settings = [{**FIXTURE["settings"][0], "ways": menu}]
    fixture = {"model": "Shared", "settings": settings, "modes": [{"name": "Whole", "parameters": [slot]}]}
    reading = rig_of({"fixtures": [fixture], "patch": "unit,fixture,mode,address\n1,Shared,Whole,1/5"})
    rows = {some[0].unit.number: some for some in patched_units(reading).rows.values()}
    (line,) = change_list(reading, rows, [Stage("a", "", {("1", "smoothing"): "off"})], {}, True).prep
    assert line.by is None
    assert "in every cue" in line.road
