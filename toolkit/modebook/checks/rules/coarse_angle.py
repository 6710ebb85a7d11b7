"""coarse-angle: pan, tilt, zoom, or the angle of a wheel or blade moves in steps that show."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import Continuous, FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._coarse import (
    Step,
    is_position,
    moved,
    place_of,
    remedy,
    subject,
    too_coarse,
    whole_is_fine,
)
from modebook.checks.rules._every_mode import in_every_mode
from modebook.checks.rules._text import number, wanted
from modebook.documents.bits import bits
from modebook.documents.modes import Parameter
from modebook.documents.policy import Threshold

_AXES = frozenset({"pan", "tilt", "roll"})
# Roll turns the beam about itself: its spot stays.
_MOVES_THE_SPOT = frozenset({"pan", "tilt"})
_INDEXES = frozenset(
    {
        "gobo-wheel",
        "rotating-gobo-wheel",
        "gobo-index",
        "gobo-index-rotation",
        "gobo-wheel-index",
        "prism",
        "prism-index",
        "effects-wheel",
        "animation-wheel",
        "animation-wheel-index",
        "color-wheel",
        "color-wheel-index",
        "beam-shaper-index",
        "blade-position",
        "blade-angle",
        "framing-rotation",
        "barn-door",
        "barn-door-rotation",
    }
)
LIMIT_OF = dict.fromkeys(_AXES, "pan-tilt-step") | {"zoom": "zoom-step"}
LIMIT_OF |= dict.fromkeys(_INDEXES, "index-step")
"""The policy's threshold for each parameter that is judged."""


def faults_in_mode(
    reading: FixtureReading, mode: ModeReading, throw_m: float | None = None
) -> Sequence[Fault]:
    """The angles of a mode whose step is too coarse; `throw_m` is the unit's, in meters, where known."""
    if _is_sound(reading, mode):
        return ()
    found: list[Fault] = []
    continuous = mode.continuous
    for word, stretches in continuous.items():
        key = LIMIT_OF.get(word)
        if key is None:
            continue
        limit = reading.limits[key]
        worst: dict[tuple[int, int | None], tuple[Continuous, Step]] = {}
        for one in stretches:
            stretch = one.stretch
            if stretch.span.unit != "deg":
                continue
            coarse = too_coarse(
                stretch.span.width, stretch.span.raw, bits(one.parameter), stretch.steps, limit.value
            )
            if coarse is None or not is_position(one):
                continue
            # Of spans that a menu state chooses between, the coarsest speaks for all.
            place = (id(one.parameter), stretch.range_index)
            if place not in worst or coarse.step > worst[place][1].step:
                worst[place] = (one, coarse)
        for one, coarse in worst.values():
            found.append(_fault(reading, mode, one, coarse, limit, throw_m))
    words = mode.survey.words
    for word in ("pan", "tilt"):
        if word in words:
            found += _unrecorded(reading, mode, word, words[word], throw_m)
    return found


def _is_sound(reading: FixtureReading, mode: ModeReading) -> bool:
    """Whether the survey alone shows that no angle is too coarse; False where a closer look is due."""
    survey = mode.survey
    if not survey.pieced.isdisjoint(LIMIT_OF):
        return False
    for word, spans in survey.whole.items():
        key = LIMIT_OF.get(word)
        if key is not None:
            limit = reading.figures[key]
            for span in spans:
                if span[2] == "deg":
                    if not whole_is_fine(span, limit):
                        return False
                elif word in _AXES:
                    return False
    words, whole = survey.words, survey.whole
    return ("pan" not in words or len(whole.get("pan", ())) == len(words["pan"])) and (
        "tilt" not in words or len(whole.get("tilt", ())) == len(words["tilt"])
    )


def _fault(
    reading: FixtureReading,
    mode: ModeReading,
    one: Continuous,
    coarse: Step,
    limit: Threshold,
    throw_m: float | None,
) -> Fault:
    stretch, parameter = one.stretch, one.parameter
    size = bits(parameter)
    figure: dict[str, object] = {
        "parameter": stretch.word,
        "bits": size,
        "bits_needed": coarse.bits_needed,
        "step_deg": coarse.step,
        "limit_deg": limit.value,
        "span_deg": stretch.span.width,
        "steps": stretch.steps,
    }
    said = (
        f"{subject(parameter, stretch.word, stretch.range_index)} moves in steps of "
        f"{number(coarse.step)} degrees in {size} bits; {wanted(limit.value, 'degree')}"
    )
    if stretch.span.raw:
        figure["raw"] = True
        said = said.replace(f" in {size} bits;", ", as whole degrees are sent;")
    if stretch.span.given is not None:
        figure["given"] = stretch.span.given
        said += f" (given {stretch.span.given})"
    if stretch.word in _MOVES_THE_SPOT:
        more, told = moved(reading, coarse.step, throw_m)
        figure |= more
        said += f" (a step moves the spot {told})"
    help_ = remedy(reading, mode, (stretch.word,), coarse.bits_needed, limit)
    return Fault(place_of(one), said, figure, help_, limit.severity)


def _unrecorded(
    reading: FixtureReading, mode: ModeReading, word: str, indexes: list[int], throw_m: float | None
) -> list[Fault]:
    """The pans or tilts without a span in degrees whose bits are too few for any useful travel."""
    limit = reading.limits["pan-tilt-step"]
    travel_deg = reading.limits["assumed-least-travel"].value
    found: list[Fault] = []
    for index in indexes:
        parameter = mode.written[index]
        size = bits(parameter)
        if not size:
            continue
        least = too_coarse(travel_deg, False, size, 2**size - 1, limit.value)
        if least is not None and not _has_degrees(mode, word, parameter):
            found.append(_guess(reading, mode, index, least, limit, throw_m))
    return found


def _has_degrees(mode: ModeReading, word: str, parameter: Parameter) -> bool:
    return any(
        one.parameter is parameter and one.stretch.span.unit == "deg" for one in mode.continuous.get(word, ())
    )


def _guess(
    reading: FixtureReading,
    mode: ModeReading,
    index: int,
    least: Step,
    limit: Threshold,
    throw_m: float | None,
) -> Fault:
    parameter, pointer = mode.at(index)
    size = bits(parameter)
    travel_deg = reading.limits["assumed-least-travel"].value
    figure: dict[str, object] = {
        "parameter": parameter.parameter,
        "bits": size,
        "bits_needed": least.bits_needed,
        "step_deg": None,
        "limit_deg": limit.value,
        "steps": 2**size - 1,
        "assumed_least_span_deg": travel_deg,
        "least_step_deg": least.step,
    }
    # How far a spot moves, from a travel that nobody printed, is for the figure alone.
    more, _ = moved(reading, least.step, throw_m)
    figure |= {f"least_{key}" if key == "displacement_m" else key: value for key, value in more.items()}
    said = (
        f"{parameter.name} has {size} bits and no recorded travel: over {number(travel_deg)} degrees, "
        f"assumed as the least, a step is {number(least.step)} degrees; {wanted(limit.value, 'degree')}"
    )
    help_ = remedy(reading, mode, (parameter.parameter,), least.bits_needed, limit)
    return Fault(pointer, said, figure, f"record its travel in degrees as `span`; {help_}", limit.severity)


def _example(slots: list[int]) -> dict[str, object]:
    span = {"from": 0, "to": 540, "unit": "deg"}
    return {"modes": [{"parameters": [{"parameter": "pan", "slots": slots, "span": span}]}]}


RULE: Rule[FixtureReading] = Rule(
    name="coarse-angle",
    severity="warning",
    summary="Pan, tilt, zoom, or the angle of a wheel or blade moves in steps that show.",
    checks=(
        "Every span in degrees of pan, tilt and roll, of zoom, and of the indexes of gobos, wheels, "
        "prisms, blades, framing and barn doors, on the whole parameter or on a range: one step is the "
        "span over the number of steps that its values make (255 for 8 bits, fewer for a range; one degree "
        "where whole degrees are sent). Ranges in which the fixture moves by itself are left out. For pan "
        "and tilt the message tells how far the spot moves at most in one step: the chord at the unit's "
        "throw, or at an assumed one. A pan or tilt of which no span in degrees is recorded is reported if "
        "its bits are too few even for 90 degrees; the step is then not known, and the figure says so. "
        "Other angles without a span cannot be judged."
    ),
    why=(
        "540 degrees in 8 bits are steps of 2.12 degrees: at 8 m the spot jumps up to 0.30 m, and a slow "
        "move on camera becomes a staircase, unless smoothing fills it in."
    ),
    bad=Example("Pan over 540 degrees in one slot.", _example([1])),
    good=Example("Pan over 540 degrees in two slots: steps of 0.008 degrees.", _example([1, 2])),
    references=(
        "pan and tilt 0.1 degrees, zoom 0.5, indexes 1: common practice, no source",
        "the displacement is the chord 2 throw sin(step / 2)",
    ),
    check=in_every_mode(faults_in_mode, about=LIMIT_OF),
)
