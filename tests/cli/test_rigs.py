"""`modebook rigs`: who allows smoothing to be changed remotely, counted and named."""

from __future__ import annotations

from support.program import Program


def test_json_counts_every_unit_once(modebook: Program) -> None:
    """The five answers add up to the units, and the lists hold as many."""
    told = modebook("rigs", "--smoothing-by", "remote", "--json").json
    assert [rig["rig"] for rig in told["rigs"]] == ["ossilby-jetty", "ossilby-kitchen", "ossilby-pier"]
    for rig in told["rigs"]:
        answers = ("by_slot", "by_rdm", "by_hand_only", "none", "unknown")
        assert sum(rig[answer] for answer in answers) == rig["units"]
        assert {answer: len(rig["which"][answer]) for answer in answers} == {a: rig[a] for a in answers}


def test_a_rig_that_cannot_be_read_costs_the_others_nothing(modebook: Program) -> None:
    """One line for it, status 2, and the other rig's answer stands."""
    run = modebook("rigs", "ossilby-kitchen", "no-such-rig", "--json")
    assert run.status == 2
    assert [rig["rig"] for rig in run.json["rigs"]] == ["ossilby-kitchen"]
    assert "no-such-rig" in run.err


def test_text_names_units_and_says_whether_rdm_reaches_them(modebook: Program) -> None:
    """Universe 3 of the pier passes no RDM."""
    told = modebook("rigs", "ossilby-pier").out
    assert "by a slot of the mode they are patched in" in told
    assert "RDM does not reach" in told
