"""`modebook rigs`: what is too coarse, what has no record, and who uses a fixture."""

from __future__ import annotations

import pytest

from support.program import Program


def test_units_too_coarse_and_without_a_record_are_counted_and_named(modebook: Program) -> None:
    """The planted ones: three units of the jetty, nine of the pier, and a Strimbel 16 that nobody makes."""
    jetty, kitchen, pier = modebook("rigs", "--json").json["rigs"]
    assert [one["unit"] for one in jetty["which"]["resolution_unmet"]] == ["605", "606", "614"]
    assert (kitchen["resolution_unmet"], kitchen["without_record"]) == (0, 0)
    assert (pier["resolution_unmet"], pier["without_record"]) == (9, 1)
    units = [one["unit"] for one in pier["which"]["resolution_unmet"]]
    assert units == ["113", "114", "206", "214", "222", "334", "338", "409", "534"]
    assert pier["which"]["without_record"][0]["fixture"] == "Strimbel 16"
    out = modebook("rigs").out
    assert "coarse-dimmer: 334, 338" in out
    assert "no record of Strimbel 16: 408" in out


@pytest.mark.parametrize("told", ["pelluwick/torvane-40", "Torvane 40", "PELLUWICK TORVANE 40"])
def test_who_uses_a_fixture(modebook: Program, told: str) -> None:
    """Four on the jetty, one in the kitchen, seven on the pier, in modes and one misspelled mode."""
    answer = modebook("rigs", "--using", told, "--json").json
    assert answer["using"] == "pelluwick/torvane-40"
    assert {rig["rig"]: [(m["mode"], m["units"]) for m in rig["using"]] for rig in answer["rigs"]} == {
        "ossilby-jetty": [("Standard", ["611", "612", "613"]), ("Basic", ["614"])],
        "ossilby-kitchen": [("Extended", ["9"])],
        "ossilby-pier": [
            ("Standard", ["201", "202", "203", "204", "205"]),
            ("Basic", ["206"]),
            ("Extnded", ["207"]),
        ],
    }
    assert "Extnded (no such mode)" in modebook("rigs", "--using", told).out


def test_only_rigs_that_use_it_are_listed(modebook: Program) -> None:
    """A follow spot hangs on the pier alone; a laser nowhere."""
    assert [r["rig"] for r in modebook("rigs", "--using", "gawple 12", "--json").json["rigs"]] == [
        "ossilby-pier"
    ]
    run = modebook("rigs", "--using", "yaffelby/skritchel-l")
    assert (run.status, run.out) == (0, "No rig uses yaffelby/skritchel-l.\n")


def test_a_fixture_that_there_is_not_is_told_with_the_nearest(modebook: Program) -> None:
    """Status 2."""
    run = modebook("rigs", "--using", "torvane 41")
    assert run.status == 2
    assert "torvane-40" in run.err
