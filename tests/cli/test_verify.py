"""`modebook verify`: the demo's list as found against its plan, and what cannot be read."""

from __future__ import annotations

from pathlib import Path

import openpyxl
import pytest

from support.program import CATALOG, Program

PIER = CATALOG / "rigs" / "ossilby-pier"
AS_FOUND = PIER / "as-found.csv"

PLANTED = {
    ("wrong-mode", "104", "error"),
    ("wrong-address", "203", "error"),
    ("wrong-choice", "201", "error"),
    ("wrong-choice", "513", "warning"),
    ("wrong-fixture", "128", "error"),
    ("unit-missing", "305", "error"),
    ("unit-extra", "", "warning"),
    ("wrong-address", "405", "error"),
    ("match-doubtful", "405", "warning"),
    ("other-firmware", "103", "warning"),
    *(("other-firmware", unit, "info") for unit in ("101", "104", "201", "206")),
}
"""The differences that the rig's README.md tells."""


def test_the_demos_differences_are_the_planted_ones(modebook: Program) -> None:
    """All of them and nothing else; the README names each rule and unit."""
    run = modebook("verify", "ossilby-pier", AS_FOUND, "--json")
    assert run.status == 1
    told = run.json
    assert {(one["rule"], one["unit"], one["severity"]) for one in told["findings"]} == PLANTED
    assert len(told["findings"]) == len(PLANTED)
    text = (PIER / "README.md").read_text(encoding="utf-8")
    for rule, unit, _ in PLANTED:
        assert f"`{rule}`" in text
        assert unit in text


def test_json_has_the_keys_that_scripts_rely_on(modebook: Program) -> None:
    """matched, and findings with rule, unit, planned and found; addresses as universe and address."""
    told = modebook("verify", "ossilby-pier", AS_FOUND, "--json").json
    # 96 units are planned (by hand: 98 rows, one of them a second part, 1 row of titles), and 305 is missing.
    assert (told["units"], told["matched"]) == (96, 95)
    assert told["doubtful"] == 1
    by_unit = {(one["rule"], one["unit"]): one for one in told["findings"]}
    assert all({"rule", "unit", "planned", "found"} <= set(one) for one in told["findings"])
    address = by_unit["wrong-address", "203"]
    assert address["planned"] == {"universe": 2, "address": 89}
    assert address["found"] == {"universe": 2, "address": 98}
    assert (address["position"], address["reach"], address["by_rdm"], address["rdm_reaches"]) == (
        "Truss 5",
        "lift",
        True,
        "yes",
    )
    mode = by_unit["wrong-mode", "104"]
    assert (mode["planned"], mode["found"]) == ("XY 16", "CCT 8")
    choice = by_unit["wrong-choice", "201"]
    assert (choice["planned"], choice["found"]) == ("short", "long")
    extra = by_unit["unit-extra", ""]
    assert extra["planned"] is None
    assert extra["found"]["address"] == {"universe": 3, "address": 300}


def test_text_ends_in_what_to_do_by_position(modebook: Program) -> None:
    """Sorted by position, a caution after it."""
    out = modebook("verify", "ossilby-pier", AS_FOUND).out
    assert "95 of 96 units found" in out
    tasks = out[out.index("By position") :]
    positions = ["Boathouse int", "Cyc pit", "Lift B", "Pier deck", "Truss 5", "Truss 8", "Under pier"]
    places = [tasks.index(position) for position in positions]
    assert places == sorted(places)
    assert "set mode XY 16 (3)" in tasks
    assert tasks.index("read its label") < tasks.index("set address 4/269")
    assert "Work at height" in tasks


def test_positions_are_sorted_with_their_numbers() -> None:
    """Truss 2 before Truss 10."""
    from modebook.render.verify_text import natural

    assert sorted(["Truss 10", "truss 2", "Pier", "Truss 2 DS"], key=natural) == [
        "Pier",
        "truss 2",
        "Truss 2 DS",
        "Truss 10",
    ]


def test_a_list_as_planned_ends_in_nothing_to_do(modebook: Program, tmp_path: Path) -> None:
    """The patch itself is such a list: status 0."""
    run = modebook("verify", "ossilby-kitchen", CATALOG / "rigs" / "ossilby-kitchen" / "patch.csv")
    assert run.status == 0, run.out
    assert "Everything that the list tells is as planned." in run.out


def test_a_workbook_is_read_by_its_sheet(modebook: Program, tmp_path: Path) -> None:
    """A date where an address was is named with row and column, and nothing is guessed."""
    import datetime

    book = openpyxl.Workbook()
    book.active.append(["Unit", "Address"])
    day = book.create_sheet("Day 2")
    day.append(["Unit", "Start address"])
    day.append([1, datetime.date(2026, 1, 10)])
    path = tmp_path / "found.xlsx"
    book.save(path)
    run = modebook("verify", "ossilby-kitchen", path, "--sheet", "Day 2", "--json")
    assert run.status == 1
    (bad,) = [one for one in run.json["findings"] if one["rule"] == "bad-row"]
    assert (bad["row"], bad["column"], bad["found"]) == (2, "Start address", "2026-01-10")


@pytest.mark.parametrize(
    ("content", "part"),
    [
        ("", "is empty"),
        ("Lens,Gel\n1,2\n", "no row of titles was found"),
        ("Curve,Firmware\nlinear,2.0\n", "none tells which unit a row is about"),
    ],
)
def test_a_list_that_cannot_be_used_is_one_clear_line(
    modebook: Program, tmp_path: Path, content: str, part: str
) -> None:
    """Status 2, the file named, nothing on standard output."""
    path = tmp_path / "found.csv"
    path.write_text(content, encoding="utf-8")
    run = modebook("verify", "ossilby-kitchen", path)
    assert (run.status, run.out) == (2, "")
    assert part in run.err
    assert str(path) in run.err
    assert len(run.err.splitlines()) == 1


def test_a_file_that_is_not_there_and_a_rig_that_is_not_are_told(modebook: Program, tmp_path: Path) -> None:
    """Status 2 and one line each."""
    for words in (("ossilby-kitchen", tmp_path / "none.csv"), ("no-such-rig", AS_FOUND)):
        run = modebook("verify", *words)
        assert run.status == 2
        assert len(run.err.splitlines()) == 1
