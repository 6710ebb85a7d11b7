"""`modebook repatch`: audit, repatch, audit clean; the new file differs in the planned cells alone."""

from __future__ import annotations

import csv
import io
import shutil
from pathlib import Path

import pytest

from support.program import CATALOG, Program

JETTY = CATALOG / "rigs" / "ossilby-jetty"


@pytest.fixture
def replanned(tmp_path: Path, modebook: Program) -> tuple[Path, dict[str, object]]:
    """The jetty's new patch beside its rig.json, and the plan."""
    shutil.copy(JETTY / "rig.json", tmp_path / "rig.json")
    run = modebook("repatch", JETTY, "-o", tmp_path / "patch.csv", "--json")
    assert run.status == 0
    return tmp_path, run.json


def test_the_new_patch_audits_clean(replanned: tuple[Path, dict[str, object]], modebook: Program) -> None:
    """The jetty has faults before and none after."""
    assert modebook("audit", JETTY).status == 1
    run = modebook("audit", replanned[0], "--json")
    assert (run.status, run.json["findings"]) == (0, [])


def test_only_planned_cells_differ(replanned: tuple[Path, dict[str, object]]) -> None:
    """Row by row: the cells that changed are the mode and address of units in the plan, and all of those."""
    folder, plan = replanned
    before = list(csv.DictReader(io.StringIO((JETTY / "patch.csv").read_text(encoding="utf-8"))))
    after = list(csv.DictReader(io.StringIO((folder / "patch.csv").read_text(encoding="utf-8"))))
    changed = {
        (old["Unit"], column)
        for old, new in zip(before, after, strict=True)
        for column in old
        if old[column] != new[column]
    }
    planned: set[tuple[str, str]] = set()
    for change in plan["changes"]:  # type: ignore[attr-defined]
        if change["mode_from"] != change["mode_to"]:
            planned.add((change["unit"], "Mode"))
        if change["address_from"] != change["address_to"]:
            planned.add((change["unit"], "DMX"))
    assert changed == planned
    assert changed


def test_json_has_the_documented_keys(replanned: tuple[Path, dict[str, object]]) -> None:
    """Addresses are objects; every pass is proved on so small a rig."""
    plan = replanned[1]
    assert set(plan) >= {"changes", "unmet", "proved", "gap", "universes_before", "universes_after"}
    assert (plan["proved"], plan["gap"], plan["unmet"]) == (True, 0, [])
    for change in plan["changes"]:  # type: ignore[attr-defined]
        assert set(change) >= {"unit", "mode_from", "mode_to", "address_from", "address_to"}
        assert set(change["address_to"]) == {"universe", "address"}


def test_a_file_is_not_overwritten_unless_told(tmp_path: Path, modebook: Program) -> None:
    """The file stays as it was; --overwrite replaces it."""
    mine = tmp_path / "mine.csv"
    mine.write_text("keep", encoding="utf-8")
    run = modebook("repatch", JETTY, "-o", mine)
    assert run.status == 2
    assert mine.read_text(encoding="utf-8") == "keep"
    assert modebook("repatch", JETTY, "-o", mine, "--overwrite").status == 0
    assert mine.read_text(encoding="utf-8").startswith("Unit,")


def test_what_no_mode_can_meet_is_told_with_its_reason(modebook: Program) -> None:
    """Universe 3 of the pier passes no RDM, and those fixtures have no slot for it."""
    run = modebook("repatch", "ossilby-pier")
    assert run.status == 0
    assert "which the\n  link of universe 3 does not pass" in run.out
