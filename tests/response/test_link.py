"""The road from desk to fixture: rates, gateways, delays, and what a fixture holds when packets are lost."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.response.errors import ResponseError
from modebook.response.link import Link, receive
from modebook.response.losses import ArrivalLog, LostAtRandom, LostBurst, LostInBursts, LostNumbers


def test_packets_arrive_at_the_desks_rate_after_the_delay() -> None:
    """Packet k is sent at k / rate and arrives delay_s later."""
    got = receive(Link(40.0, delay_s=0.01), 0.1)
    assert got.times_s == pytest.approx([0.01, 0.035, 0.06, 0.085, 0.11])
    assert got.desk_index.tolist() == [0, 1, 2, 3, 4]


def test_a_faster_gateway_repeats_and_a_slower_one_leaves_out() -> None:
    """30 into 45 Hz: every second packet twice; 30 into 15 Hz: every second packet left out."""
    assert receive(Link(30.0, gateway_hz=40.0), 0.2).desk_index.tolist() == [0, 0, 1, 2, 3, 3, 4, 5, 6]
    assert receive(Link(30.0, gateway_hz=15.0), 0.2).desk_index.tolist() == [0, 2, 4, 6]


def test_a_gateways_phase_makes_values_older() -> None:
    """A tick half a packet after the desk's carries the packet of half a packet ago."""
    got = receive(Link(30.0, gateway_hz=30.0, gateway_phase=0.5), 0.1)
    assert got.times_s[0] == pytest.approx(1 / 60)
    assert got.desk_index.tolist() == [0, 1, 2]


def test_a_lost_packet_leaves_the_fixture_with_the_one_before() -> None:
    """Numbers count from 0; packet 0 lost leaves the level before the cue (-1)."""
    got = receive(Link(30.0, losses=LostNumbers((0, 3, 4))), 0.2)
    assert got.desk_index.tolist() == [[-1, 1, 2, 2, 2, 5, 6]]
    assert got.heard is not None
    assert got.heard.tolist() == [[False, True, True, False, False, True, True]]
    assert got.longest_gap_s[0] == pytest.approx(3 / 30)


def test_a_repeat_is_heard_and_a_missing_packet_is_not() -> None:
    """The same value is held either way; only a missing packet makes a gap."""
    got = receive(Link(30.0, losses=LostNumbers((3, 4)), loss="repeat"), 0.2)
    assert got.desk_index.tolist() == [[0, 1, 2, 2, 2, 5, 6]]
    assert got.heard is None
    assert got.longest_gap_s[0] == pytest.approx(1 / 30)


def test_losses_on_the_line_after_a_gateway() -> None:
    """Lost numbers count the gateway's packets, and what is held is the desk packet of the last one heard."""
    got = receive(Link(30.0, gateway_hz=40.0, losses=LostNumbers((2,))), 0.1)
    assert got.desk_index.tolist() == [[0, 0, 0, 2, 3]]


def test_a_gap_of_more_than_a_second_is_flagged() -> None:
    """After 1.25 s without packets the fail mode rules: 1.2 s is not flagged, 1.3 s is."""
    for lost, flagged in ((35, False), (39, True)):
        link = Link(30.0, losses=LostNumbers(tuple(range(5, 5 + lost))))
        assert receive(link, 3.0).signal_lost is flagged


def test_a_log_of_arrivals_says_what_came_when() -> None:
    """Each arrival brings the latest packet sent before it, less the delay; the gaps are those logged."""
    got = receive(Link(10.0, delay_s=0.05, losses=ArrivalLog((0.06, 0.14, 0.36, 0.47))), 0.5)
    assert got.desk_index.tolist() == [0, 0, 3, 4]
    assert got.longest_gap_s[0] == pytest.approx(0.22)


@given(st.integers(1, 200), st.floats(0, 0.9), st.integers(0, 5))
def test_what_is_held_never_runs_ahead_or_back(packets: int, share: float, seed: int) -> None:
    """The packet held never gets older with time and never comes from the future; the last is heard."""
    link = Link(40.0, losses=LostAtRandom(share, seed))
    got = receive(link, (packets - 1) / 40.0, trials=3)
    index = got.desk_index
    assert (np.diff(index, axis=1) >= 0).all()
    assert (index <= np.arange(packets)).all()
    assert (index[:, -1] == packets - 1).all()


def test_the_seed_fixes_which_packets_are_lost() -> None:
    """The same seed loses the same packets, another seed others."""
    for losses in (LostAtRandom, lambda share, seed: LostInBursts(share, 3.0, seed)):
        one, same, other = (
            receive(Link(40.0, losses=losses(0.2, seed)), 10.0, 4).desk_index for seed in (1, 1, 2)
        )
        assert (one == same).all()
        assert (one != other).any()


def test_one_burst_at_a_different_place_in_each_trial() -> None:
    """Trial i loses `length` packets from starts[i] on."""
    got = receive(Link(40.0, losses=LostBurst(2, (0, 3))), 0.15, trials=2)
    assert got.desk_index.tolist() == [[-1, -1, 2, 3, 4, 5, 6], [0, 1, 2, 2, 2, 5, 6]]


@pytest.mark.parametrize(
    ("make", "message"),
    [
        (lambda: Link(0.0), "a rate of 0 Hz sends no packets: give a rate above 0"),
        (lambda: Link(float("nan")), "a rate of nan Hz sends no packets: give a rate above 0"),
        (lambda: Link(30.0, delay_s=-0.1), "a delay of -0.1 s cannot be: give 0 or more"),
        (lambda: Link(30.0, gateway_phase=1.0), "a gateway phase of 1 cannot be: give 0 to below 1"),
        (lambda: Link(30.0, loss="gone"), "loss 'gone' is unknown: give 'missing' or 'repeat'"),  # type: ignore[arg-type]
        (
            lambda: Link(30.0, losses=LostAtRandom(1.0)),
            "a lost share of 1 cannot be: give 0 to below 1 (0.02 is 2 %)",
        ),
        (
            lambda: Link(30.0, losses=LostNumbers((-1,))),
            "lost packets are counted from 0: a number is below 0",
        ),
        (
            lambda: Link(30.0, losses=LostInBursts(0.9, 1.0)),
            "bursts of 1 packets on average cannot lose 90%: give longer bursts or a smaller share",
        ),
        (lambda: Link(30.0, losses=ArrivalLog((0.2, 0.1))), "a log's arrival times must rise"),
        (
            lambda: receive(Link(30.0, losses=LostNumbers((99,))), 1.0),
            "packet 99 cannot be lost: the fade is over by packet 30",
        ),
        (lambda: receive(Link(30.0), 1.0, trials=0), "0 trials show nothing: give 1 or more"),
    ],
)
def test_what_cannot_be_is_refused_in_one_line(make, message: str) -> None:  # type: ignore[no-untyped-def]
    """Each bad figure says what it is and what would be right."""
    with pytest.raises(ResponseError) as refused:
        make()
    assert str(refused.value) == message


def test_a_line_takes_no_more_than_the_standard_allows_and_a_network_does() -> None:
    """45 Hz with 512 slots is refused on DMX512, taken for fewer slots and on a network."""
    with pytest.raises(ResponseError, match=r"^45 Hz is more than a DMX512 line takes"):
        Link(45.0)
    with pytest.raises(ResponseError, match=r"^60 Hz is more than a DMX512 line takes"):
        Link(60.0, gateway_hz=60.0, line="network")
    assert Link(45.0, slots=400).line_hz == 45.0
    assert Link(100.0, line="network").line_hz == 100.0
