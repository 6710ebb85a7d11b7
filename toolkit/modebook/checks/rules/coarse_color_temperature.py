"""coarse-color-temperature: color temperature moves in steps that are seen near whites."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from modebook.checks.finding import Fault
from modebook.checks.reading import Continuous, FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._coarse import bits_that_do, is_position, place_of, remedy, share_of, subject
from modebook.checks.rules._every_mode import in_every_mode
from modebook.checks.rules._text import number
from modebook.documents.bits import bits
from modebook.documents.policy import Threshold
from modebook.response.errors import ResponseError
from modebook.response.resolution import (
    ColorTemperatureStep,
    color_temperature_step,
    mired_step,
)

_WORD = "color-temperature"


def faults_in_mode(
    reading: FixtureReading, mode: ModeReading, throw_m: float | None = None
) -> Sequence[Fault]:
    """The color temperatures of a mode whose step is too coarse; the throw makes no difference."""
    survey = mode.survey
    if _WORD not in survey.whole and _WORD not in survey.pieced:
        return ()
    figures = reading.figures
    limit = figures["color-temperature-step"]
    whites_k = (figures["white-from"], figures["white-to"])
    if _WORD not in survey.pieced and not any(
        _judged(from_, to, unit, raw, 8 * slots, 256**slots - 1, whites_k, limit)
        for from_, to, unit, raw, slots in survey.whole[_WORD]
        if slots
    ):
        return ()
    found: list[Fault] = []
    for one in mode.continuous.get(_WORD, ()):
        span, size = one.stretch.span, bits(one.parameter)
        judged = _judged(span.from_, span.to, span.unit, span.raw, size, one.stretch.steps, whites_k, limit)
        if judged is not None and is_position(one):
            found.append(
                _fault(reading, mode, one, judged, reading.limits["color-temperature-step"], whites_k)
            )
    return found


@lru_cache(maxsize=4096)
def _judged(
    from_: float,
    to: float,
    unit: str,
    raw: bool,
    size: int,
    steps: int,
    whites_k: tuple[float, float],
    limit: float,
) -> tuple[ColorTemperatureStep, int | None] | None:
    """The step and the bits that would do, where it is beyond the limit; None where it is not."""
    of_unit = {"K": color_temperature_step, "mired": mired_step}.get(unit)
    if of_unit is None or steps < 1 or limit <= 0:
        return None
    share = share_of(size, steps)
    try:
        step = of_unit(from_, to, size, raw=raw, share=share, near_whites_k=whites_k)
        if step is None or step.step_delta_uv_prime <= limit * (1 + 1e-9):
            return None

        def distance(wanted: int) -> float:
            finer = of_unit(from_, to, wanted, share=1.0 if raw else share, near_whites_k=whites_k)
            return finer.step_delta_uv_prime if finer is not None else 0.0

        return step, bits_that_do(distance, size, limit)
    except ResponseError:
        return None  # ends that no white has: span-unit tells of them


def _fault(
    reading: FixtureReading,
    mode: ModeReading,
    one: Continuous,
    judged: tuple[ColorTemperatureStep, int | None],
    limit: Threshold,
    whites_k: tuple[float, float],
) -> Fault:
    step, needed = judged
    stretch, size = one.stretch, bits(one.parameter)
    figure: dict[str, object] = {
        "parameter": _WORD,
        "bits": size,
        "bits_needed": needed,
        "step_delta_uv_prime": step.step_delta_uv_prime,
        "limit_delta_uv_prime": limit.value,
        "near_white_multiples": step.steps,
        "step_k": step.step_k,
        "step_mired": step.step_mired,
        "at_k": step.at_k,
        "near_whites_k": list(whites_k),
        "steps": stretch.steps,
    }
    said = (
        f"{subject(one.parameter, _WORD, stretch.range_index)} moves in steps of {number(step.step_k)} K in "
        f"{size} bits: near {number(step.at_k)} K that is {number(step.step_delta_uv_prime)} of delta u'v', "
        f"{number(step.steps)} times the 0.0011 of CIE TN 001; {number(limit.value)} is wanted"
    )
    return Fault(place_of(one), said, figure, remedy(reading, mode, (_WORD,), needed, limit), limit.severity)


def _example(slots: list[int]) -> dict[str, object]:
    span = {"from": 1800, "to": 20000, "unit": "K"}
    return {"modes": [{"parameters": [{"parameter": _WORD, "slots": slots, "span": span}]}]}


RULE: Rule[FixtureReading] = Rule(
    name="coarse-color-temperature",
    severity="warning",
    summary="Color temperature moves in steps that are seen near whites.",
    checks=(
        "Every span in kelvin or mired of a color temperature, on the whole parameter or on a range, taken "
        "as linear in its unit: the largest distance in u'v' that one step makes along the black bodies, "
        "within the part of the span between the policy's whites (2700 to 6500 K), also in multiples of "
        "the 0.0011 of CIE TN 001:2014. Where kelvins are sent as numbers, a step is 1 K. Without a span "
        "in kelvin or mired nothing can be computed, and nothing is reported."
    ),
    why=(
        "Two units side by side, or one white matched to a window, are judged near whites, where the eye "
        "and the camera are most exact. With too few bits the match that is wanted lies between two values."
    ),
    bad=Example("1800 to 20000 K in one slot: steps of 71 K.", _example([1])),
    good=Example("The same span in two slots.", _example([1, 2])),
    references=("CIE TN 001:2014: a circle of 0.0011 in u'v' is one step of chromaticity difference",),
    check=in_every_mode(faults_in_mode, about=[_WORD]),
)
