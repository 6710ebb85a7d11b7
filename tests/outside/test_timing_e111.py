"""Packet timing against the figures of ANSI E1.11 (DMX512-A), which are typed in here from memory."""

from __future__ import annotations

import pytest

from modebook.response import timing

# ANSI E1.11, timing: from memory, and consistent with each other.
FULL_PACKET_US = 22_676.0
BREAK_TO_BREAK_MIN_US = 1204.0


def test_a_full_packet_takes_22676_us_and_goes_44_times_a_second() -> None:
    """92 + 12 + 513 x 44 us, about 44.1 packets a second (ANSI E1.11)."""
    assert timing.packet_s(512) * 1e6 == pytest.approx(FULL_PACKET_US, rel=1e-12)
    assert timing.max_refresh_hz(512) == pytest.approx(44.1, abs=0.001)


@pytest.mark.parametrize("slots", [0, 1, 23, 24])
def test_no_packet_is_shorter_than_1204_us(slots: int) -> None:
    """24 data slots fill the 1204 us from break to break exactly, fewer are padded (ANSI E1.11)."""
    assert timing.packet_s(slots) * 1e6 == pytest.approx(BREAK_TO_BREAK_MIN_US, rel=1e-12)


def test_the_25th_slot_is_the_first_to_lengthen_the_packet() -> None:
    """One more slot is 11 bits at 250 kbit/s (ANSI E1.11)."""
    assert timing.packet_s(25) * 1e6 == pytest.approx(BREAK_TO_BREAK_MIN_US + 11 * 1e6 / 250_000, rel=1e-12)


def test_a_longer_break_and_mark_count_in_full() -> None:
    """A break of 176 us and a mark of 16 us add 84 and 4 us to the least full packet (arithmetic)."""
    assert timing.packet_s(512, 176, 16) * 1e6 == pytest.approx(FULL_PACKET_US + 84 + 4, rel=1e-12)


def test_30_hz_is_68_percent_of_44_hz() -> None:
    """Common practice, no source: 30 Hz is 68 % of what the line gives."""
    assert 30 / timing.max_refresh_hz(512) == pytest.approx(0.68, abs=0.005)
