"""Addresses as written: what can be read in one way is read, what can be read in two is refused."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.documents.address import Address
from modebook.rig.notation import Misread, Written, read_addresses

UNIVERSES = st.integers(1, 63_999)
SLOTS = st.integers(1, 512)
UNSURE = (
    "2.1",
    "2.10",
    "2.01",
    "2,101",
    "2 101",
    "12-24",
    "2/10/26",
    "Feb-01",
    "1. Feb",
    "A/101",
    "B12",
    "",
    "513",
    "x",
    "1.5.2",
)


def one(address: str, universe: str = "", **kinds: str):
    return read_addresses([Written(universe, address, **kinds)])[0]


@settings(deadline=None)
@given(
    UNIVERSES,
    SLOTS,
    st.sampled_from(["{u}/{a}", "{u}:{a}", "U{u} {a}", "u{u}/{a}", "Universe {u} / {a}", "{u}.{a:03}"]),
)
def test_both_in_one_is_read(universe, slot, form):
    """Every universe and address, in every writing that has one reading."""
    assert one(form.format(u=universe, a=slot)) == Address(universe, slot)


@settings(deadline=None)
@given(UNIVERSES, SLOTS, st.sampled_from(["{}", "U{}", "Univ {}", "universe #{}", "{}.0"]))
def test_a_universe_of_its_own_is_read(universe, slot, form):
    """The universe in one column, the address in another."""
    assert one(str(slot), form.format(universe)) == Address(universe, slot)


@settings(deadline=None)
@given(UNIVERSES, SLOTS)
def test_a_count_over_all_universes_is_read_where_no_universe_is_named(universe, slot):
    """By hand: 512 for each universe before it."""
    assert one(str((universe - 1) * 512 + slot)) == Address(universe, slot)


@settings(deadline=None)
@given(UNIVERSES, SLOTS)
def test_a_sheets_number_is_read_only_with_three_digits_after_the_point(universe, slot):
    """Typed as 2.101 it is a number of the sheet, and a sheet drops the zeros at its end."""
    shown = str(float(f"{universe}.{slot:03}"))
    read = one(shown, address_kind="number")
    if slot % 10:
        assert read == Address(universe, slot)
    else:
        assert isinstance(read, Misread)


@pytest.mark.parametrize(
    ("address", "why"),
    [
        ("2.1", "2.1 may have been 2/1 or 2/10 or 2/100, since a sheet drops zeros: write it as one of them"),
        ("2.10", "2.10 may have been 2/10 or 2/100, since a sheet drops zeros: write it as one of them"),
        ("2,101", "2,101 may be universe 2, address 101, or a decimal comma: write it as 2/101"),
        ("2 101", "2 101 may be universe 2, address 101, or 2101: write it as 2/101"),
        (
            "2-101",
            "2-101 may be universe 2, address 101, or addresses 2 to 101: "
            "write it as 2/101, or the first address alone",
        ),
        ("A/101", "a universe by letter, 'A/101': write its number, such as 2/101"),
        ("0", "address 0 counted on over all universes is not within 1 to 32767488"),
        ("1e9", "address 1000000000 counted on over all universes is not within 1 to 32767488"),
        ("64000/1", "universe 64000 is not within 1 to 63999"),
        ("2/513", "address 513 is not within 1 to 512"),
        ("2/0", "address 0 is not within 1 to 512"),
        ("0/1", "universe 0 is not within 1 to 63999"),
        ("99999999999999999999/1", "universe 1000000000000 is not within 1 to 63999"),
        ("-5", "address -5 counted on over all universes is not within 1 to 32767488"),
        ("12.5.", "'12.5.' is not a number: write one such as 12 or 12.5"),
        ("front", "'front' is not a number: write one such as 12 or 12.5"),
    ],
)
def test_what_is_unsure_or_impossible_is_refused_with_the_reason(address, why):
    """Alone in its file, without a universe beside it."""
    assert one(address) == Misread("address", address, why)


@pytest.mark.parametrize("date", ["2/10/26", "Feb-01", "1. Feb 2026", "2026-10-02", "02.10.2026"])
def test_a_date_is_told_as_a_date(date):
    """What a spreadsheet made of 2/10, as text or as a date of the sheet."""
    for kind in ("text", "date"):
        read = one(date, address_kind=kind)
        assert isinstance(read, Misread)
        assert read.why.startswith(f"a date, {date}: a spreadsheet makes 2/10 a date")


@pytest.mark.parametrize(
    ("universe", "address", "column", "why"),
    [
        ("2", "0", "address", "address 0 is not within 1 to 512"),
        (
            "2",
            "513",
            "address",
            "address 513 beside universe 2 is not within 1 to 512: write the address within its universe",
        ),
        ("64000", "1", "universe", "universe 64000 is not within 1 to 63999"),
        ("0", "1", "universe", "universe 0 is not within 1 to 63999"),
        ("B", "1", "universe", "a universe by letter, 'B': write its number, 1 to 63999"),
        ("1.5", "1", "universe", "'1.5' is not a whole number; write it as 2/101"),
        ("2", "3/1", "address", "3/1 names universe 3, beside universe 2: which is right?"),
        ("2", "", "address", "a universe, 2, without an address: write one, or neither"),
        ("2", "x", "address", "'x' is not a number: write one such as 12 or 12.5"),
        (
            "2",
            "1-16",
            "address",
            "1-16 may be universe 1, address 16, or addresses 1 to 16: "
            "write it as 1/16, or the first address alone",
        ),
    ],
)
def test_beside_a_universe_the_address_stays_within_it(universe, address, column, why):
    """An address of 513 beside a universe is refused, not carried over."""
    read = one(address, universe)
    assert read == Misread(column, universe if column == "universe" else address, why)


def test_what_both_columns_agree_on_is_read():
    """The universe stands beside, and again in the address."""
    assert one("2/101", "2") == Address(2, 101)


@pytest.mark.parametrize("nothing", ["", "-", "\u2013", "n/a", "none"])
def test_a_unit_without_an_address_is_not_patched(nothing):
    """Spares are listed without one."""
    assert one(nothing) is None
    assert one(nothing, nothing) is None


def test_a_bare_number_among_named_universes_is_refused():
    """In a file of 2/101, a 7 may be a slip; 613 can be read in one way only."""
    read = read_addresses([Written("", "2/101"), Written("", "7"), Written("", "613")])
    assert read[0] == Address(2, 101)
    assert isinstance(read[1], Misread)
    assert read[2] == Address(2, 101)


def test_a_number_without_universe_among_rows_that_have_one_is_refused():
    """A cell was left empty."""
    read = read_addresses([Written("2", "1"), Written("", "7"), Written("", "613")])
    assert read[0] == Address(2, 1)
    assert all(isinstance(row, Misread) for row in read[1:])


def test_dashes_are_universe_and_address_once_one_of_them_cannot_be_a_stretch():
    """From 7 to 1 no addresses run, so the file writes universe-address."""
    assert read_addresses([Written("", "7-1"), Written("", "7-101")]) == [Address(7, 1), Address(7, 101)]
    assert all(
        isinstance(row, Misread) for row in read_addresses([Written("", "1-16"), Written("", "17-32")])
    )


@settings(deadline=None)
@given(st.lists(st.tuples(st.text(max_size=8), st.text(max_size=12)), max_size=6))
def test_any_text_gives_an_address_or_a_reason(rows):
    """Nothing that is typed raises."""
    read = read_addresses([Written(universe, address) for universe, address in rows])
    assert len(read) == len(rows)
    assert all(row is None or isinstance(row, Address) or row.why for row in read)


@settings(deadline=None)
@given(st.sampled_from(UNSURE), st.lists(st.tuples(UNIVERSES, SLOTS), max_size=4))
def test_an_unsure_cell_never_changes_how_the_sure_ones_are_read(unsure, sure):
    """Pairs written with a slash are read the same whatever else stands in the file."""
    rows = [Written("", unsure), *(Written("", f"{u}/{a}") for u, a in sure)]
    assert read_addresses(rows)[1:] == [Address(u, a) for u, a in sure]
