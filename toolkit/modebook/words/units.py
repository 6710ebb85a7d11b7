"""The units that a span may carry, as they are written in documents, and the trivial conversions."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

from modebook.words.quantities import Quantity

UnitSymbol = Literal[
    "%",
    "1",
    "deg",
    "K",
    "mired",
    "Hz",
    "kHz",
    "bpm",
    "rpm",
    "deg/s",
    "s",
    "ms",
    "min",
    "packets",
    "m",
    "cm",
    "mm",
    "ft",
    "in",
    "m/s",
    "lx",
    "fc",
    "cd/m2",
]

MIRED_TIMES_KELVIN = 1e6
"""A mired is a millionth of a reciprocal kelvin: mired = 1e6 / K."""


class UnitMismatchError(ValueError):
    """A conversion that does not exist, or a unit that is not in the vocabulary."""


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: one of it is `factor` of its `base`. The first of `quantities` is what it usually measures."""

    symbol: UnitSymbol
    name: str
    quantities: tuple[Quantity, ...]
    base: UnitSymbol
    factor: float


_SHARE: tuple[Quantity, ...] = ("level", "position", "saturation", "tint", "speed")

_UNITS: tuple[Unit, ...] = (
    Unit("%", "percent", _SHARE, "1", 0.01),
    # CIE coordinates, choices, shares written 0 to 1, a tint given as signed distance in CIE 1960 uv.
    Unit("1", "plain number", ("chromaticity", "selector", *_SHARE), "1", 1.0),
    Unit("deg", "degree", ("angle", "hue"), "deg", 1.0),
    Unit("K", "kelvin", ("color-temperature",), "K", 1.0),
    # Reciprocal to kelvin, so no factor relates the two: convert() treats the pair apart.
    Unit("mired", "mired", ("color-temperature",), "mired", 1.0),
    Unit("Hz", "hertz", ("rate",), "Hz", 1.0),
    Unit("kHz", "kilohertz", ("rate",), "Hz", 1000.0),
    Unit("bpm", "beats a minute", ("rate",), "Hz", 1 / 60),
    Unit("rpm", "turns a minute", ("rotation",), "deg/s", 6.0),
    Unit("deg/s", "degrees a second", ("rotation",), "deg/s", 1.0),
    Unit("s", "second", ("time",), "s", 1.0),
    Unit("ms", "millisecond", ("time",), "s", 0.001),
    Unit("min", "minute", ("time",), "s", 60.0),
    # Becomes seconds only with a refresh rate, which a fixture's document does not know.
    Unit("packets", "DMX512 packets", ("time",), "packets", 1.0),
    Unit("m", "meter", ("distance",), "m", 1.0),
    Unit("cm", "centimeter", ("distance",), "m", 0.01),
    Unit("mm", "millimeter", ("distance",), "m", 0.001),
    # Exact by the international yard and pound agreement of 1959.
    Unit("ft", "foot", ("distance",), "m", 0.3048),
    Unit("in", "inch", ("distance",), "m", 0.0254),
    Unit("m/s", "meters a second", ("velocity",), "m/s", 1.0),
    Unit("lx", "lux", ("illuminance",), "lx", 1.0),
    # One lumen a square foot, so 1 / 0.3048^2 lux.
    Unit("fc", "footcandle", ("illuminance",), "lx", 1 / 0.3048**2),
    Unit("cd/m2", "candela a square meter", ("luminance",), "cd/m2", 1.0),
)

UNITS: Mapping[str, Unit] = MappingProxyType({unit.symbol: unit for unit in _UNITS})
"""Every unit, by the symbol that documents write."""


NATURAL_UNITS: Mapping[Quantity, UnitSymbol] = MappingProxyType(
    {
        "level": "%",
        "angle": "deg",
        "position": "%",
        "distance": "m",
        "chromaticity": "1",
        "color-temperature": "K",
        "tint": "%",
        "hue": "deg",
        "saturation": "%",
        "rate": "Hz",
        "rotation": "rpm",
        "speed": "%",
        "velocity": "m/s",
        "time": "s",
        "illuminance": "lx",
        "luminance": "cd/m2",
        "selector": "1",
    }
)
"""The unit that each quantity is usually given in."""


def _known(symbol: str) -> Unit:
    try:
        return UNITS[symbol]
    except KeyError:
        raise UnitMismatchError(f"unknown unit {symbol!r}; the units are {', '.join(UNITS)}") from None


def convert(value: float, unit: str, to: str) -> float:
    """Return `value`, counted in `unit`, counted in `to`.

    Kelvin and mired are reciprocal (1e6 / value). `packets` become nothing else: that takes a refresh rate.

    Raises:
        UnitMismatchError: a unit is unknown, no fixed factor relates the two, or 0 has no reciprocal.
    """
    source, target = _known(unit), _known(to)
    if source is target:
        return value
    if {unit, to} == {"K", "mired"}:
        if value == 0:
            raise UnitMismatchError(f"0 {unit} has no counterpart in {to}: the two are reciprocal")
        return MIRED_TIMES_KELVIN / value
    if source.base != target.base:
        raise UnitMismatchError(f"{unit} does not convert to {to}: no fixed factor relates the two")
    return value * source.factor / target.factor
