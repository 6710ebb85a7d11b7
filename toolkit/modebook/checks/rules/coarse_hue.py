"""coarse-hue: hue moves in steps that show."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._coarse import (
    Step,
    is_position,
    place_of,
    remedy,
    subject,
    too_coarse,
    whole_is_fine,
)
from modebook.checks.rules._every_mode import in_every_mode
from modebook.checks.rules._text import number, wanted
from modebook.checks.survey import Survey
from modebook.documents.bits import bits
from modebook.documents.policy import Threshold

WHOLE_CIRCLE_DEG = 360.0
"""What a hue covers by its nature, where no span in degrees is recorded."""


def faults_in_mode(
    reading: FixtureReading, mode: ModeReading, throw_m: float | None = None
) -> Sequence[Fault]:
    """The hues of a mode whose step is too coarse; the throw makes no difference."""
    survey = mode.survey
    if "hue" not in survey.words and "hue" not in survey.pieced:
        return ()
    limit = reading.limits["hue-step"]
    if _is_sound(survey, limit.value):
        return ()
    indexes, stretches = survey.words.get("hue"), mode.continuous.get("hue")
    found: list[Fault] = []
    spanned: set[int] = set()
    for one in stretches or ():
        stretch = one.stretch
        if stretch.span.unit != "deg":
            continue
        spanned.add(id(one.parameter))
        size = bits(one.parameter)
        coarse = too_coarse(stretch.span.width, stretch.span.raw, size, stretch.steps, limit.value)
        if coarse is not None and is_position(one):
            name = subject(one.parameter, "hue", stretch.range_index)
            figure = _figure(size, coarse, limit, stretch.span.width, stretch.steps)
            found.append(_fault(reading, mode, place_of(one), name, figure, coarse, limit))
    for index in indexes or ():
        parameter = mode.written[index]
        size = bits(parameter)
        if not size or id(parameter) in spanned:
            continue
        coarse = too_coarse(WHOLE_CIRCLE_DEG, False, size, 2**size - 1, limit.value)
        if coarse is not None:
            figure = _figure(size, coarse, limit, WHOLE_CIRCLE_DEG, 2**size - 1) | {"span_assumed": True}
            found.append(_fault(reading, mode, mode.at(index)[1], parameter.name, figure, coarse, limit))
    return found


def _is_sound(survey: Survey, limit_deg: float) -> bool:
    """Whether the survey alone shows that no hue is too coarse; False where a closer look is due."""
    spans = survey.whole.get("hue", ())
    if "hue" in survey.pieced or len(spans) != len(survey.words["hue"]):
        return False
    return all(span[2] == "deg" and whole_is_fine(span, limit_deg) for span in spans)


def _figure(size: int, coarse: Step, limit: Threshold, span_deg: float, steps: int) -> dict[str, object]:
    return {
        "parameter": "hue",
        "bits": size,
        "bits_needed": coarse.bits_needed,
        "step_deg": coarse.step,
        "limit_deg": limit.value,
        "span_deg": span_deg,
        "steps": steps,
    }


def _fault(
    reading: FixtureReading,
    mode: ModeReading,
    pointer: str,
    name: str,
    figure: dict[str, object],
    coarse: Step,
    limit: Threshold,
) -> Fault:
    over = ", over an assumed 360 degrees" if "span_assumed" in figure else ""
    said = (
        f"{name} moves in steps of {number(coarse.step)} degrees in {figure['bits']} bits{over}; "
        f"{wanted(limit.value, 'degree')}"
    )
    return Fault(
        pointer, said, figure, remedy(reading, mode, ("hue",), coarse.bits_needed, limit), limit.severity
    )


def _example(slots: list[int]) -> dict[str, object]:
    span = {"from": 0, "to": 360, "unit": "deg"}
    return {"modes": [{"parameters": [{"parameter": "hue", "slots": slots, "span": span}]}]}


RULE: Rule[FixtureReading] = Rule(
    name="coarse-hue",
    severity="error",
    summary="Hue moves in steps that show.",
    checks=(
        "Every span in degrees of a hue, on the whole parameter or on a range: one step is the span over the "
        "number of steps that its values make. A hue without a span in degrees is taken to cover the whole "
        "circle of 360 degrees, and the figure says that this is assumed."
    ),
    why=(
        "A circle of 360 degrees holds more hues than 8 bits have values: some can never be asked for, and a "
        "slow change of color jumps between neighbors."
    ),
    bad=Example("360 degrees in 255 steps of 1.41 degrees.", _example([1])),
    good=Example("360 degrees in 65535 steps.", _example([1, 2])),
    references=("common practice, no source",),
    check=in_every_mode(faults_in_mode, about=["hue"]),
)
