"""A list read off the fixtures against the plan: who is who, what differs, and what was not compared."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.rig.examples import rig_of
from modebook.rig.found_reading import found_from_text
from modebook.rig.verify import Verification, verify

CHOICES = [
    {"key": "off", "label": "Fast", "length": {"packets": 0}, "factory": True},
    {"key": "short", "label": "Smooth", "length": {"packets": 2}},
    {"key": "long", "label": "Cine", "length": {"seconds": 0.2}},
]
WASH = {
    "maker": "Invented Maker",
    "model": "Wash",
    "rdm": {"manufacturer": "0x7FF1", "model": "0x0102"},
    "sources": [{"key": "guide", "title": "Guide", "firmware": "2.10"}],
    "settings": [
        {
            "key": "smoothing",
            "setting": "smoothing",
            "choices": CHOICES,
            "ways": [
                {"by": "menu", "path": ["Setup", "Response"]},
                {"by": "rdm", "pid": "0x8001", "size": 1, "values": {"off": 1, "short": 2, "long": 3}},
            ],
        },
        {
            "key": "curve",
            "setting": "dimmer-curve",
            "choices": [{"key": "linear", "factory": True}, {"key": "square", "label": "Square law"}],
        },
    ],
    "modes": [
        {"name": "Basic", "number": 1, "footprint": 4, "source": "guide", "parameters": []},
        {"name": "Extended", "number": 2, "footprint": 8, "source": "guide", "parameters": []},
    ],
}
SPOT = WASH | {"model": "Spot", "rdm": {"manufacturer": "0x7FF1", "model": "0x0203"}}
BARE = {"model": "Bare", "modes": [{"name": "Only", "footprint": 3, "parameters": []}]}
FIXTURES = [WASH, SPOT, BARE]
PATCH = """unit,fixture,mode,address,position,reach
1,Wash,Extended,1/1,Truss 1,lift
2,Wash,Extended,1/11,Truss 1,lift
12A,Wash,Extended,2/1,Truss 2,ladder
21,Spot,Basic,2/101,Floor,floor
22,Bare,Only,3/1,Floor,floor
"""
AS_PLANNED = """Label,Model ID,Model,Universe,Start Address,Personality,Location
1,0x0102,Wash,1,1,2,Truss 1
2,0x0102,Wash,1,11,2,Truss 1
12A,0x0102,Wash,2,1,2,Truss 2
21,0x0203,Spot,2,101,1,Floor
22,,Bare,3,1,Only,Floor
"""


def run(listed: str, patch: str = PATCH, **rig) -> Verification:
    reading = rig_of({"fixtures": FIXTURES, "patch": patch, "rig": rig})
    return verify(reading, found_from_text(listed))


def told(result: Verification) -> list[tuple[str, str, object, object]]:
    return [(one.rule, one.unit, one.planned, one.found) for one in result.findings]


def alone(listed: str, unit: str = "1", **rig) -> list[tuple[str, object, object]]:
    """What is told of one unit, where the list has no more than it."""
    return [(rule, was, now) for rule, who, was, now in told(run(listed, **rig)) if who == unit]


def test_a_list_that_says_what_was_planned_has_no_findings():
    """All five by their numbers."""
    result = run(AS_PLANNED)
    assert told(result) == []
    assert (result.matched, result.units, result.doubtful) == (5, 5, 0)
    assert result.by == {"unit number": 5}


def test_the_json_has_the_keys_that_scripts_rely_on():
    """`matched`, and `findings` with rule, unit, planned, found; addresses as universe and address."""
    result = json.loads(json.dumps(run(AS_PLANNED.replace("1,11", "1,12")).to_json()))
    assert result["matched"] == 5
    (finding,) = result["findings"]
    assert {"rule", "unit", "planned", "found"} <= set(finding)
    assert finding["planned"] == {"universe": 1, "address": 11}
    assert finding["found"] == {"universe": 1, "address": 12}
    assert (finding["position"], finding["reach"], finding["row"], finding["patch_row"]) == (
        "Truss 1",
        "lift",
        3,
        3,
    )


@pytest.mark.parametrize(
    ("title", "cell", "finding"),
    [
        ("Personality", "1", ("wrong-mode", "Extended", "Basic")),
        ("Personality", "1 of 2", ("wrong-mode", "Extended", "Basic")),
        ("Personality", "1: Basic", ("wrong-mode", "Extended", "Basic")),
        ("Personality", "Basic (1)", ("wrong-mode", "Extended", "Basic")),
        ("Mode name", "basic", ("wrong-mode", "Extended", "Basic")),
        ("Mode name", "Pixels", ("wrong-mode", "Extended", "Pixels")),
        ("Personality", "7", ("wrong-mode", "Extended", "7")),
        ("Footprint", "4", ("wrong-mode", "Extended", "4 slots")),
        ("Personality,Footprint", "2,10", ("wrong-mode", "Extended", "10 slots")),
        ("Personality,Footprint", "2,8", None),
        ("Personality", "2/2", None),
        ("Mode", "EXTENDED", None),
        ("Slots", "8", None),
        ("Mode", "", None),
        ("Model ID", "0203", ("wrong-fixture", "invented-maker/wash", "invented-maker/spot")),
        ("Model ID", "0x0999", ("wrong-fixture", "invented-maker/wash", "model id 0x0999")),
        ("Model ID", "102", None),
        ("Model", "Spot", ("wrong-fixture", "invented-maker/wash", "invented-maker/spot")),
        ("Model", "Toaster", ("wrong-fixture", "invented-maker/wash", "Toaster")),
        ("Model", "INVENTED MAKER WASH", None),
        ("Firmware", "2.4", ("other-firmware", "2.10", "2.4")),
        ("Software version", "v2.10", None),
        ("Firmware", "2.10.0", None),
        ("Response time", "Cine", ("wrong-choice", "off", "long")),
        ("Response time", "3", ("wrong-choice", "off", "long")),
        ("Smoothing", "200 ms", ("wrong-choice", "off", "long")),
        ("Response", "2 packets", ("wrong-choice", "off", "short")),
        ("Response", "slimy", ("wrong-choice", "off", "slimy")),
        ("Response time", "fast", None),
        ("Output response time", "1", None),
        ("Curve", "Square law", ("wrong-choice", "linear", "square")),
        ("Dimming curve", "LINEAR", None),
    ],
)
def test_each_thing_that_differs_is_told_as_planned_and_found(title, cell, finding):
    """One column beside the unit's number; as E1.20 and E1.37-1 call them and as people do."""
    assert alone(f"Unit,{title}\n1,{cell}\n") == ([finding] if finding else [])


def test_the_footprint_decides_between_modes_of_one_number():
    """A menu state gives personality 1 two footprints: 36 slots are the other mode than planned."""
    modes = [
        {"name": "2 x 2", "number": 1, "footprint": 36, "given": "Grid: 2 x 2", "parameters": []},
        {"name": "4 x 4", "number": 1, "footprint": 132, "given": "Grid: 4 x 4", "parameters": []},
    ]
    patch = "unit,fixture,mode,address\n1,Grid,4 x 4,1/1\n"
    reading = rig_of({"fixtures": [{"model": "Grid", "modes": modes}], "patch": patch})

    def listed(footprint: str) -> list[tuple[str, str, object, object]]:
        return told(verify(reading, found_from_text(f"Unit,Personality,Footprint\n1,1,{footprint}\n")))

    assert listed("36") == [("wrong-mode", "1", "4 x 4", "2 x 2")]
    assert listed("132") == []
    assert listed("") == []


def test_a_choice_that_rig_json_plans_is_an_error_and_else_a_warning():
    """The factory's choice is what counts where nobody has said otherwise."""
    listed = "Unit,Response\n1,Smooth\n"
    rig = {"units": {"1": {"settings": {"smoothing": "short"}}}}
    assert alone(listed, **rig) == []
    (finding,) = [one for one in run("Unit,Response\n1,Fast\n", **rig).findings if one.unit == "1"]
    assert (finding.severity, finding.planned, finding.found) == ("error", "short", "off")
    assert finding.task == "set smoothing to short (Setup > Response); it has off"
    (finding,) = [one for one in run(listed).findings if one.unit == "1"]
    assert finding.severity == "warning"


def test_a_firmware_that_was_noted_is_known_and_the_records_is_told_for_information():
    """Noted 2.4, found 2.4: the record's 2.10 is another, as is known. Found 2.10: not what was noted."""
    rig = {"units": {"1": {"firmware": "2.4"}}}
    (finding,) = [one for one in run("Unit,Firmware\n1,2.4\n", **rig).findings if one.unit == "1"]
    assert (finding.rule, finding.severity, finding.planned) == ("other-firmware", "info", "2.10")
    (finding,) = [one for one in run("Unit,Firmware\n1,2.10\n", **rig).findings if one.unit == "1"]
    assert (finding.severity, finding.planned) == ("warning", "2.4")


UIDS = {"units": {"1": {"uid": "7FF1:00000A01"}, "2": {"uid": "7FF1:00000A02"}}}


@pytest.mark.parametrize("written", ["7FF1:00000A01", "7ff1:00000a01", "7FF100000A01", "7FF1-00000A01"])
def test_a_uid_goes_first(written):
    """However it is written; the label is silent."""
    result = run(f"UID,Address\n{written},1/1\n", **UIDS)
    assert result.by == {"UID": 1}
    assert "1" not in {one.unit for one in result.findings}


def test_a_uid_that_another_label_stands_beside_is_in_doubt():
    """By its UID it is unit 1, by its label unit 2."""
    result = run("Label,UID,Address\n2,7FF1:00000A01,1/1\n", **UIDS)
    (doubt,) = [one for one in result.findings if one.rule == "match-doubtful"]
    assert (doubt.unit, doubt.found["unit"]) == ("1", "2")
    assert result.doubtful == 1


def test_a_unit_with_another_uid_than_planned_was_perhaps_swapped():
    """Matched by its number, with the doubt."""
    result = run("Label,UID,Address\n1,7FF1:00000FFF,1/1\n", **UIDS)
    (doubt,) = [one for one in result.findings if one.rule == "match-doubtful"]
    assert "7FF1:00000FFF" in doubt.message
    assert "swapped" in doubt.message


def test_without_uid_or_number_model_universe_and_address_tell():
    """Sure enough: no doubt."""
    result = run("Model,Universe,Address\nWash,1,11\nSpot,2,101\n")
    assert result.by == {"model, universe and address": 2}
    assert result.doubtful == 0
    assert {one.unit for one in result.findings if one.rule == "unit-missing"} == {"1", "12A", "22"}


def test_without_a_universe_the_address_alone_is_in_doubt_and_with_the_position_it_is_not():
    """Two Washes listen at 1, in universes 1 and 2."""
    result = run("Model,Address,Position\nWash,1,Truss 2\n")
    assert result.by == {"model, address and position": 1}
    assert result.doubtful == 0
    assert "12A" not in {one.unit for one in result.findings}
    result = run("Model,Address\nWash,1\n")
    (doubt,) = [one for one in result.findings if one.rule == "match-doubtful"]
    assert "2 units fit" in doubt.message


def test_a_wrong_address_is_told_of_the_one_at_that_position_with_doubt():
    """Only model and position tell which it is."""
    result = run("Model,Universe,Address,Position\nSpot,2,110,floor\n")
    found = [(one.rule, one.found) for one in result.findings if one.unit == "21"]
    assert ("wrong-address", {"universe": 2, "address": 110}) in found
    assert {rule for rule, _ in found} == {"wrong-address", "match-doubtful"}


def test_another_model_at_a_planned_address_is_the_unit_with_doubt():
    """A Spot where a Wash was to be."""
    result = run("Model,Universe,Address\nSpot,1,11\n")
    assert {one.rule for one in result.findings if one.unit == "2"} == {"match-doubtful", "wrong-fixture"}


def test_the_last_one_left_of_its_model_is_that_unit_with_doubt_and_two_are_not():
    """One Spot was planned; of two on the list neither can be told."""
    result = run("Model,Universe,Address\nSpot,9,1\n")
    assert {one.rule for one in result.findings if one.unit == "21"} == {"match-doubtful", "wrong-address"}
    result = run("Model,Universe,Address\nSpot,9,1\nSpot,9,11\n")
    assert [one.rule for one in result.findings].count("unit-extra") == 2


def test_what_is_in_no_plan_is_extra_and_an_error_on_slots_that_are_taken():
    """At 7/1 it harms nobody; at 1/5 it listens to unit 1."""
    result = run(AS_PLANNED + "99,0x0203,Spot,7,1,1,Roof\n98,0x0203,Spot,1,5,1,Roof\n")
    found = {one.unit: (one.rule, one.severity, one.position) for one in result.findings}
    assert found == {"99": ("unit-extra", "warning", "Roof"), "98": ("unit-extra", "error", "Roof")}


def test_what_no_row_is_about_is_missing():
    """With what was planned."""
    result = run("\n".join(AS_PLANNED.splitlines()[:-1]) + "\n")
    assert told(result) == [
        (
            "unit-missing",
            "22",
            {"fixture": "invented-maker/bare", "mode": "Only", "address": {"universe": 3, "address": 1}},
            None,
        )
    ]


@pytest.mark.parametrize("cell", ["65535", "-", "0xFFFF"])
def test_a_fixture_that_listens_nowhere_is_at_a_wrong_address(cell):
    """65535 is how E1.20 says that there is no start address (from memory)."""
    result = run(f"Unit,Universe,Address\n1,1,{cell}\n2,1,11\n")
    (finding,) = [one for one in result.findings if one.rule == "wrong-address"]
    assert (finding.unit, finding.found) == ("1", {"universe": 1, "address": None})


def test_a_blank_address_is_not_compared():
    """Nobody read it off: no unit is sent to be given one."""
    result = run("Unit,Universe,Address\n1,1,\n2,1,11\n")
    assert not [one for one in result.findings if one.rule == "wrong-address"]


def test_a_bare_address_among_others_is_the_fixtures_own():
    """A fixture does not know its universe: 2 is compared within the planned one, 1 is right."""
    assert alone("Unit,Address\n1,1\n2,1/11\n") == []
    (finding,) = [one for one in run("Unit,Address\n1,2\n2,1/11\n").findings if one.rule == "wrong-address"]
    assert (finding.unit, finding.found) == ("1", {"universe": None, "address": 2})


def test_an_address_without_universe_is_compared_within_it():
    """As one gateway port's list has it."""
    assert alone("Unit,DMX Start Address\n1,1\n") == []
    assert alone("Unit,DMX Start Address\n1,2\n") == [
        ("wrong-address", {"universe": 1, "address": 1}, {"universe": None, "address": 2})
    ]


def test_a_unit_over_two_rows_has_two_addresses_and_may_be_listed_once_or_twice():
    """Either of its start addresses is right for a row without a part."""
    two = {
        "model": "Two",
        "modes": [
            {
                "name": "Split",
                "footprint": 8,
                "parameters": [],
                "parts": [{"key": "yoke", "footprint": 4}, {"key": "ring", "footprint": 4}],
            }
        ],
    }
    patch = "unit,fixture,mode,part,address\n7,Two,Split,yoke,1/1\n7,Two,Split,ring,1/11\n"
    reading = rig_of({"fixtures": [two], "patch": patch})
    for listed in (
        "Unit,Address\n7,1/1\n",
        "Unit,Address\n7,1/1\n7,1/11\n",
        "Unit,Part,Address\n7,ring,1/11\n",
    ):
        result = verify(reading, found_from_text(listed))
        assert told(result) == []
        assert (result.units, result.matched) == (1, 1)
    result = verify(reading, found_from_text("Unit,Part,Address\n7,ring,1/12\n"))
    assert told(result)[0][2:] == ({"universe": 1, "address": 11}, {"universe": 1, "address": 12})


def test_twins_at_one_address_are_told_apart_by_nothing_and_need_not_be():
    """No doubt: it makes no difference."""
    patch = "unit,fixture,mode,address\n1,Wash,Basic,1/1\n1A,Wash,Basic,1/1\n"
    result = run("Model,Universe,Address\nWash,1,1\nWash,1,1\n", patch)
    assert told(result) == []
    assert (result.matched, result.doubtful) == (2, 0)


def test_what_the_plan_does_not_know_is_not_compared_and_said_so():
    """A fixture without a record, a mode that there is not, an address that could not be read."""
    patch = "unit,fixture,mode,address\n1,Nothing,M,1/1\n2,Wash,Nothing,1/11\n3,Wash,Basic,1/600\n"
    result = run("Unit,Model,Personality,Address\n1,Toaster,1,1/1\n2,Wash,1,1/11\n3,Wash,1,1/5\n", patch)
    assert told(result) == []
    assert len(result.notes) == 3


def test_a_number_that_may_be_a_label_or_an_rdm_value_is_said_to_be_unsure():
    """Labels 0 and 1, RDM values 1 and 2: 1 may be either, and one of them is planned."""
    choices = [{"key": "off", "label": "0", "factory": True}, {"key": "on", "label": "1"}]
    way = {"by": "rdm", "pid": "0x8001", "size": 1, "values": {"off": 1, "on": 2}}
    odd = {
        "model": "Odd",
        "settings": [{"key": "smoothing", "setting": "smoothing", "choices": choices, "ways": [way]}],
        "modes": [{"name": "M", "footprint": 1, "parameters": []}],
    }
    reading = rig_of({"fixtures": [odd], "patch": "unit,fixture,mode,address\n1,Odd,M,1/1\n"})
    result = verify(reading, found_from_text("Unit,Response\n1,1\n"))
    assert told(result) == []
    assert "may be" in result.notes[0]
    assert told(verify(reading, found_from_text("Unit,Response\n1,2\n"))) == [
        ("wrong-choice", "1", "off", "on")
    ]


def test_cells_that_cannot_be_read_are_findings_with_row_and_column():
    """The other cells of the row still count."""
    result = run("Unit,UID,Universe,Address,Personality\n1,7FF1,1,1,1\n2,,B,11,2\n")
    bad = {(one.unit, one.row, one.column, one.severity) for one in result.findings if one.rule == "bad-row"}
    assert bad == {("1", 2, "UID", "error"), ("2", 3, "Universe", "error")}
    assert ("wrong-mode", "1") in {(one.rule, one.unit) for one in result.findings}


ROWS = st.lists(st.tuples(*(st.text("127FfAB/:.x -Wash\u00e9", max_size=7) for _ in range(6))), max_size=6)


@given(ROWS)
def test_any_list_gives_findings_and_never_raises(rows):
    """Each row is about a unit, or extra."""
    lines = ["unit;uid;model;universe;address;personality"]
    lines += [";".join(cell.replace(";", "") for cell in row) for row in rows]
    result = run("\n".join(lines) + "\n")
    extra = [one.row for one in result.findings if one.rule == "unit-extra"]
    blank = sum(not any(cell.strip() for cell in row) for row in rows)
    assert sum(result.by.values()) + len(extra) == len(rows) - blank == result.rows
    missing = [one for one in result.findings if one.rule == "unit-missing"]
    assert result.matched + len(missing) == result.units == 5


@given(st.permutations(AS_PLANNED.splitlines()[1:]))
def test_the_order_of_the_list_makes_no_difference(rows):
    """All found, whatever comes first."""
    listed = "\n".join([AS_PLANNED.splitlines()[0], *rows]) + "\n"
    assert told(run(listed)) == []
