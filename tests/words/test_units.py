"""Units: their conversions are those of arithmetic, and what does not convert says so."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.words.units import UNITS, UnitMismatchError, convert

PAIRS = [(a, b) for a in UNITS for b in UNITS if UNITS[a].base == UNITS[b].base or {a, b} == {"K", "mired"}]


# Closed forms: definitions of the units. 5600 K is 1e6 / 5600 mired; a foot is 0.3048 m exactly (1959).
@pytest.mark.parametrize(
    ("value", "unit", "to", "expected"),
    [
        (50, "%", "1", 0.5),
        (0.25, "1", "%", 25),
        (5600, "K", "mired", 178.57142857142857),
        (200, "mired", "K", 5000),
        (2, "kHz", "Hz", 2000),
        (120, "bpm", "Hz", 2),
        (1, "rpm", "deg/s", 6),
        (90, "deg/s", "rpm", 15),
        (250, "ms", "s", 0.25),
        (2, "min", "s", 120),
        (10, "ft", "m", 3.048),
        (1, "ft", "in", 12),
        (1, "m", "cm", 100),
        (1, "m", "mm", 1000),
        (1, "fc", "lx", 10.763910416709722),
    ],
)
def test_a_conversion_is_that_of_the_definition(value: float, unit: str, to: str, expected: float) -> None:
    """Expected values come from the units' definitions."""
    assert math.isclose(convert(value, unit, to), expected, rel_tol=1e-12)


@given(st.sampled_from(PAIRS), st.floats(1e-6, 1e9))
def test_there_and_back_is_the_same_value(pair: tuple[str, str], value: float) -> None:
    """Holds for every pair that converts, reciprocal ones included."""
    unit, to = pair
    assert math.isclose(convert(convert(value, unit, to), to, unit), value, rel_tol=1e-12)


@pytest.mark.parametrize("symbol", UNITS)
def test_a_unit_converts_to_itself_unchanged(symbol: str) -> None:
    """Zero too, also where another unit would be its reciprocal."""
    assert convert(0.0, symbol, symbol) == 0.0
    assert convert(0.1, symbol, symbol) == 0.1


@pytest.mark.parametrize(
    ("unit", "to"), [("deg", "K"), ("packets", "s"), ("rpm", "Hz"), ("m", "s"), ("lx", "cd/m2"), ("K", "%")]
)
def test_what_measures_another_thing_does_not_convert(unit: str, to: str) -> None:
    """The message names both units; packets are not seconds without a refresh rate."""
    with pytest.raises(UnitMismatchError) as caught:
        convert(1.0, unit, to)
    assert str(caught.value) == f"{unit} does not convert to {to}: no fixed factor relates the two"


def test_an_unknown_unit_is_named_with_the_known_ones() -> None:
    """In either place."""
    for unit, to in (("furlong", "m"), ("m", "furlong"), ("furlong", "furlong")):
        with pytest.raises(UnitMismatchError) as caught:
            convert(1.0, unit, to)
        assert str(caught.value) == f"unknown unit 'furlong'; the units are {', '.join(UNITS)}"


def test_zero_kelvin_has_no_mired() -> None:
    """Nor zero mired a kelvin."""
    for unit, to in (("K", "mired"), ("mired", "K")):
        with pytest.raises(UnitMismatchError) as caught:
            convert(0.0, unit, to)
        assert str(caught.value) == f"0 {unit} has no counterpart in {to}: the two are reciprocal"


def test_no_row_of_the_table_hides_another_and_bases_are_their_own_base() -> None:
    """A factor is relative to a unit whose own factor is one."""
    for symbol, unit in UNITS.items():
        assert unit.symbol == symbol
        assert unit.quantities
        base = UNITS[unit.base]
        assert base.base == base.symbol
        assert base.factor == 1.0
        assert set(unit.quantities) <= set(base.quantities)
