"""Groups that run apart: by what each unit is set to, in ms and packets, with the unknown and the cure."""

from __future__ import annotations

import math

import pytest

from modebook.rig.audit import patch_findings
from modebook.rig.examples import rig_of

MENU = {"by": "menu", "path": ["Setup"]}
OFF = {"key": "off", "length": {"packets": 0}}
LONG = {"key": "long", "length": {"packets": 8}, "method": "average"}


def smoothing(*choices, factory: str | None = "", ways=(MENU,), **more):
    told = [dict(choice) | ({"factory": True} if choice["key"] == factory else {}) for choice in choices]
    return {"key": "smoothing", "setting": "smoothing", "choices": told, "ways": list(ways), **more}


def fixture(model: str, *settings, parameters=None, **more):
    held = parameters or [{"parameter": "dimmer", "slots": [1, 2]}]
    return {"model": model, "settings": list(settings), "modes": [{"name": "M", "parameters": held}], **more}


NONE = {"key": "smoothing", "setting": "smoothing", "none": True}
FIXTURES = [
    fixture("Free", NONE),
    fixture("Slow", smoothing(OFF, LONG, factory="long")),
    fixture("Fixed", smoothing(LONG, factory="long", ways=())),
    fixture("Blank"),
    fixture("Either", smoothing(OFF, LONG)),
    fixture("Mute", smoothing(OFF, {"key": "soft", "factory": True})),
]


def run(*models: str, group="key", position="", fixtures=FIXTURES, **rig):
    rows = [f"{n},{model},M,{n}/1,{group},{position or f'P{n}'}" for n, model in enumerate(models, 1)]
    patch = "unit,fixture,mode,address,group,position\n" + "\n".join(rows) + "\n"
    return list(
        patch_findings(rig_of({"fixtures": fixtures, "patch": patch, "rig": rig}), ["smoothing-mixed"])
    )


def test_eight_packets_beside_none_are_four_packets_late():
    """Half of 8 packets at 30 a second, 133 ms: more than a frame of an assumed 24 a second."""
    (finding,) = run("Free", "Free", "Slow")
    assert (finding.severity, finding.unit, finding.row) == ("warning", "3", 4)
    figure = finding.figure
    assert figure["difference_ms"] == pytest.approx(1000 * 4 / 30)
    assert figure["difference_packets"] == pytest.approx(4)
    assert figure["frame_ms"] == pytest.approx(1000 / 24)
    assert figure["frame_assumed"] is True
    assert figure["family"] == "intensity"
    assert [one["units"] for one in figure["delays"]] == [["1", "2"], ["3"]]
    assert figure["cost_slots"] == 0
    assert figure["changes"] == [
        {"units": ["3"], "setting": "smoothing", "choice": "off", "by": "menu", "delay_ms": 0.0}
    ]
    assert "133 ms, 4.0 packets" in finding.message


def test_the_rigs_own_camera_decides():
    """At 5 frames a second a frame is 200 ms: 133 ms are within one."""
    assert not run("Free", "Slow", camera={"fps": 5})
    (finding,) = run("Free", "Slow", camera={"fps": 8})
    assert finding.figure["frame_ms"] == 125
    assert "frame_assumed" not in finding.figure


def test_packets_count_at_the_rate_of_the_units_own_universe():
    """Unit 2 hears 44 packets a second of its gateway: 4 of them are 91 ms."""
    (finding,) = run("Free", "Slow", links={"2": {"gateway_hz": 44}})
    assert finding.figure["difference_ms"] == pytest.approx(1000 * 4 / 44)
    assert finding.figure["difference_packets"] == pytest.approx(4)


def test_a_unit_that_is_known_to_be_set_otherwise_counts_as_set():
    """rig.json's settings go before the factory's choice, both ways."""
    assert not run("Free", "Slow", units={"2": {"settings": {"smoothing": "off"}}})
    (finding,) = run("Slow", "Slow", units={"1": {"settings": {"smoothing": "off"}}})
    assert finding.unit == "2"


def test_a_slot_at_its_printed_default_goes_before_the_factory():
    """The mode gives off as long as the desk sends the default."""
    control = {
        "parameter": "control",
        "slots": [3],
        "default": 0,
        "ranges": [
            {"from": 0, "to": 99, "meaning": "Off", "sets": {"smoothing": "off"}, "kept": "while sent"},
            {"from": 100, "to": 255, "meaning": "Long", "sets": {"smoothing": "long"}, "kept": "while sent"},
        ],
    }
    with_slot = fixture(
        "Slotted",
        smoothing(OFF, LONG, factory="long"),
        parameters=[{"parameter": "dimmer", "slots": [1, 2]}, control],
    )
    assert not run("Free", "Slotted", fixtures=[*FIXTURES, with_slot])
    (finding,) = run("Slow", "Slotted", fixtures=[*FIXTURES, with_slot])
    assert finding.unit == "1"


@pytest.mark.parametrize("model", ["Blank", "Either", "Mute"])
def test_an_unknown_length_is_told_and_never_taken_for_a_figure(model):
    """Nothing recorded; no factory choice; a factory choice without a length."""
    (finding,) = run("Free", "Free", model)
    assert (finding.severity, finding.unit) == ("info", "3")
    assert finding.figure["unknown_units"] == ["3"]
    assert finding.figure["difference_ms"] == 0
    (finding,) = run("Free", "Slow", model)
    assert (finding.severity, finding.unit) == ("warning", "2")
    assert finding.figure["unknown_units"] == ["3"]
    assert "of 3 the length is unknown" in finding.message


def test_where_nothing_is_known_there_is_nothing_to_compare():
    """smoothing-unknown tells that already."""
    assert not run("Blank", "Mute")


def test_a_position_is_told_unless_its_group_has_been():
    """Two groups at one position run apart: the position tells. In one group, the group does, once."""
    patch = "unit,fixture,mode,address,group,position\n1,Free,M,1/1,a,Truss\n2,Slow,M,1/3,b,Truss\n"
    (finding,) = patch_findings(rig_of({"fixtures": FIXTURES, "patch": patch}), ["smoothing-mixed"])
    assert (finding.figure["by"], finding.figure["position"]) == ("position", "Truss")
    (finding,) = run("Free", "Slow", position="Truss")
    assert finding.figure["by"] == "group"


def test_only_families_that_both_have_are_compared():
    """A smoothing of movement alone does not lag a fixture that does not move, and says nothing of light."""
    moving = [{"parameter": "pan", "slots": [1, 2]}, {"parameter": "tilt", "slots": [3, 4]}]
    slow = fixture("Head", smoothing(OFF, LONG, factory="long", acts_on=["movement"]), parameters=moving)
    quick = fixture("Mover", NONE, parameters=moving)
    assert not run("Free", "Head", fixtures=[*FIXTURES, slow, quick])
    (finding,) = run("Mover", "Head", fixtures=[*FIXTURES, slow, quick])
    assert finding.figure["family"] == "movement"


def test_where_no_choice_helps_cues_must_lead():
    """Built-in smoothing that nothing changes: the help tells by how much."""
    (finding,) = run("Free", "Fixed")
    assert "changes" not in finding.figure
    assert "let cues of 2 lead by 133 ms" in finding.help


def test_the_fewest_units_are_set_otherwise():
    """Two that can only be slow: the one that can be either follows them, and not they it."""
    (finding,) = run("Fixed", "Fixed", "Slow", units={"3": {"settings": {"smoothing": "off"}}})
    assert finding.figure["changes"] == [
        {"units": ["3"], "setting": "smoothing", "choice": "long", "by": "menu", "delay_ms": 1000 * 4 / 30}
    ]


def test_the_worse_of_rising_and_falling_light_is_told():
    """A lamp that takes 0.3 s to go out: its time constant times ln 2, 208 ms."""
    lamp = {"key": "lamp", "method": "lag", "factory": True}
    lamp["length"] = {"rise": {"seconds": 0.0}, "fall": {"seconds": 0.3}, "measures": "time constant"}
    (finding,) = run("Free", "Lamp", fixtures=[*FIXTURES, fixture("Lamp", smoothing(lamp))])
    assert finding.figure["direction"] == "falling"
    assert finding.figure["difference_ms"] == pytest.approx(300 * math.log(2))


def test_rdm_is_a_cure_only_where_it_passes():
    """Over RDM in a universe that passes it; else none is left."""
    rdm = {"by": "rdm", "pid": "0x8001", "size": 1, "values": {"off": 0, "long": 1}}
    only = fixture("Only", smoothing(OFF, LONG, factory="long", ways=(rdm,)))
    (finding,) = run("Free", "Only", fixtures=[*FIXTURES, only], links={"other": {"rdm": "yes"}})
    assert finding.figure["changes"][0]["by"] == "rdm"
    (finding,) = run("Free", "Only", fixtures=[*FIXTURES, only])
    assert "changes" not in finding.figure


def test_of_several_cures_the_one_that_touches_the_fewest_units_is_told():
    """Two are slow and one is set to off: the one follows, though both others could be off as well."""
    (finding,) = run("Slow", "Slow", "Slow", units={"3": {"settings": {"smoothing": "off"}}})
    assert [(one["units"], one["choice"]) for one in finding.figure["changes"]] == [(["3"], "long")]
