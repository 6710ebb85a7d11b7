"""`modebook fade`: the three questions a programmer asks, its JSON keys, its files, its bad input."""

from __future__ import annotations

import csv
import io
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from support.program import Program

KEYS = {
    "packets_sent",
    "distinct_values",
    "repeated_packets",
    "ideal_step_percent",
    "largest_step_percent",
    "longest_fade_without_repeats_s",
    "starts_s",
    "half_s",
    "settles_s",
    "added_s",
    "worst_step_jnd",
    "worst_step_stops",
    "worst_step_at_s",
    "worst_stepping_jnd",
    "seen",
    "assumptions",
}


def test_json_has_the_documented_keys(modebook: Program) -> None:
    """One case: the keys at the top; several: also under `choices`."""
    assert set(modebook("fade", "--json").json) >= KEYS
    several = modebook("fade", "--bits", 8, "--bits", 16, "--json").json
    assert set(several) >= KEYS | {"choices"}
    assert [set(choice) >= KEYS for choice in several["choices"]] == [True, True]


def test_a_second_from_full_to_a_tenth_steps_3_percent_and_6_with_a_packet_lost(modebook: Program) -> None:
    """Common practice, no source: 100 to 10 % in 1 s at 30 Hz; a lost packet doubles the step."""
    words = ("fade", "--from", 100, "--to", 10, "--seconds", 1, "--refresh", 30, "--json")
    assert modebook(*words).json["ideal_step_percent"] == pytest.approx(3.0)
    assert modebook(*words).json["largest_step_percent"] == pytest.approx(3.0, abs=0.4)
    assert modebook(*words, "--lose", "12").json["largest_step_percent"] == pytest.approx(6.0, abs=0.4)


def test_a_slow_fade_repeats_in_8_bits_and_not_in_16(modebook: Program) -> None:
    """Common practice, no source: 10 points over 10 s sends mostly repeats in 8 bits, none in 16."""
    told = modebook(
        "fade", "--from", 60, "--to", 50, "--seconds", 10, "--bits", 8, "--bits", 16, "--json"
    ).json
    eight, sixteen = told["choices"]
    assert eight["repeated_packets"] > eight["packets_sent"] / 2
    assert sixteen["repeated_packets"] == 0


def test_a_snap_says_what_smoothing_adds(modebook: Program) -> None:
    """Closed form: an average over N packets at 30 Hz is done N packet times after the packet of the snap."""
    told = modebook("fade", "--snap", "--smoothing", 0, "--smoothing", 2, "--smoothing", 5, "--json").json
    assert [choice["added_s"] for choice in told["choices"]] == pytest.approx([0, 2 / 30, 5 / 30], abs=1e-6)


def test_text_says_seen_or_not_and_what_cures(modebook: Program) -> None:
    """The answer begins with the verdict and ends with what was taken for granted."""
    told = modebook("fade", "--from", 100, "--to", 0, "--seconds", 1, "--refresh", 30).out
    assert "It will be seen to step (an estimate)" in told
    assert "- 16 bits in place of 8" in told
    assert "Taken for granted" in told


def test_a_fixture_gives_bits_and_choices(modebook: Program) -> None:
    """The factory's choice of 5 packets adds 167 ms to a snap at 30 packets a second."""
    told = modebook(
        "fade", "--fixture", "wexombre/skelvane-300", "--mode", "Precise", "--snap", "--json"
    ).json
    added = {choice["choice"]: choice["added_s"] for choice in told["choices"]}
    assert added["slowest"] == pytest.approx(5 / 30, abs=1e-6)


def test_an_unknown_length_gives_a_range_and_says_so(modebook: Program) -> None:
    """A method without a length is answered over plausible lengths."""
    told = modebook("fade", "--method", "lag", "--json").json
    assert told["added_s"]["least"] < told["added_s"]["most"]
    assert any("unknown" in sentence for sentence in told["assumptions"])
    assert "range over" in modebook("fade", "--method", "lag").out


def test_the_same_seed_loses_the_same_packets(modebook: Program) -> None:
    """--seed makes trials repeatable; another seed gives other figures."""
    words = ("fade", "--loss", 0.1, "--trials", 50, "--json")
    one, same, other = (modebook(*words, "--seed", seed).out for seed in (1, 1, 2))
    assert one == same
    assert one != other


def test_csv_has_a_row_for_each_packet(modebook: Program) -> None:
    """31 packets carry a 1 s fade at 30 Hz, and the first rows are the stairs that were sent."""
    rows = list(csv.DictReader(io.StringIO(modebook("fade", "--csv").out)))
    assert [int(row["packet"]) for row in rows] == list(range(len(rows)))
    assert (rows[0]["value"], rows[30]["value"]) == ("255", "0")


@pytest.mark.parametrize("ending", [".svg", ".png", ".pdf"])
def test_a_plot_is_written_whole_and_twice_alike(modebook: Program, tmp_path: Path, ending: str) -> None:
    """The same fade gives the same bytes, in every form."""
    made = []
    for name in ("one", "two"):
        path = tmp_path / (name + ending)
        assert (
            modebook("fade", "--camera", 24, "--smoothing", 0, "--smoothing", 2, "--plot", path).status == 0
        )
        made.append(path.read_bytes())
    assert made[0] == made[1]
    if ending == ".svg":
        assert ET.fromstring(made[0]).tag.endswith("svg")


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--refresh", 0), "rate"),
        (("--refresh", 200), "network"),
        (("--seconds", -1), "-1"),
        (("--camera", 24, "--shutter", 400), "400"),
        (("--camera", 24, "--shutter-s", 1), "frame"),
        (("--shutter", 90), "--camera"),
        (("--bits", 12), "12"),
        (("--from", 120), "120"),
        (("--lose", "a,b"), "a,b"),
        (("--lose", "3", "--loss", 0.1), "one of"),
        (("--fixture", "wexombre/skelvan-300"), "wexombre/skelvane-300"),
        (("--fixture", "wexombre/skelvane-300", "--mode", "Precize"), "Precise"),
        (("--fixture", "wexombre/skelvane-300", "--mode", "Precise", "--choice", "slo"), "slowest"),
        (("--plot", "a.gif"), ".svg"),
    ],
)
def test_bad_input_is_one_line_and_status_2(modebook: Program, words: tuple[object, ...], told: str) -> None:
    """Which value, what is wrong, what would be right."""
    run = modebook("fade", *words)
    assert run.status == 2
    assert run.out == ""
    assert told in run.err
    assert "Traceback" not in run.err


def test_a_network_stream_may_be_faster(modebook: Program) -> None:
    """--line network takes rates that no DMX512 line can carry."""
    assert modebook("fade", "--refresh", 200, "--line", "network", "--json").status == 0
