"""Numbers as typed: what has one reading is read, what has two is refused."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.shelf.numbers import number, whole_number


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("8", 8.0),
        ("8.5", 8.5),
        ("8,5", 8.5),
        (" 12 ", 12.0),
        (",5", 0.5),
        ("1 250", 1250.0),
        ("1\u00a0250,5", 1250.5),
        ("1.250,5", 1250.5),
        ("1,250.5", 1250.5),
        ("0,125", 0.125),
        ("-3", -3.0),
        ("\u22123", -3.0),
        ("1e9", 1e9),
        ("2.101", 2.101),
    ],
)
def test_a_number_with_one_reading_is_read(text, value):
    """Decimal point or comma, grouped thousands, exponents."""
    assert number(text) == value


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("1,250", "'1,250' may be 1.250 or 1250: write it without the comma"),
        ("12A", "'12A' is not a number: write one such as 12 or 12.5"),
        ("", "'' is not a number: write one such as 12 or 12.5"),
        ("nan", "'nan' is not a number: write one such as 12 or 12.5"),
        ("inf", "'inf' is not a number: write one such as 12 or 12.5"),
        ("٣", "'٣' is not a number: write one such as 12 or 12.5"),
        ("1 25", "'1 25' is not a number: write one such as 12 or 12.5"),
        ("1.2.3", "'1.2.3' is not a number: write one such as 12 or 12.5"),
        ("1e999", "'1e999' is too large a number"),
    ],
)
def test_anything_else_is_refused_with_the_reason(text, message):
    """Text, two readings, and what no number is."""
    with pytest.raises(ValueError) as told:
        number(text)
    assert str(told.value) == message


@settings(deadline=None)
@given(st.decimals(-100_000, 100_000, places=4))
def test_a_decimal_comma_reads_as_the_point_does(value):
    """Python's own decimal writing is the other side; four places are never in doubt."""
    text = f"{value:f}"
    assert number(text) == float(value)
    assert number(text.replace(".", ",")) == float(value)


def test_a_fraction_is_no_whole_number():
    """Universes and addresses have no fractions."""
    assert whole_number("12.0") == 12
    with pytest.raises(ValueError, match=r"^'12\.5' is not a whole number$"):
        whole_number("12.5")
