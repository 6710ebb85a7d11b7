"""Cells at the end of a universe, against cells placed slot by slot."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.rig.audit import audit, patch_findings
from modebook.rig.examples import rig_of


def bar(count: int, first: int, stride: int, size: int, footprint: int = 0, continues: bool = True):
    cell = [{"parameter": "red", "slots": [slot], "key": f"r-{slot}"} for slot in range(1, size + 1)]
    mode = {
        "name": "Pixels",
        "continues": continues,
        "parameters": [],
        "cells": [{"count": count, "first": first, "stride": stride, "parameters": cell}],
    }
    return {"model": "Bar", "modes": [mode | ({"footprint": footprint} if footprint else {})]}


def run(fixture, address: str):
    patch = f"unit,fixture,mode,address\n1,Bar,Pixels,{address}\n"
    return list(patch_findings(rig_of({"fixtures": [fixture], "patch": patch}), ["cells-split"]))


def halves(count: int, first: int, stride: int, size: int, address: int) -> list[list[int]]:
    """The cells that have slots in more than one universe, by brute force."""
    cut = []
    for cell in range(count):
        slots = [address + first - 1 + cell * stride + slot for slot in range(size)]
        if len({(slot - 1) // 512 for slot in slots}) > 1:
            cut.append([cell + 1])
    return cut


@given(st.integers(40, 300), st.integers(1, 9), st.integers(1, 6), st.integers(0, 3), st.integers(1, 512))
def test_the_cells_that_are_cut_are_those_placed_on_both_sides(count, first, size, gap, address):
    """Any block without interleaving, from any address; a whole block is for information at most."""
    stride = size + gap
    found = run(bar(count, first, stride, size), f"7/{address}")
    wanted = halves(count, first, stride, size, address)
    assert [f.figure["cells_split"] for f in found if f.severity == "warning"] == ([wanted] if wanted else [])
    for finding in found:
        whole = finding.figure.get("whole_from")
        if whole is not None:
            assert not halves(count, first, stride, size, whole["address"])
            assert whole["universe"] == 7
    apart = {(address + first - 2 + c * stride) // 512 for c in range(count)}
    assert bool(found) == (bool(wanted) or len(apart) > 1)


def test_the_figures_of_a_cut_cell():
    """Cells of 3 from 1/1: 170 fit in 510 slots, two slots of the 171st in the first universe."""
    (finding,) = run(bar(200, 1, 3, 3), "1/1")
    assert (finding.severity, finding.unit) == ("warning", "1")
    assert finding.figure["cells_split"] == [[171]]
    assert finding.figure["slots_before"] == 512
    assert "slots 511 to 513" in finding.message
    assert "of which 2 come in universe 1" in finding.message
    # From 1/3 on 510 slots, which are 170 cells, lie in the first universe.
    assert finding.figure["whole_from"] == {"universe": 1, "address": 3}
    assert finding.figure["cost_slots"] == 0


def test_cells_whole_in_two_universes_are_for_information():
    """From 1/3 the 170th cell ends on slot 512."""
    (finding,) = run(bar(200, 1, 3, 3), "1/3")
    assert finding.severity == "info"
    assert "cell 170 is the last in universe 1" in finding.message


@pytest.mark.parametrize("continues", [True, False])
def test_only_modes_that_continue_are_judged(continues):
    """Else its end is past the universe, which is another rule's."""
    found = audit(
        rig_of(
            {
                "fixtures": [bar(200, 1, 3, 3, continues=continues)],
                "patch": "unit,fixture,mode,address\n1,Bar,Pixels,1/1\n",
            }
        )
    ).findings
    assert ("cells-split" in {f.rule for f in found}) == continues
    assert ("past-universe-end" in {f.rule for f in found}) == (not continues)


def test_nested_cells_are_told_by_their_path():
    """Ten heads of 60 pixels of 1 slot: the cut at 512 parts no pixel."""
    inner = {
        "count": 20,
        "first": 1,
        "stride": 3,
        "parameters": [
            {"parameter": "red", "slots": [1]},
            {"parameter": "green", "slots": [2]},
            {"parameter": "blue", "slots": [3]},
        ],
    }
    mode = {
        "name": "Pixels",
        "continues": True,
        "parameters": [],
        "cells": [{"count": 10, "first": 1, "stride": 60, "parameters": [], "cells": [inner]}],
    }
    # 512 = 8 * 60 + 32: within the ninth head 10 pixels and 2 of the three slots of the eleventh.
    (finding,) = run({"model": "Bar", "modes": [mode]}, "1/1")
    assert finding.figure["cells_split"] == [[9, 11]]
    assert "cuts cell 9.11" in finding.message
