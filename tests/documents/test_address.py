"""Address arithmetic both ways, within ANSI E1.11 (512 slots) and ANSI E1.31 (universes 1 to 63999)."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.documents.address import LAST_UNIVERSE, SLOTS_PER_UNIVERSE, Address, AddressError

UNIVERSES = st.integers(1, 63_999)
SLOTS = st.integers(1, 512)


def test_the_limits_are_those_of_the_standards():
    """ANSI E1.11: 512 data slots; ANSI E1.31: universes 1 to 63999."""
    assert (SLOTS_PER_UNIVERSE, LAST_UNIVERSE) == (512, 63_999)


def test_every_universe_has_its_512_addresses_in_a_row():
    """Counting on by hand over every universe's first and last address."""
    count = 0
    for universe in range(1, 64_000):
        assert Address(universe, 1).absolute == count + 1
        assert Address.from_absolute(count + 1) == Address(universe, 1)
        count += 512
        assert Address(universe, 512).absolute == count
        assert Address.from_absolute(count) == Address(universe, 512)


@settings(deadline=None)
@given(UNIVERSES, SLOTS)
def test_there_and_back(universe, slot):
    """An address is the one that its absolute count leads to."""
    address = Address(universe, slot)
    assert Address.from_absolute(address.absolute) == address


@settings(deadline=None)
@given(st.integers(1, 63_999 * 512))
def test_back_and_there(absolute):
    """A count is the one that its address leads to, and neighbors stay neighbors."""
    assert Address.from_absolute(absolute).absolute == absolute


@settings(deadline=None)
@given(UNIVERSES, SLOTS, UNIVERSES, SLOTS)
def test_addresses_are_ordered_as_they_are_counted(one, first, two, second):
    """By universe, then by slot."""
    left, right = Address(one, first), Address(two, second)
    assert (left < right) == (left.absolute < right.absolute)


@pytest.mark.parametrize(
    ("absolute", "universe", "slot"), [(1, 1, 1), (512, 1, 512), (513, 2, 1), (613, 2, 101), (1024, 2, 512)]
)
def test_known_counts(absolute, universe, slot):
    """Common practice, no source: 613 is universe 2, address 101."""
    assert Address.from_absolute(absolute) == Address(universe, slot)
    assert str(Address(universe, slot)) == f"{universe}/{slot}"


@settings(deadline=None)
@given(UNIVERSES.filter(lambda u: u < 63_999), SLOTS, st.integers(1, 512))
def test_a_modes_slots_follow_each_other_into_the_next_universe(universe, start, number):
    """Slot n of a mode lies n - 1 further on, counted by hand across the boundary."""
    at = Address(universe, start).slot(number)
    by_hand = (
        (universe, start + number - 1) if start + number - 1 <= 512 else (universe + 1, start + number - 513)
    )
    assert (at.universe, at.address) == by_hand


@pytest.mark.parametrize(
    ("universe", "slot", "message"),
    [
        (0, 1, "universe 0 is not within 1 to 63999"),
        (64_000, 1, "universe 64000 is not within 1 to 63999"),
        (1, 0, "address 0 is not within 1 to 512"),
        (1, 513, "address 513 is not within 1 to 512"),
        (-1, 1, "universe -1 is not within 1 to 63999"),
    ],
)
def test_what_lies_outside_is_refused(universe, slot, message):
    """Both limits, both ends."""
    with pytest.raises(AddressError) as told:
        Address(universe, slot)
    assert str(told.value) == message


@pytest.mark.parametrize("absolute", [0, -1, 63_999 * 512 + 1, 10**9])
def test_counts_outside_are_refused(absolute):
    """Below 1 and beyond the last universe."""
    with pytest.raises(AddressError):
        Address.from_absolute(absolute)
