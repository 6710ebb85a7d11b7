"""coarse-dimmer: the bottom of a fade steps visibly."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._coarse import bits_that_do, is_position, place_of, remedy, share_of, subject
from modebook.checks.rules._every_mode import in_every_mode
from modebook.checks.rules._text import number
from modebook.documents.bits import bits
from modebook.documents.policy import Threshold
from modebook.documents.responding import factory_curve
from modebook.response.curves import LINEAR, Curve
from modebook.response.errors import ResponseError
from modebook.response.resolution import (
    DimmerStep,
    dimmer_step,
    longest_fade_without_repeats_s,
)

_WORDS = ("dimmer", "intensity-master")


def faults_in_mode(
    reading: FixtureReading, mode: ModeReading, throw_m: float | None = None
) -> Sequence[Fault]:
    """The dimmers of a mode that step too coarsely at the bottom; the throw makes no difference."""
    found: list[Fault] = []
    survey = mode.survey
    curve: Curve | None = None
    known = False
    for word in _WORDS:
        indexes = survey.words.get(word, ())
        if not indexes and word not in survey.pieced:
            continue
        figures = reading.figures
        if curve is None:
            curve, known = _curve(reading)
        of_policy = (curve, figures["dimmer-white"], figures["dimmer-from"] / 100, figures["dimmer-step"])
        if word not in survey.pieced and not any(
            slots and _judged(8 * slots, 256**slots - 1, *of_policy)
            for slots in [len(mode.written[index].slots) for index in indexes]
        ):
            continue
        limit = reading.limits["dimmer-step"]
        spanned: set[int] = set()
        for one in mode.continuous.get(word, ()):
            spanned.add(id(one.parameter))
            stretch, size = one.stretch, bits(one.parameter)
            judged = _judged(size, stretch.steps, *of_policy)
            if judged is not None and is_position(one):
                name = subject(one.parameter, word, stretch.range_index)
                figure = _figure(reading, word, size, stretch.steps, judged, limit, (curve, known))
                found.append(_fault(reading, mode, place_of(one), name, figure, judged, limit))
        for index in indexes:
            parameter = mode.written[index]
            size = bits(parameter)
            if not size or id(parameter) in spanned:
                continue
            judged = _judged(size, 2**size - 1, *of_policy)
            if judged is not None:
                figure = _figure(reading, word, size, 2**size - 1, judged, limit, (curve, known))
                found.append(_fault(reading, mode, mode.at(index)[1], parameter.name, figure, judged, limit))
    return found


@lru_cache(maxsize=4096)
def _judged(
    size: int, steps: int, curve: Curve, white_cd_m2: float, from_light: float, limit_jnd: float
) -> tuple[DimmerStep, int | None] | None:
    """The step and the bits that would do, where it is beyond the limit; None where it is not."""
    if steps < 1 or limit_jnd <= 0:
        return None
    share = share_of(size, steps)
    step = dimmer_step(size, curve, white_cd_m2, from_light, share)
    if step.step_jnd <= limit_jnd * (1 + 1e-9):
        return None
    return step, bits_that_do(
        lambda wanted: dimmer_step(wanted, curve, white_cd_m2, from_light, share).step_jnd, size, limit_jnd
    )


def _curve(reading: FixtureReading) -> tuple[Curve, bool]:
    """The curve of a new fixture, and whether a source says so; linear where none does."""
    if "dimmer-curve" not in [setting.setting for setting in reading.fixture.settings]:
        return LINEAR, False
    try:
        curve, _ = factory_curve(reading.fixture)
    except ResponseError:  # a table that is no curve says nothing
        curve = None
    return (LINEAR, False) if curve is None else (curve, True)


def _figure(
    reading: FixtureReading,
    word: str,
    size: int,
    steps: int,
    judged: tuple[DimmerStep, int | None],
    limit: Threshold,
    curve: tuple[Curve, bool],
) -> dict[str, object]:
    step, needed = judged
    refresh_hz = reading.limits["assumed-refresh"].value
    figure: dict[str, object] = {
        "parameter": word,
        "bits": size,
        "bits_needed": needed,
        "step_jnd": step.step_jnd,
        "limit_jnd": limit.value,
        "step_percent": step.step_percent,
        "at_light_percent": 100 * step.at_light,
        "white_cd_m2": reading.limits["dimmer-white"].value,
        "curve": curve[0].name,
        "longest_fade_s": longest_fade_without_repeats_s(size, refresh_hz, share_of(size, steps)),
        "refresh_hz": refresh_hz,
        "steps": steps,
    }
    if not curve[1]:
        figure["curve_assumed"] = True
    return figure


def _fault(
    reading: FixtureReading,
    mode: ModeReading,
    pointer: str,
    name: str,
    figure: dict[str, object],
    judged: tuple[DimmerStep, int | None],
    limit: Threshold,
) -> Fault:
    step, needed = judged
    fade_s, refresh_hz = figure["longest_fade_s"], figure["refresh_hz"]
    curve = f"{'an assumed ' if 'curve_assumed' in figure else 'its '}{figure['curve']} curve"
    said = (
        f"{name} steps by {number(step.step_jnd)} JND at {number(100 * step.at_light)} % of full in "
        f"{figure['bits']} bits, on {curve}; {number(limit.value)} JND are wanted, and a full fade of more "
        f"than {fade_s:.1f} s repeats values at {number(float(str(refresh_hz)))} packets a second"
    )
    word = str(figure["parameter"])
    return Fault(pointer, said, figure, remedy(reading, mode, (word,), needed, limit), limit.severity)


def _example(slots: list[int]) -> dict[str, object]:
    return {"modes": [{"parameters": [{"parameter": "dimmer", "slots": slots}]}]}


RULE: Rule[FixtureReading] = Rule(
    name="coarse-dimmer",
    severity="warning",
    summary="The bottom of a fade steps visibly.",
    checks=(
        "Every dimmer and intensity master with a slot of its own, on the whole parameter or on the ranges "
        "that carry its span: the largest step from 1 % of full upward in just noticeable differences "
        "(JND) of the NEMA PS3.14 function, full light being 100 cd/m2, on the dimmer curve that a new "
        "fixture has, or on a linear one where none is recorded. The figure also tells how long a fade "
        "over full scale can last before packets repeat values: the steps over the packets a second. The "
        "function was made from still gratings: that a step in time is seen alike is an estimate."
    ),
    why=(
        "The eye takes in ratios: from 1 % a step of 8 bits is a third of the light. A slow fade to black "
        "then goes down visible stairs, unless smoothing fills them in."
    ),
    bad=Example("A dimmer in one slot.", _example([1])),
    good=Example("A dimmer in two slots.", _example([1, 2])),
    references=(
        "NEMA PS3.14, grayscale standard display function",
        "3 JND from 1 % at 100 cd/m2: common practice, no source",
        "a fade from 0 to 255 at 30 packets a second repeats no value for 8.5 s: common practice, no source",
    ),
    check=in_every_mode(faults_in_mode, about=_WORDS),
)
