"""`modebook audit`: documented keys, exit status, and every bad patch in one clear line."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from support.program import CATALOG, Program

PATCH = "unit,fixture,mode,universe,address,position,throw\n"


def test_json_has_the_documented_keys_also_when_the_status_is_1(modebook: Program) -> None:
    """The object is whole; every universe and finding has every key."""
    run = modebook("audit", "ossilby-pier", "--json")
    assert run.status == 1
    told = run.json
    assert (told["rig"], told["units"]) == ("ossilby-pier", 96)
    universe = {"universe", "slots_used", "highest_address", "max_refresh_hz"}
    assert all(set(one) == universe for one in told["universes"])
    finding = {"rule", "severity", "unit", "row", "message", "figure"}
    assert told["findings"]
    assert all(set(one) >= finding for one in told["findings"])


def test_the_demo_rig_holds_exactly_its_planted_faults(modebook: Program) -> None:
    """Rule by rule and unit by unit, as rig.json lists them."""
    found = {
        (one["rule"], one["unit"]) for one in modebook("audit", "ossilby-pier", "--json").json["findings"]
    }
    rig = json.loads((CATALOG / "rigs" / "ossilby-pier" / "rig.json").read_text(encoding="utf-8"))
    assert found == {(one["rule"], one["unit"]) for one in rig["planted"]}


def test_an_overlap_is_on_the_later_row_and_names_the_other(modebook: Program, tmp_path: Path) -> None:
    """Two 13-slot units a slot apart."""
    patch = tmp_path / "patch.csv"
    patch.write_text(
        PATCH + "1,Sheetle 44,Whole,1,1,truss,4\n2,Sheetle 44,Whole,1,13,truss,4\n", encoding="utf-8"
    )
    run = modebook("audit", patch, "--json")
    (found,) = [one for one in run.json["findings"] if one["rule"] == "address-overlap"]
    assert (found["unit"], found["row"], found["figure"]["other_unit"]) == ("2", 3, "1")
    assert run.status == 1


def test_540_degrees_in_8_bits_is_2_12_degrees_and_at_most_0_30_m_at_8_m(
    modebook: Program, tmp_path: Path
) -> None:
    """Arithmetic: 540 / 255 = 2.1176 degrees; the chord at 8 m is 0.2957 m."""
    patch = tmp_path / "patch.csv"
    patch.write_text(PATCH + "1,Skelvane 300,Normal,1,1,truss,8\n", encoding="utf-8")
    (found,) = [
        one
        for one in modebook("audit", patch, "--json").json["findings"]
        if one["rule"] == "coarse-angle" and one["figure"]["parameter"] == "pan"
    ]
    assert found["figure"]["step_deg"] == pytest.approx(540 / 255)
    assert found["figure"]["displacement_m"] == pytest.approx(0.2957, abs=5e-4)
    assert (found["figure"]["bits"], found["figure"]["bits_needed"]) == (8, 16)
    assert "2.12 degrees" in found["message"]
    assert "0.30 m at 8 m" in found["message"]


def test_text_groups_by_cause_and_full_tells_each(modebook: Program) -> None:
    """Units with one wrong mode are one paragraph; --full has a paragraph for each finding."""
    short, full = modebook("audit", "ossilby-pier").out, modebook("audit", "ossilby-pier", "--full").out
    assert len(short.splitlines()) < len(full.splitlines())
    assert short.splitlines()[-2].startswith("96 units audited:")


@pytest.mark.parametrize(
    ("content", "status", "told"),
    [
        (b"", 2, "empty"),
        (b"fixture,mode\nSheetle 44,Whole\n", 2, "address"),
        (b"\x00\x01\x02", 2, "plain text"),
        ((PATCH + "1,Sheetle 44,Whole,1,0,truss,4\n").encode(), 1, "address 0"),
        ((PATCH + "1,Sheetle 44,Whole,1,513,truss,4\n").encode(), 1, "513"),
        ((PATCH + "1,Sheetle 44,Whole,1,1e9,truss,4\n").encode(), 1, "within its universe"),
        ((PATCH + "1,Sheetle 44,Whole,64000,1,truss,4\n").encode(), 1, "64000"),
        ((PATCH + "1,Sheetle 44,Whole,B,1,truss,4\n").encode(), 1, "B"),
        ((PATCH + "1,Sheetle 44,Whole,1,one,truss,4\n").encode(), 1, "one"),
    ],
)
def test_bad_patches_are_told_and_never_a_traceback(
    modebook: Program, tmp_path: Path, content: bytes, status: int, told: str
) -> None:
    """A patch that cannot be read is status 2; a bad row is a finding, and the rest goes on."""
    patch = tmp_path / "patch.csv"
    patch.write_bytes(content)
    run = modebook("audit", patch)
    assert run.status == status
    assert told in run.out + run.err
    assert "Traceback" not in run.err
    assert patch.read_bytes() == content


def test_an_unknown_rig_is_told_with_the_nearest(modebook: Program) -> None:
    """Which rigs there are."""
    run = modebook("audit", "ossilby-peer")
    assert run.status == 2
    assert "ossilby-pier" in run.err
