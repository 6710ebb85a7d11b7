"""`modebook plan`: its answers in every form, its options, and what it refuses."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest

from support.program import Program

PATCH = """Unit,Fixture,Mode,Addr,Position,Group,Reach
1,Glawm 200,CCT 16,1/1,Lift A,key,lift
2,Glawm 200,CCT 16,1/11,Lift B,key,lift
3,Torvane 40,Standard,1/101,Truss 4,movers,lift
4,Skelvane 300,Normal,1/201,Truss 7,beam,ladder
5,Brumlet 7,Short,1/301,Carousel,top,floor
"""
SHOTS = """Day,Setup,Shot,Cue,Units,Parameter,From,To,Seconds,Intent
1,A sneak,1,dusk,1-2,,60,20,40,unseen
,,,beam,4,,0,100,0,snap
,B kill,2,all off,"1-2, 3",,100,0,0,snap
2,C dawn,3,comes up,1-2,,0,50,30,unseen
,,,top,5,,0,60,4,smooth
"""
RIG = {"name": "Small day", "refresh_hz": 40, "camera": {"fps": 24}, "links": {"1": {"rdm": True}}}


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """A rig of five units in a folder of its own, and three setups over two days."""
    (tmp_path / "patch.csv").write_text(PATCH)
    (tmp_path / "shots.csv").write_text(SHOTS)
    (tmp_path / "rig.json").write_text(json.dumps(RIG))
    return tmp_path


def test_json_has_the_keys_that_scripts_rely_on(modebook: Program, job: Path) -> None:
    """Setups with settings and changes, conflicts, prep, seconds by way."""
    told = modebook("plan", job, "--json").json
    assert {"setups", "conflicts", "prep", "total_seconds_by_way"} <= told.keys()
    assert [one["setup"] for one in told["setups"]] == ["A sneak", "B kill", "C dawn"]
    setting = {
        "units",
        "setting",
        "choice",
        "length_packets",
        "worst_stepping_jnd",
        "snap_added_ms",
        "why",
    }
    change = {
        *("units", "setting", "from", "to", "by", "bytes", "hold_s", "then", "pid", "data", "path"),
        *("position", "seconds", "warnings"),
    }
    for one in told["setups"]:
        assert {"setup", "shots", "settings", "changes"} <= one.keys()
        assert all(setting <= each.keys() for each in one["settings"])
        assert all(change <= each.keys() for each in one["changes"])
        for each in one["changes"]:
            assert all(byte.keys() == {"universe", "address", "value"} for byte in each["bytes"])
    assert all({"setup", "units", "why", "cures"} <= one.keys() for one in told["conflicts"])
    assert told["total_seconds_by_way"].keys() == {"slot", "rdm", "hand"}
    assert told["disagreements"] == []


def test_a_kill_is_off_and_a_fade_beside_a_face_is_long(modebook: Program, job: Path) -> None:
    """Common practice, no source: off for the snap, the long choice only for what is marked unseen."""
    told = modebook("plan", job, "--json").json
    key = [
        next(s["choice"] for s in one["settings"] if s["units"] == ["1", "2"] and s["setting"] == "smoothing")
        for one in told["setups"]
    ]
    assert key == ["eight", "off", "eight"]


def test_the_change_list_says_what_is_sent(modebook: Program, job: Path) -> None:
    """From the record: control slot 9 of CCT 16, Off 10-14, held 3 s, default 0; units at 1/1 and 1/11."""
    told = modebook("plan", job, "--json").json
    change = next(
        one
        for one in told["setups"][1]["changes"]
        if one["units"] == ["1", "2"] and one["setting"] == "smoothing"
    )
    assert change["bytes"] == [
        {"universe": 1, "address": 9, "value": 12},
        {"universe": 1, "address": 19, "value": 12},
    ]
    assert (change["by"], change["hold_s"], change["to"]) == ("slot", 3, "off")
    assert [byte["value"] for byte in change["then_bytes"]] == [0, 0]


def test_text_fits_into_80_columns_and_names_the_safety(modebook: Program, job: Path, monkeypatch) -> None:
    """Every setup, the change list, the prep, the cautions; no line is wider than the terminal."""
    monkeypatch.setenv("COLUMNS", "80")
    run = modebook("plan", job)
    assert max(len(line) for line in run.out.splitlines()) <= 80
    for words in ("A sneak", "B kill", "C dawn", "Before it goes out to the set", "Change before it"):
        assert words in run.out
    flat = " ".join(run.out.split())
    assert "Nobody on a ladder relies on that light" in flat
    assert "Local safety rules and qualified persons come first" in flat


def test_csv_has_a_line_a_byte(modebook: Program, job: Path) -> None:
    """The bytes of the JSON's changes, one a row, and all rows as wide as the titles."""
    told = modebook("plan", job, "--json").json
    rows = list(csv.reader(io.StringIO(modebook("plan", job, "--csv").out)))
    assert {len(row) for row in rows} == {len(rows[0])}
    at = {title: place for place, title in enumerate(rows[0])}
    sent = [
        (row[at["Universe"]], row[at["Address"]], row[at["Value"]])
        for row in rows[1:]
        if row[at["Task"]] == "set" and row[at["Universe"]]
    ]
    assert sent == [
        (str(byte["universe"]), str(byte["address"]), str(byte["value"]))
        for one in told["setups"]
        for change in one["changes"]
        for byte in change["bytes"]
    ]


def test_the_page_and_its_csv_are_written_once(modebook: Program, job: Path) -> None:
    """A file that is there is left alone until --overwrite; the page needs no other host."""
    page = job / "plan.html"
    assert modebook("plan", job, "--html", page).err.count("written") == 1
    assert page.with_suffix(".csv").exists()
    text = page.read_text(encoding="utf-8")
    assert "http://" not in text
    assert "https://" not in text
    for words in ("Small day", "B kill", "Change before it", "qualified persons come first"):
        assert words in text
    again = modebook("plan", job, "--html", page)
    assert (again.status, again.out) == (2, "")
    assert "--overwrite" in again.err
    assert modebook("plan", job, "--html", page, "--overwrite").status != 2


def test_from_a_setup_only_the_rest_is_told(modebook: Program, job: Path) -> None:
    """By name or by place; the units are where the plan left them, so nothing is prepared again."""
    whole = modebook("plan", job, "--json").json
    for name in ("B kill", "b", "2"):
        told = modebook("plan", job, "--from-setup", name, "--json").json
        assert [one["setup"] for one in told["setups"]] == ["B kill", "C dawn"]
        assert told["setups"] == whole["setups"][1:]


def test_a_state_is_where_the_changes_start(modebook: Program, job: Path) -> None:
    """Unit 1 is off already, unit 2 at eight: only 2 is changed for the kill."""
    now = job / "now.csv"
    now.write_text("units,setting,choice\n1,smoothing,off\n2,smoothing,8 packets\n")
    told = modebook("plan", job, "--from-setup", "B kill", "--state", now, "--json").json
    changed = [
        (one["units"], one["from"], one["to"])
        for one in told["setups"][0]["changes"]
        if one["setting"] == "smoothing" and set(one["units"]) & {"1", "2"}
    ]
    assert changed == [(["2"], "eight", "off")]
    assert told["prep"] == []


def test_another_order(modebook: Program, job: Path) -> None:
    """Named setups first, the others as they stand; a file with one a line does the same."""
    told = modebook("plan", job, "--order", "C dawn, A sneak", "--json").json
    assert [one["setup"] for one in told["setups"]] == ["C dawn", "A sneak", "B kill"]
    order = job / "order.txt"
    order.write_text("# tomorrow\nC dawn\nA sneak\n")
    assert modebook("plan", job, "--order", order, "--json").json["setups"] == told["setups"]


def test_a_power_cut_sends_the_slots_choice_again(modebook: Program, job: Path) -> None:
    """The record keeps smoothing set by slot until power off, and the torvane's stored."""
    told = modebook("plan", job, "--power-cut", "B kill", "--json").json
    again = {(tuple(one["units"]), one["setting"]) for one in told["again"]}
    assert (("1", "2"), "smoothing") in again
    assert not any("3" in units for units, _ in again)
    text = modebook("plan", job, "--power-cut", "B kill").out
    assert "after a power cut in setup B kill" in text


def test_a_power_cut_has_a_page_too(modebook: Program, job: Path) -> None:
    """What is to be sent again, with boxes."""
    page = job / "cut.html"
    modebook("plan", job, "--power-cut", "B kill", "--html", page)
    assert "After a power cut in setup B kill" in page.read_text(encoding="utf-8")


def test_explain_tells_every_candidate_cue_by_cue(modebook: Program, job: Path) -> None:
    """All three choices, with the kill's lateness under each; the plan's own figures are among them."""
    (told,) = [
        one
        for one in modebook("plan", job, "--explain", "B kill", "1", "--json").json["settings"]
        if one["setting"] == "smoothing"
    ]
    assert [one["choice"] for one in told["candidates"]] == ["off", "two", "eight"]
    late = [one["cues"][0]["added_ms"][1] for one in told["candidates"]]
    assert late[0] == 0
    assert late[0] < late[1] < late[2]
    assert told["snap_added_ms"] == late[0]
    text = modebook("plan", job, "--explain", "B kill", "1").out
    assert "> Off" in text


def test_explain_draws(modebook: Program, job: Path) -> None:
    """A picture of the hardest cue, and a page with one for each cue."""
    modebook("plan", job, "--explain", "A sneak", "1", "--plot", job / "why.svg", "--html", job / "why.html")
    assert (job / "why.svg").read_bytes().lstrip().startswith(b"<?xml")
    assert (job / "why.html").read_text(encoding="utf-8").count("<svg") == 1


def test_another_camera_tells_what_changes(modebook: Program, job: Path) -> None:
    """Each change is against the rig's own plan; a desk as it is changes nothing."""
    own = modebook("plan", job, "--json").json
    told = modebook("plan", job, "--camera", "120", "--json").json
    choices = {
        (one["setup"], unit, each["setting"]): each["choice"]
        for one in own["setups"]
        for each in one["settings"]
        for unit in each["units"]
    }
    for one in told["changed"]:
        assert all(choices[one["setup"], unit, one["setting"]] == one["from"] for unit in one["units"])
    assert modebook("plan", job, "--refresh", "40", "--json").json["changed"] == []


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--from-setup", "Z"), "there is no setup 'Z'"),
        (("--order", "A sneak,Z"), "there is no setup 'Z'"),
        (("--power-cut", "Z"), "there is no setup 'Z'"),
        (("--explain", "B kill", "99"), "there is no unit '99'"),
        (("--explain", "B kill", "5"), "asks nothing of a setting of unit 5"),
        (("--plot", "x.svg"), "--plot needs --explain"),
        (("--refresh", "0"), "--refresh 0"),
        (("--shots", "nowhere.csv"), "nowhere.csv"),
        (("--state", "nowhere.csv"), "nowhere.csv"),
    ],
)
def test_what_cannot_be_is_refused_in_a_line(modebook: Program, job: Path, words, said) -> None:
    """Exit status 2, nothing on standard output, what is wrong on standard error."""
    run = modebook("plan", job, *words)
    assert (run.status, run.out) == (2, "")
    assert said in " ".join(run.err.replace("│", " ").split())


def test_a_bad_row_is_one_line_and_the_rest_is_planned(modebook: Program, job: Path) -> None:
    """File and row on standard error, exit status 1, and the other cues' setups."""
    shots = job / "shots.csv"
    shots.write_text(shots.read_text() + ",,,nobody,77,,0,10,1,smooth\n")
    run = modebook("plan", job, "--json")
    assert run.status == 1
    assert f"{shots}: row 7" in run.err
    assert len(run.json["setups"]) == 3


def test_without_a_list_of_shots_it_says_where_one_belongs(modebook: Program, job: Path) -> None:
    """The folder, and the option."""
    (job / "shots.csv").unlink()
    run = modebook("plan", job)
    assert run.status == 2
    assert "--shots" in run.err
