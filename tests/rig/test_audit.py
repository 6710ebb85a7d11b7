"""The audit: units against the catalog, slots against each other, modes against what they are used for."""

from __future__ import annotations

import json
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.checks.finding import Finding
from modebook.rig.audit import Audit, audit, loads, patch_findings
from modebook.rig.examples import rig_of

SIZES = (1, 3, 8, 40, 200, 512)


def plain(model: str = "Par", sizes=SIZES, **more):
    return {
        "model": model,
        "modes": [
            {"name": f"M{size}", "number": place, "footprint": size, "parameters": [], **more}
            for place, size in enumerate(sizes, 1)
        ],
    }


def run(patch: str, fixtures=None, **rig) -> Audit:
    return audit(rig_of({"fixtures": fixtures or [plain()], "patch": patch, "rig": rig}))


def of(found: Audit, rule: str) -> list[Finding]:
    return [finding for finding in found.findings if finding.rule == rule]


UNITS = st.lists(
    st.tuples(st.sampled_from(SIZES), st.integers(1, 3), st.integers(1, 512)), min_size=1, max_size=7
)


@given(UNITS, st.booleans())
@settings(deadline=None, max_examples=150)
def test_overlaps_are_those_of_a_plain_comparison_of_512_slots(units, continues):
    """Brute force: the sets of (universe, slot) of any two rows, built slot by slot."""
    rows = [f"{n},Par,M{size},{u}/{a}" for n, (size, u, a) in enumerate(units, 1)]
    found = run("unit,fixture,mode,address\n" + "\n".join(rows) + "\n", [plain(continues=continues)])
    taken = []
    for size, universe, address in units:
        slots = set()
        for number in range(size):
            if address + number <= 512:
                slots.add((universe, address + number))
            elif continues:
                slots.add((universe + 1, address + number - 512))
        taken.append(slots)
    overlaps, twins = {}, {}
    for later in range(len(units)):
        for other in range(later):
            common = taken[later] & taken[other]
            if units[later] == units[other]:
                twins.setdefault(later, other)
            elif common:
                overlaps[(later + 1, other + 1)] = common
    told = {(int(f.unit), int(f.figure["other_unit"])): f.figure for f in of(found, "address-overlap")}
    assert set(told) == set(overlaps)
    for pair, common in overlaps.items():
        figure = told[pair]
        first, last = min(common), max(common)
        assert figure["slots"] == len(common)
        assert (figure["universe"], figure["first_address"]) == first
        assert figure["last_address"] == last[1]
        assert figure["other_row"] == pair[1] + 1
    shared = {int(f.unit) - 1: int(f.figure["other_unit"]) - 1 for f in of(found, "address-shared")}
    assert shared == twins


@settings(deadline=None)
@given(UNITS)
def test_past_the_end_are_those_that_end_beyond_512(units):
    """Address plus footprint minus 1, by hand."""
    rows = [f"{n},Par,M{size},{u}/{a}" for n, (size, u, a) in enumerate(units, 1)]
    found = run("unit,fixture,mode,address\n" + "\n".join(rows) + "\n")
    told = {int(f.unit): f.figure["slots_beyond"] for f in of(found, "past-universe-end")}
    assert told == {n: a + size - 513 for n, (size, _, a) in enumerate(units, 1) if a + size - 1 > 512}


@settings(deadline=None)
@given(UNITS)
def test_a_universes_load_is_that_of_its_slots_counted_one_by_one(units):
    """Slots used, highest address, and E1.11's shortest packet: 92 + 12 + 44 (n + 1) us, at least 1204 us."""
    rows = [f"{n},Par,M{size},{u}/{a}" for n, (size, u, a) in enumerate(units, 1)]
    reading = rig_of({"fixtures": [plain()], "patch": "unit,fixture,mode,address\n" + "\n".join(rows) + "\n"})
    slots = {}
    for size, universe, address in units:
        slots.setdefault(universe, set()).update(range(address, min(address + size, 513)))
    assert [load.universe for load in loads(reading)] == sorted(slots)
    for load in loads(reading):
        used = slots[load.universe]
        assert (load.slots_used, load.highest_address) == (len(used), max(used))
        packet_us = max(92 + 12 + 44 * (max(used) + 1), 1204)
        assert load.max_refresh_hz == pytest.approx(1e6 / packet_us, abs=1e-3)


def test_the_json_has_the_keys_that_scripts_rely_on():
    """Whole and valid JSON, one object."""
    found = run("unit,fixture,mode,address\n12A,Par,M8,1/1\n13,Par,M8,1/8\n")
    told = json.loads(json.dumps(found.to_json()))
    assert {"rig", "units", "universes", "findings"} <= set(told)
    assert told["units"] == 2
    assert told["universes"] == [
        {"universe": 1, "slots_used": 15, "highest_address": 15, "max_refresh_hz": 830.565}
    ]
    (finding,) = told["findings"]
    assert {"rule", "severity", "unit", "row", "message", "figure"} <= set(finding)
    assert (finding["rule"], finding["severity"]) == ("address-overlap", "error")
    assert (finding["unit"], finding["row"]) == ("13", 3)
    assert finding["figure"]["other_unit"] == "12A"
    assert finding["figure"]["other_row"] == 2


def test_the_later_row_is_the_one_further_down_the_file_not_the_higher_address():
    """Unit 1 sits above unit 2 in the universe, and stands before it in the file."""
    (finding,) = of(run("unit,fixture,mode,address\n1,Par,M8,1/8\n2,Par,M8,1/1\n"), "address-overlap")
    assert (finding.unit, finding.figure["other_unit"]) == ("2", "1")


def test_a_whole_universe_on_one_address_names_eight_others_for_a_unit():
    """Two thousand units would make two million findings."""
    rows = [f"{n},Par,M{SIZES[n % 2]},1/1" for n in range(300)]
    found = of(run("unit,fixture,mode,address\n" + "\n".join(rows) + "\n"), "address-overlap")
    assert len(found) <= 300 * 8
    assert {finding.unit for finding in found} == {str(n) for n in range(1, 300)}


TWO = {
    "model": "Wand",
    "modes": [
        {
            "name": "Two starts",
            "footprint": 12,
            "parameters": [{"parameter": "dimmer", "slots": [1, 2]}],
            "parts": [
                {"key": "yoke", "footprint": 4, "parameters": []},
                {"key": "head", "footprint": 6, "parameters": []},
            ],
        }
    ],
}


def test_a_unit_over_several_rows_is_one_unit_and_each_part_takes_its_own_slots():
    """Main slots 1 to 2, yoke 3 to 6, head 7 to 12: side by side, without a fault."""
    patch = "unit,fixture,mode,part,address\n7,Wand,Two starts,,1/1\n7,Wand,Two starts,head,1/7\n"
    patch += "7,Wand,Two starts,yoke,1/3\n"
    found = run(patch, [TWO])
    assert found.findings == []
    assert (found.units, found.universes[0].slots_used) == (1, 12)


def test_rows_that_name_no_part_have_the_parts_in_turn():
    """As a person writes one unit over two or three rows."""
    rows = "7,Wand,Two starts,1/1\n7,Wand,Two starts,1/3\n7,Wand,Two starts,1/7\n"
    assert run("unit,fixture,mode,address\n" + rows, [TWO]).findings == []


def test_parts_of_one_unit_overlap_as_units_do():
    """The yoke on the head's slots."""
    patch = "unit,fixture,mode,part,address\n7,Wand,Two starts,head,1/7\n7,Wand,Two starts,yoke,1/8\n"
    found = run(patch, [TWO])
    assert of(found, "address-overlap")[0].figure["slots"] == 4
    assert of(found, "bad-row")[0].figure["missing_parts"] == ["main"]


def test_a_part_that_the_mode_lacks_is_told():
    """With the parts that it has."""
    found = run("unit,fixture,mode,part,address\n7,Wand,Two starts,lid,1/7\n", [TWO])
    told = of(found, "bad-row")[0]
    assert "has no part 'lid'" in told.message
    assert told.help == "write main, yoke or head"


def test_a_fourth_row_of_a_unit_with_three_parts_is_a_duplicate():
    """The turn has come round."""
    rows = "".join(f"7,Wand,Two starts,{u}/1\n" for u in (1, 2, 3, 4))
    (finding,) = of(run("unit,fixture,mode,address\n" + rows, [TWO]), "duplicate-unit")
    assert (finding.row, finding.figure["other_row"]) == (5, 2)


def test_rows_of_one_number_in_different_modes_are_two_units():
    """The second is no other part of the first, though it has another part's key."""
    other = {**TWO["modes"][0], "name": "Other"}
    fixture = {**TWO, "modes": [*TWO["modes"], other]}
    patch = "unit,fixture,mode,part,address\n7,Wand,Two starts,head,1/1\n7,Wand,Other,yoke,2/1\n"
    assert of(run(patch, [fixture]), "duplicate-unit")[0].row == 3


def test_a_row_typed_twice_is_a_duplicate_and_no_twin():
    """Same number, fixture, mode and address."""
    found = run("unit,fixture,mode,address\n1,Par,M8,1/1\n1,Par,M8,1/1\n")
    assert [finding.rule for finding in found.findings] == ["duplicate-unit"]


def test_a_mode_that_continues_runs_into_the_next_universe():
    """Ten slots from 510 on: three in universe 1, seven in universe 2, where another unit sits."""
    fixture = plain("Strip", (10,), continues=True)
    found = run(
        "unit,fixture,mode,address\n1,Strip,M10,1/510\n2,Par,M1,2/7\n3,Par,M1,2/8\n", [fixture, plain()]
    )
    assert [(f.rule, f.unit) for f in found.findings] == [("address-overlap", "2")]
    assert [(load.universe, load.slots_used) for load in found.universes] == [(1, 3), (2, 8)]


def test_a_mode_that_continues_cannot_run_past_the_last_universe():
    """E1.31 ends at 63999."""
    found = run("unit,fixture,mode,address\n1,Strip,M10,63999/510\n", [plain("Strip", (10,), continues=True)])
    assert of(found, "past-universe-end")[0].figure["slots_beyond"] == 7


YOKE = {
    "model": "Spot",
    "settings": [
        {
            "key": "smoothing",
            "setting": "smoothing",
            "choices": [
                {"key": "off", "length": {"packets": 0}, "source": "guide"},
                {"key": "on", "length": {"seconds": 0.1}, "factory": True, "source": "guide"},
            ],
            "ways": [{"by": "menu", "path": ["Setup"]}],
            "source": "guide",
        }
    ],
    "modes": [
        {
            "name": "Coarse",
            "source": "guide",
            "parameters": [
                {"parameter": "dimmer", "slots": [1, 2]},
                {"parameter": "pan", "slots": [3], "span": {"from": -270, "to": 270, "unit": "deg"}},
            ],
        },
        {
            "name": "Fine",
            "source": "guide",
            "parameters": [
                {"parameter": "dimmer", "slots": [1, 2]},
                {"parameter": "pan", "slots": [3, 4], "span": {"from": -270, "to": 270, "unit": "deg"}},
            ],
        },
    ],
}


def test_a_coarse_pan_is_told_in_meters_at_the_units_throw():
    """540 degrees over 255 steps are 2.12 degrees: 0.30 m at 8 m, and half of it at 4 m (geometry)."""
    found = run(
        "unit,fixture,mode,address,throw\n1,Spot,Coarse,1/1,8\n2,Spot,Coarse,1/11,4\n3,Spot,Fine,1/21,8\n",
        [YOKE],
    )
    coarse = of(found, "coarse-angle")
    assert [(finding.unit, finding.row) for finding in coarse] == [("1", 2), ("2", 3)]
    for finding, throw_m in zip(coarse, (8, 4), strict=True):
        assert finding.figure["step_deg"] == pytest.approx(540 / 255, rel=1e-3)
        # A step of the beam's end, as arc or chord: they differ by less than a thousandth here.
        assert finding.figure["displacement_m"] == pytest.approx(math.radians(540 / 255) * throw_m, rel=2e-3)
        assert finding.figure["bits"] == 8
        assert finding.figure["fixture"] == "invented-maker/spot"


def test_a_rigs_own_threshold_holds():
    """A rig that lives with 3 degrees has no coarse pan."""
    patch = "unit,fixture,mode,address\n1,Spot,Coarse,1/1\n"
    assert of(run(patch, [YOKE]), "coarse-angle")
    assert not of(run(patch, [YOKE], policy={"pan-tilt-step": 3}), "coarse-angle")


def test_a_mode_is_judged_once_for_a_unit_over_several_rows():
    """Its parts are one unit."""
    two = {**YOKE, "model": "Wand", "modes": [{**TWO["modes"][0], "source": "guide"}]}
    found = run("unit,fixture,mode,part,address\n7,Wand,Two starts,,1/1\n7,Wand,Two starts,yoke,1/3\n", [two])
    assert len(of(found, "smoothing-by-hand-only")) <= 1


def test_findings_stand_in_the_order_of_the_file():
    """As a person goes through the list."""
    found = run("unit,fixture,mode,address\n1,Spot,Coarse,1/1\n2,Nothing,X,1/2\n3,Spot,Coarse,1/2\n", [YOKE])
    rows = [finding.row for finding in found.findings]
    assert rows == sorted(rows)
    assert found.summary["error"] == sum(finding.severity == "error" for finding in found.findings)


def test_a_gateways_rate_goes_before_the_desks():
    """44 Hz fit 512 slots, 50 Hz do not; 44.1 is the trade's rounding of 44.0995 (E1.11)."""
    patch = "unit,fixture,mode,address\n1,Par,M1,1/512\n2,Par,M1,2/512\n"
    found = run(patch, refresh_hz=44.1, links={"2": {"gateway_hz": 50}})
    assert [finding.figure["universe"] for finding in of(found, "universe-too-slow")] == [2]


def test_a_rule_that_fails_is_a_finding(monkeypatch):
    """The others' findings are not lost."""
    from modebook.rig.rules import bad_row

    reading = rig_of(
        {"fixtures": [plain()], "patch": "unit,fixture,mode,address\n1,Par,M8,1/1\n2,Par,M8,1/2\n"}
    )
    broken = bad_row.RULE.__class__(
        **{name: getattr(bad_row.RULE, name) for name in bad_row.RULE.__slots__ if name != "check"},
        check=lambda _reading: 1 / 0,
    )
    monkeypatch.setattr(
        "modebook.rig.audit.rules_of", lambda _package: {"bad-row": broken, "duplicate-unit": broken}
    )
    found = list(patch_findings(reading))
    assert [finding.rule for finding in found] == ["rule-crashed", "rule-crashed"]


def test_settings_that_a_record_lacks_are_told():
    """rig.json: a misspelled setting, and a choice that there is not."""
    fixture = {
        "model": "Wash",
        "settings": [
            {"key": "smoothing", "setting": "smoothing", "choices": [{"key": "off"}, {"key": "two"}]}
        ],
        "modes": [{"name": "M", "footprint": 1, "parameters": [{"parameter": "dimmer", "slots": [1]}]}],
    }
    units = {"1": {"settings": {"smoothin": "off"}}, "2": {"settings": {"smoothing": "nine"}}}
    patch = "unit,fixture,mode,address\n1,Wash,M,1/1\n2,Wash,M,1/2\n"
    told = audit(rig_of({"fixtures": [fixture], "patch": patch, "rig": {"units": units}})).notes
    assert [note for note in told if "rig.json" in note] == [
        "rig.json, unit 1: invented-maker/wash has no setting 'smoothin'; there are smoothing",
        "rig.json, unit 2: invented-maker/wash has no choice 'nine' of its smoothing; there are off, two",
    ]
