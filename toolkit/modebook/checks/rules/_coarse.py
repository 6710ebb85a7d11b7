"""What the coarse rules share: a step within its limit or not, its bits, and the sentences about them."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

from modebook.checks.reading import Continuous, FixtureReading, ModeReading
from modebook.checks.rules._better import better_mode
from modebook.checks.rules._text import mode_told, number, plural
from modebook.checks.survey import WholeSpan
from modebook.documents.modes import Parameter
from modebook.documents.policy import Threshold
from modebook.response.resolution import bits_for, bits_needed, displacement_m, span_step

MOVES_BY_ITSELF = frozenset({"rotate", "bounce", "random", "runs", "stop", "nothing"})
"""What a range does whose span is no position that a desk sets."""


@dataclass(frozen=True, slots=True)
class Step:
    """A step that is too coarse, and the bits that would do; None where no whole number of slots would."""

    step: float
    bits_needed: int | None


def share_of(bits: int, steps: int) -> float:
    """The share of a parameter's values that lead over `steps` steps: what resolution.py calls share."""
    return (steps + 1) / float(1 << bits)


@lru_cache(maxsize=4096)
def too_coarse(width: float, raw: bool, bits: int, steps: int, limit: float) -> Step | None:
    """The step of a span over so many steps of its values, where it is wider than `limit`; else None.

    A raw span steps by one unit whatever its bits: for it `bits_needed` tells what a span over the byte
    range would take. A stretch of a single value has no step.
    """
    if steps < 1 or limit <= 0:
        return None
    share = share_of(bits, steps)
    step = 1.0 if raw else span_step(width, bits, share)
    if step <= limit * (1 + 1e-9):
        return None
    return Step(step, bits_needed(width, limit, 1.0 if raw else share))


def bits_that_do(step_at: Callable[[int], float], size: int, limit: float) -> int | None:
    """The bits, from `size` up, at which `step_at(bits)` is within the limit; None where none are.

    Fewer than a parameter has are not tried: its share of them may not even hold two values.
    """
    return bits_for(lambda bits: math.inf if bits < size else step_at(bits), limit)


@lru_cache(maxsize=4096)
def whole_is_fine(span: WholeSpan, limit: float) -> bool:
    """Whether a span over all values of a parameter steps within a limit in its own unit."""
    from_, to, _, raw, slots = span
    return not slots or too_coarse(abs(to - from_), raw, 8 * slots, 256**slots - 1, limit) is None


def is_position(continuous: Continuous) -> bool:
    """Whether a stretch is a place that a desk sets, and no movement that the fixture makes by itself."""
    index = continuous.stretch.range_index
    return index is None or continuous.parameter.ranges[index].does not in MOVES_BY_ITSELF


def place_of(continuous: Continuous) -> str:
    """The pointer of a stretch: the parameter's, or its range's."""
    index = continuous.stretch.range_index
    return continuous.pointer if index is None else f"{continuous.pointer}/ranges/{index}"


def subject(parameter: Parameter, word: str, range_index: int | None = None) -> str:
    """What a message calls it: the parameter's name, with the range that carries the span."""
    if range_index is None:
        return parameter.name
    piece = parameter.ranges[range_index]
    name = word if word != parameter.parameter else parameter.name
    return (
        f"{name} ({piece.from_}-{piece.to} of {parameter.name})"
        if name != parameter.name
        else (f"{name} ({piece.from_}-{piece.to})")
    )


def limit_told(limit: Threshold) -> str:
    """The limit with its source, as help ends with it."""
    source = limit.source.removesuffix(".")
    return f"the limit is {number(limit.value)} {limit.unit} ({source})"


def remedy(
    reading: FixtureReading, mode: ModeReading, words: tuple[str, ...], needed: int | None, limit: Threshold
) -> str:
    """What would be right: the mode of the same fixture that does better, or the bits to look for."""
    better = better_mode(reading, mode, words, needed)
    if better is not None:
        found, bits = better
        said = f"mode {mode_told(found)} has {bits} bits, in {plural(found.footprint, 'slot')}"
    elif needed is None:
        said = "no number of slots brings its step within the limit: move it in steps that a cut hides"
    else:
        said = f"{needed} bits would do, and no mode of this fixture has them"
    return f"{said}; {limit_told(limit)}"


def moved(reading: FixtureReading, step_deg: float, throw_m: float | None) -> tuple[dict[str, object], str]:
    """How far the spot moves at most in one step: for the figure, and for the message.

    At the unit's throw, or where none is known at the policy's, which is then called assumed.
    """
    at_m = reading.limits["assumed-throw"].value if throw_m is None else throw_m
    distance_m = displacement_m(step_deg, at_m)
    figure: dict[str, object] = {"displacement_m": distance_m, "throw_m": at_m}
    said = f"at most {distance_m:.2f} m at {number(at_m)} m"
    if throw_m is None:
        figure["throw_assumed"] = True
        said += ", an assumed throw"
    return figure, said
