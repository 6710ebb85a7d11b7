"""Dimmer curves: from the level that is sent to the light that comes out, and back.

No standard fixes a dimmer curve: ANSI E1.37-1 only numbers and labels those that a fixture has. The
formulas are common practice, no source, with level l and light y both 0 to 1 of full:

    linear           y = l
    square           y = l**2
    s                y = 3 l**2 - 2 l**3   (the least cubic that is level at both ends)
    inverse-square   y = sqrt(l)           (the inverse function of square: coarse at the bottom)
    table            straight lines between measured or printed points

A fixture's own curve may differ from its label; where it has been measured, use a table.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from .errors import ResponseError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import ArrayLike, NDArray

NAMES = ("linear", "square", "s", "inverse-square", "table")


@dataclass(frozen=True, slots=True)
class Curve:
    """A dimmer curve by name; 'table' has points of (level, light), both from 0 to 1.

    A table's levels rise strictly from 0 to 1 and its light never falls. Raises ResponseError.
    """

    name: str
    points: tuple[tuple[float, float], ...] = ()

    def __post_init__(self) -> None:
        if self.name not in NAMES:
            raise ResponseError(f"curve {self.name!r} is unknown: give {', '.join(NAMES)}")
        if (self.name == "table") != bool(self.points):
            raise ResponseError("a curve has points if, and only if, it is a table")
        if self.points:
            _check_points(self.points)

    def light_at(self, level: float) -> float:
        """Give the light (0 to 1) of one level, clipped to 0 to 1; plain floats, without numpy."""
        at = min(max(level, 0.0), 1.0)
        if self.name == "linear":
            return at
        if self.name == "square":
            return at * at
        if self.name == "s":
            return at * at * (3.0 - 2.0 * at)
        if self.name == "inverse-square":
            return math.sqrt(at)
        right = min(bisect_right(self.points, (at, math.inf)), len(self.points) - 1)
        (level_a, light_a), (level_b, light_b) = self.points[right - 1], self.points[right]
        return light_a + (light_b - light_a) * (at - level_a) / (level_b - level_a)

    def to_light(self, level: ArrayLike) -> NDArray[np.float64]:
        """Give the light (0 to 1, same shape) of levels; levels outside 0 to 1 are clipped."""
        import numpy as np

        at = np.clip(np.asarray(level, dtype=np.float64), 0.0, 1.0)
        if self.name == "linear":
            return at
        if self.name == "square":
            return np.asarray(at * at)
        if self.name == "s":
            return np.asarray(at * at * (3.0 - 2.0 * at))
        if self.name == "inverse-square":
            return np.sqrt(at)
        levels, lights = zip(*self.points, strict=True)
        return np.asarray(np.interp(at, levels, lights))

    def to_level(self, light: ArrayLike) -> NDArray[np.float64]:
        """Give the lowest level (0 to 1, same shape) that makes each light, within what the curve reaches."""
        import numpy as np

        lit = np.clip(np.asarray(light, dtype=np.float64), 0.0, 1.0)
        if self.name == "linear":
            return lit
        if self.name == "square":
            return np.sqrt(lit)
        if self.name == "s":
            # The cubic's root within 0 to 1, by the sine of a third of an angle.
            return np.asarray(0.5 - np.sin(np.arcsin(1.0 - 2.0 * lit) / 3.0))
        if self.name == "inverse-square":
            return np.asarray(lit * lit)
        # np.interp is not defined along a flat stretch, where the lowest level that makes the light is
        # wanted: the point that ends the stretch below is searched from the left.
        levels, lights = np.array(self.points, dtype=np.float64).T
        lit = np.clip(lit, lights[0], lights[-1])
        right = np.clip(np.searchsorted(lights, lit, side="left"), 1, len(lights) - 1)
        rise = lights[right] - lights[right - 1]
        share = np.divide(lit - lights[right - 1], rise, out=np.zeros_like(lit), where=rise > 0)
        return np.asarray(levels[right - 1] + (levels[right] - levels[right - 1]) * share)


LINEAR = Curve("linear")
SQUARE = Curve("square")
S = Curve("s")
INVERSE_SQUARE = Curve("inverse-square")


def table(points: Iterable[tuple[float, float]]) -> Curve:
    """Give the curve of straight lines between points of (level, light); see Curve. Raises ResponseError."""
    return Curve("table", tuple((float(level), float(light)) for level, light in points))


def _check_points(points: tuple[tuple[float, float], ...]) -> None:
    if len(points) < 2 or points[0][0] != 0.0 or points[-1][0] != 1.0:
        raise ResponseError("a curve's table must run from level 0 to level 1, in at least two points")
    for (level_a, light_a), (level_b, light_b) in pairwise(points):
        if not level_a < level_b:
            raise ResponseError(f"a curve's levels must rise: {level_b:g} follows {level_a:g}")
        if not 0.0 <= light_a <= light_b <= 1.0:
            raise ResponseError(
                f"a curve's light must stay within 0 to 1 and never fall: {light_b:g} follows {light_a:g}"
            )
