"""Over all rigs: who is too coarse, who has no record, who uses a fixture."""

from __future__ import annotations

from modebook.rig.across import demands, using
from modebook.rig.examples import rig_of

PAR = {
    "model": "Par",
    "modes": [
        {"name": "Coarse", "number": 1, "parameters": [{"parameter": "dimmer", "slots": [1]}]},
        {"name": "Fine", "number": 2, "parameters": [{"parameter": "dimmer", "slots": [1, 2]}]},
    ],
}
PATCH = """unit,fixture,mode,address
1,Par,Coarse,1/1
2,Par,Fine,1/11
3,Par,Coarse,1/21
4,Bar,Coarse,1/31
5,Par,Nothing,1/41
"""


def test_units_with_coarse_findings_of_error_or_warning_are_unmet():
    """8 bits of dimmer are a warning; where the rig calls it information, it is not unmet."""
    found = demands(rig_of({"fixtures": [PAR], "patch": PATCH}))
    assert [(one.row.unit.number, one.to_json()["rules"]) for one in found.unmet] == [
        ("1", ["coarse-dimmer"]),
        ("3", ["coarse-dimmer"]),
    ]
    policy = {"dimmer-step": {"severity": "info"}}
    assert not demands(rig_of({"fixtures": [PAR], "patch": PATCH, "rig": {"policy": policy}})).unmet


def test_a_fixture_that_the_catalog_lacks_is_told_by_the_patchs_word():
    """Bar has no record."""
    found = demands(rig_of({"fixtures": [PAR], "patch": PATCH}))
    assert found.to_json() == {"resolution_unmet": 2, "without_record": 1}
    assert found.which_json()["without_record"] == [{"unit": "4", "row": 5, "fixture": "Bar"}]


def test_who_uses_a_fixture_is_told_by_mode():
    """A mode that there is not is told as one; another fixture is used by nobody."""
    reading = rig_of({"fixtures": [PAR], "patch": PATCH})
    assert [one.to_json() for one in using(reading, "invented-maker/par")] == [
        {"mode": "Coarse", "number": 1, "known": True, "units": ["1", "3"]},
        {"mode": "Fine", "number": 2, "known": True, "units": ["2"]},
        {"mode": "Nothing", "number": None, "known": False, "units": ["5"]},
    ]
    assert using(reading, "invented-maker/bar") == []
