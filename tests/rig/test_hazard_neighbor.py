"""Dangerous slots on a neighbor's moving ones, against a comparison slot by slot."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.rig.audit import patch_findings
from modebook.rig.examples import rig_of

RESET = {
    "parameter": "control",
    "slots": [3],
    "ranges": [
        {"from": 0, "to": 99, "meaning": "No function", "does": "nothing"},
        {"from": 100, "to": 255, "meaning": "Reset", "hazard": "reset"},
    ],
}
MOVER = [{"parameter": "dimmer", "slots": [1, 2]}, RESET, {"parameter": "pan", "slots": [4]}]


def fixture(model: str, *parameters):
    return {"model": model, "modes": [{"name": "M", "parameters": list(parameters)}]}


def run(*units: tuple[str, int], fixtures):
    rows = [f"{n},{model},M,1/{address}" for n, (model, address) in enumerate(units, 1)]
    patch = "unit,fixture,mode,address\n" + "\n".join(rows) + "\n"
    return list(patch_findings(rig_of({"fixtures": fixtures, "patch": patch}), ["hazard-neighbor"]))


@given(st.lists(st.integers(1, 14), min_size=2, max_size=5))
def test_a_reset_is_told_wherever_another_units_cue_moves_it(addresses):
    """Slot 3 of one on slots 1, 2 or 4 of another, at any two addresses that are no twins'."""
    found = run(*[("Mover", at) for at in addresses], fixtures=[fixture("Mover", *MOVER)])
    wanted = {
        (one, other)
        for one, at in enumerate(addresses, 1)
        for other, there in enumerate(addresses, 1)
        if at != there and at + 2 in (there, there + 1, there + 3)
    }
    assert {(int(f.unit), int(f.figure["other_unit"])) for f in found} == wanted
    assert all(f.figure["hazards"] == ["reset"] for f in found)


@pytest.mark.parametrize(
    ("word", "hazard"),
    [
        ("flame", "flame"),
        ("hoist-position", "hoist"),
        ("motor-speed", "hoist"),
        ("laser-output", "laser"),
        ("track-position", "movement"),
    ],
)
def test_what_is_a_hazard_in_itself_needs_no_range(word, hazard):
    """Flame, hoist, motor, laser and track, on the slot of another's dimmer; and where it lies."""
    thing = fixture("Thing", {"parameter": "fan", "slots": [1]}, {"parameter": word, "slots": [2]})
    par = fixture("Par", {"parameter": "dimmer", "slots": [1]})
    (finding,) = run(("Thing", 1), ("Par", 2), fixtures=[thing, par])
    assert (finding.unit, finding.severity) == ("1", "error")
    assert finding.figure["hazards"] == [hazard]
    assert finding.figure["other_parameter"] == "dimmer"
    assert finding.figure["slots"] == [{"universe": 1, "address": 2}]
    assert "people clear" in finding.help


def test_slots_that_no_cue_moves_and_neighbors_that_only_touch_are_no_finding():
    """Control on control lies still; a unit that begins after the other's end shares nothing."""
    still = fixture("Still", {"parameter": "reserved", "slots": [1]}, RESET | {"slots": [2]})
    assert not run(("Mover", 1), ("Still", 2), fixtures=[fixture("Mover", *MOVER), still])
    assert not run(("Mover", 1), ("Mover", 5), fixtures=[fixture("Mover", *MOVER)])


def test_twins_do_the_same_by_intent():
    """One fixture, mode and address."""
    assert not run(("Mover", 1), ("Mover", 1), fixtures=[fixture("Mover", *MOVER)])


def test_a_harmless_control_slot_is_no_hazard():
    """Without a range that can hurt."""
    tame = fixture("Tame", {"parameter": "control", "slots": [1]})
    par = fixture("Par", {"parameter": "dimmer", "slots": [1, 2]})
    assert not run(("Tame", 1), ("Par", 1), fixtures=[tame, par])
