"""A plan does what it claims: each figure again through the engine, common practice, ties, conflicts."""

from __future__ import annotations

from dataclasses import replace

import pytest

from modebook.documents.responding import smoothing_of
from modebook.response.judge import judge
from modebook.rig.examples import rig_of
from modebook.shots.judging import Judge
from modebook.shots.patched import patched_units
from modebook.shots.plan import Plan, Taken
from modebook.shots.planning import in_order, plan, setup_named
from modebook.shots.reading import shots_from_text

CHOICES = [
    {"key": "off", "label": "Fast", "length": {"packets": 0}},
    {"key": "two", "label": "Smooth", "length": {"packets": 2}, "method": "average", "factory": True},
    {"key": "eight", "label": "Cine", "length": {"packets": 8}, "method": "average"},
]
VALUES = {"off": 1, "two": 2, "eight": 3}


def wash(
    model: str, ways: list[dict[str, object]], choices: list[dict[str, object]] | None = None
) -> dict[str, object]:
    return {
        "model": model,
        "settings": [
            {"key": "smoothing", "setting": "smoothing", "choices": choices or CHOICES, "ways": ways}
        ],
        "modes": [
            {
                "name": "16",
                "number": 1,
                "footprint": 2,
                "parameters": [{"parameter": "dimmer", "slots": [1, 2]}],
            },
            {"name": "8", "number": 2, "footprint": 1, "parameters": [{"parameter": "dimmer", "slots": [1]}]},
        ],
    }


RDM = wash("Wash", [{"by": "rdm", "pid": "0x8001", "size": 1, "values": VALUES, "kept": "stored"}])
HAND = wash("Hand", [{"by": "menu", "path": ["Setup", "Response"]}])
NONE = {
    "model": "Plain",
    "settings": [{"key": "smoothing", "setting": "smoothing", "none": True}],
    "modes": [
        {"name": "16", "number": 1, "footprint": 2, "parameters": [{"parameter": "dimmer", "slots": [1, 2]}]}
    ],
}
UNKNOWN = wash(
    "Shy",
    [{"by": "rdm", "pid": "0x8001", "size": 1, "values": {"quick": 1, "soft": 2}}],
    [{"key": "quick", "length": {"packets": 0}, "factory": True}, {"key": "soft"}],
)
RIG = {"refresh_hz": 30, "camera": {"fps": 24, "shutter_deg": 180}, "links": {"other": {"rdm": "yes"}}}
PATCH = """unit,fixture,mode,address,position,group,reach
1,Wash,16,1/1,Truss,key,lift
2,Wash,16,1/3,Truss,key,lift
3,Hand,16,1/11,Truss,hand,lift
4,Plain,16,1/21,Floor,plain,floor
5,Wash,8,1/31,Floor,coarse,floor
6,Shy,16,1/41,Floor,shy,floor
"""
TITLES = "setup,shot,cue,time,units,from,to,seconds,intent\n"


def planned(rows: str, **more: object) -> Plan:
    reading = rig_of(
        {"fixtures": [RDM, HAND, NONE, UNKNOWN], "patch": PATCH, "rig": RIG | dict(more.pop("rig", {}))}
    )
    return plan(reading, shots_from_text(TITLES + rows, reading), keep=False, **more)  # type: ignore[arg-type]


def choices(told: Plan, unit: str) -> list[str]:
    return [state[unit, "smoothing"] for state in told.states]


DAY = """one,1A,slow,0,1-2,60,20,6,smooth
two,2A,kill,0,1-2,100,0,0,snap
three,3A,chase,0,1-2,0,100,0,pixels
four,4A,face,0,1-2,40,20,3,unseen
five,5A,again,0,1-2,60,20,6,smooth
"""


def test_common_practice_of_a_day_that_is_changed_remotely():
    """Common practice, no source: off for snaps and pixels, two packets mostly, long for the unseen fade."""
    assert choices(planned(DAY), "1") == ["two", "off", "off", "eight", "two"]


def test_none_longer_where_a_snap_is_due_in_the_same_setup():
    """Common practice, no source. The unseen fade then is a conflict, and says against what."""
    told = planned("one,1A,face,0,1-2,40,20,3,unseen\none,1A,kill,10,1-2,20,0,0,snap\n")
    assert choices(told, "1")[0] in ("off", "eight"), "one cue or the other"
    (conflict,) = told.conflicts
    assert conflict.at_odds
    assert "would do for that, but then cue" in conflict.why
    assert any("a change to" in cure for cure in conflict.cures), "7 s lie between, and RDM takes 2 s a unit"


def test_what_only_a_lift_reaches_is_not_changed_for_a_mere_preference():
    """By hand a change costs 30 a unit, a setup in another choice than preferred 3."""
    rows = DAY.replace("1-2", "3").replace("face,0,3,40,20,3,unseen", "plain,0,3,40,20,9,smooth")
    told = choices(planned(rows), "3")
    assert told == ["off"] * 5, "off satisfies every cue, and is set before the day"


@pytest.mark.parametrize(
    "rows", [DAY, DAY.replace("1-2", "5"), DAY.replace("1-2", "1-6"), DAY.replace("1-2", "6")]
)
def test_every_cue_again_through_the_engine_gives_the_figures_that_the_plan_claims(rows):
    reading = rig_of({"fixtures": [RDM, HAND, NONE, UNKNOWN], "patch": PATCH, "rig": RIG})
    told = plan(reading, shots_from_text(TITLES + rows, reading), keep=False)
    patched, cases = patched_units(reading), Judge(reading)
    checked = 0
    for planned_setup in told.setups:
        for taken in planned_setup.settings:
            row = patched[taken.units[0]]
            setting = row.fixture.fixture.settings[0]
            choice = next(one for one in setting.choices if one.key == taken.choice)
            made = smoothing_of(choice)
            for verdict in taken.taken.verdicts:
                if verdict.figures is None or not made.known:
                    continue
                fade = cases.case(
                    row, patched.parameter(taken.units[0], verdict.cue.parameter), verdict.cue
                ).fade
                again = judge(replace(fade, smoothing=made.smoothing))
                assert verdict.figures.worst_stepping_jnd == pytest.approx(again.worst_stepping_jnd)
                assert verdict.figures.worst_added_s == pytest.approx(again.added_s)
                limit_jnd = {"smooth": 1.0, "unseen": 0.1}.get(verdict.cue.intent)
                if verdict.ok and limit_jnd and "as smooth as it can be" not in verdict.why:
                    assert again.worst_stepping_jnd <= limit_jnd * 1.001
                if verdict.ok and verdict.cue.intent in ("snap", "pixels"):
                    assert again.added_s <= 1 / 24 + 1e-9
                checked += 1
    assert checked >= (0 if rows.count(",6,") == 5 else 4)


def test_units_of_a_match_move_together_though_one_of_them_has_no_smoothing():
    told = planned("one,1A,go,0,1-2,0,60,0,match\none,1A,go,0,4,0,60,0,match\n")
    assert choices(told, "1") == ["off"]
    assert told.conflicts == ()
    alone = planned("one,1A,go,0,1-2,20,60,6,smooth\n")
    assert choices(alone, "1") == ["two"], "without the match two packets would be taken"


def test_a_match_that_cannot_hold_is_a_conflict_with_its_figure():
    """Two unseen cues want eight packets, and the unit beside has none: 133 ms against 20.8."""
    rows = "one,1A,go,0,1-2,0,60,0,match\none,1A,go,0,4,0,60,0,match\n"
    rows += "one,1B,face,0,1-2,40,20,3,unseen\none,1B,face two,9,1-2,20,10,3,unseen\n"
    told = planned(rows)
    assert choices(told, "1") == ["eight"], "two cues outweigh the one match"
    match = next(one for one in told.conflicts if "move together" in one.why)
    assert "133 ms apart" in match.why
    assert "20.8 ms is the most" in match.why


def test_an_unknown_length_is_planned_as_a_range_and_never_taken_for_known():
    told = planned(DAY.replace("1-2", "6"))
    assert set(choices(told, "6")) == {"quick"}
    setting: Taken = told.setups[1].settings[0]
    soft = next(one for one in setting.candidates if one.choice == "soft")
    assert soft.length_packets is None
    assert soft.verdicts[0].figures.added_s == pytest.approx((0.0, 8 / 30))


def test_a_replan_starts_from_what_the_units_are_at():
    """With a state nothing is prepared: the hand-set unit stays as it is where no cue asks otherwise."""
    rows = "one,1A,slow,0,3,60,20,9,smooth\ntwo,2A,slow,0,3,60,20,9,smooth\n"
    assert choices(planned(rows, state={("3", "smoothing"): "eight"}), "3") == ["eight", "eight"]
    assert choices(planned(rows), "3") == ["two", "two"]


def test_from_a_later_setup_only_the_rest_is_planned():
    told = planned(DAY, from_setup=3)
    assert [one.setup.name for one in told.setups] == ["four", "five"]
    assert not told.prepared


def test_another_desk_or_camera_changes_the_figures():
    """At 120 frames a second a frame is 8 ms: two packets at 30 Hz add 67 ms, and even off does not."""
    slow = planned("one,1A,kill,0,1-2,100,0,0,snap\n", rig={"camera": {"fps": 120, "shutter_deg": 180}})
    assert choices(slow, "1") == ["off"]
    quick = planned(
        "one,1A,kill,0,1-2,100,0,0,snap\none,1A,s,9,1-2,60,20,6,smooth\n",
        rig={"refresh_hz": 44, "camera": {"fps": 16}},
    )
    assert choices(quick, "1") == ["two"], "two packets at 44 Hz add 45 ms, within a frame of 62 ms"


def test_setups_are_found_by_name_first_word_or_number_and_put_in_another_order():
    reading = rig_of({"fixtures": [RDM, HAND, NONE, UNKNOWN], "patch": PATCH, "rig": RIG})
    shots = shots_from_text(TITLES + DAY.replace("one,", "7 one pier,"), reading)
    assert [setup_named(shots, told) for told in ("two", "7", "7 ONE  pier", "3", "nine")] == [1, 0, 0, 2, -1]
    setups, unknown = in_order(shots, ["four", "7", "nine"])
    assert ([one.name for one in setups], unknown) == (
        ["four", "7 one pier", "two", "three", "five"],
        ["nine"],
    )


def test_a_day_without_cues_is_an_empty_plan():
    assert planned("").setups == ()
