"""`modebook demo` and `modebook flicker`."""

from __future__ import annotations

import pytest

from support.program import Program


def test_the_demo_builds_checks_audits_answers_and_says_what_next(modebook: Program) -> None:
    """One page, in the order of the job, with the caution at its end."""
    run = modebook("demo", catalog=None)
    assert run.status == 0
    heads = [
        "1. The catalog",
        "2. modebook check",
        "3. modebook audit",
        "4. Which units",
        "Next",
        "qualified people",
    ]
    places = [run.out.index(head) for head in heads]
    assert places == sorted(places)
    assert len(run.out.splitlines()) < 75


def test_whole_periods_in_a_shutter_make_no_difference(modebook: Program) -> None:
    """Closed form: 1000 Hz at 24 fps and 172.8 degrees is 20 whole periods."""
    told = modebook("flicker", "--frequency", 1000, "--shutter", 172.8, "--json").json
    assert told["modulations"][0]["difference_in_a_take_percent"] == pytest.approx(0, abs=1e-9)


def test_a_strobe_is_even_by_packets_where_it_divides_their_rate(modebook: Program) -> None:
    """30 packets a second give 10 flashes evenly and 12 not; a 24 fps camera sees 12 evenly and 10 not."""
    told = modebook("flicker", "--strobe", 10, "--strobe", 12, "--json").json
    assert [one["even_by_packets"] for one in told["strobes"]] == [True, False]
    assert [one["even_on_camera"] for one in told["strobes"]] == [False, True]


def test_strobes_are_told_with_a_caution(modebook: Program) -> None:
    """Photosensitive people come first."""
    assert "seizures" in modebook("flicker", "--strobe", 10).out


@pytest.mark.parametrize(
    "words",
    [(), ("--frequency", 0), ("--strobe", 100), ("--frequency", 50, "--duty", 2), ("--fixture", "no/such")],
)
def test_bad_input_is_one_line_and_status_2(modebook: Program, words: tuple[object, ...]) -> None:
    """No traceback."""
    run = modebook("flicker", *words)
    assert run.status == 2
    assert run.err
    assert "Traceback" not in run.err
