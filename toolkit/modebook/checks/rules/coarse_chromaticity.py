"""coarse-chromaticity: CIE x and y move in steps seen near whites, or cannot be set to four decimals."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from modebook.checks.finding import Fault
from modebook.checks.reading import Continuous, FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._coarse import is_position, place_of, remedy, share_of
from modebook.checks.rules._every_mode import in_every_mode
from modebook.checks.rules._text import number
from modebook.documents.bits import bits
from modebook.documents.modes import Parameter
from modebook.response.errors import ResponseError
from modebook.response.resolution import ChromaticityStep, bits_needed, chromaticity_step, span_step

_PAIRS = (("cie-x", "cie-y"), ("cie-u-prime", "cie-v-prime"))


@dataclass(frozen=True, slots=True)
class _Axis:
    """One coordinate as it is sent."""

    width: float
    bits: int
    steps: int
    assumed: bool
    pointer: str


@dataclass(frozen=True, slots=True)
class _Judged:
    """What a pair of coordinates comes to, where a limit is passed."""

    is_seen: bool
    step: float
    multiples: float
    step_first: float
    step_second: float
    bits_needed: int | None
    detail: ChromaticityStep | None


def faults_in_mode(
    reading: FixtureReading, mode: ModeReading, throw_m: float | None = None
) -> Sequence[Fault]:
    """The pairs of x and y of a mode that are too coarse; the throw makes no difference."""
    survey = mode.survey
    assumed = reading.limits["assumed-chromaticity-span"].value
    found: list[Fault] = []
    for pair in _PAIRS:
        if pair[0] not in survey.words and pair[0] not in survey.pieced:
            continue
        first, second = _axes(mode, pair[0], assumed), _axes(mode, pair[1], assumed)
        for holder, axes in first.items():
            for one, other in zip(axes, second.get(holder, ()), strict=False):
                fault = _fault(reading, mode, pair, one, other)
                if fault is not None:
                    found.append(fault)
    return found


def _axes(mode: ModeReading, word: str, assumed: float) -> dict[str, list[_Axis]]:
    """Each coordinate of a word, by the mode, cell block or part that holds it, in the document's order."""
    found: dict[str, list[_Axis]] = {}
    spanned: set[int] = set()
    for one in mode.continuous.get(word, ()):
        spanned.add(id(one.parameter))
        if _usable(one):
            stretch = one.stretch
            axis = _Axis(stretch.span.width, bits(one.parameter), stretch.steps, False, place_of(one))
            found.setdefault(_holder(one.pointer), []).append(axis)
    for index in mode.survey.words.get(word, ()):
        parameter: Parameter = mode.written[index]
        size = bits(parameter)
        if size and id(parameter) not in spanned:
            pointer = mode.at(index)[1]
            axis = _Axis(assumed, size, 2**size - 1, True, pointer)
            found.setdefault(_holder(pointer), []).append(axis)
    return found


def _usable(one: Continuous) -> bool:
    """Whether a span can be one of a coordinate; of others span-unit tells."""
    span = one.stretch.span
    return (
        span.unit == "1"
        and not span.raw
        and 0 < span.width <= 1
        and one.stretch.steps > 0
        and is_position(one)
    )


def _holder(pointer: str) -> str:
    return pointer.rpartition("/parameters/")[0]


@lru_cache(maxsize=4096)
def _judged(
    width: tuple[float, float],
    size: tuple[int, int],
    steps: tuple[int, int],
    is_xy: bool,
    seen: float,
    decimals: float,
    whites_k: tuple[float, float],
) -> _Judged | None:
    """What a pair comes to; None where it is within both limits."""
    shares = share_of(size[0], steps[0]), share_of(size[1], steps[1])
    step_first, step_second = (span_step(width[i], size[i], shares[i]) for i in (0, 1))
    detail: ChromaticityStep | None = None
    if is_xy:
        try:
            detail = chromaticity_step(*width, *size, *shares, whites_k)
            step, multiples = detail.step_delta_uv_prime, detail.steps
        except ResponseError:  # so few values that a neighbor may lie outside the diagram: the step in x or y
            step = max(step_first, step_second)
            multiples = step / seen
    else:
        step = max(step_first, step_second)
        multiples = step / seen
    is_seen = step > seen * (1 + 1e-9)
    wanted = decimals if is_xy else seen
    if not is_seen and max(step_first, step_second) <= wanted * (1 + 1e-9):
        return None
    each = [bits_needed(width[i], wanted, shares[i]) for i in (0, 1)]
    needed = None if None in each else max(one for one in each if one is not None)
    return _Judged(is_seen, step, multiples, step_first, step_second, needed, detail)


def _fault(
    reading: FixtureReading, mode: ModeReading, pair: tuple[str, str], one: _Axis, other: _Axis
) -> Fault | None:
    limits = reading.limits
    seen, decimals = limits["chromaticity-step"], limits["chromaticity-decimals"]
    whites_k = (limits["white-from"].value, limits["white-to"].value)
    is_xy = pair[0] == "cie-x"
    judged = _judged(
        (one.width, other.width),
        (one.bits, other.bits),
        (one.steps, other.steps),
        is_xy,
        seen.value,
        decimals.value,
        whites_k,
    )
    if judged is None:
        return None
    names = ("x", "y") if is_xy else ("u", "v")
    figure: dict[str, object] = {
        "parameters": list(pair),
        "pointers": [one.pointer, other.pointer],
        "bits": min(one.bits, other.bits),
        "bits_needed": judged.bits_needed,
        f"bits_{names[0]}": one.bits,
        f"bits_{names[1]}": other.bits,
        f"step_{names[0]}": judged.step_first,
        f"step_{names[1]}": judged.step_second,
        "step_delta_uv_prime": judged.step,
        "limit_delta_uv_prime": seen.value,
        "near_white_multiples": judged.multiples,
        "decimals_step": decimals.value,
    }
    detail = judged.detail
    if detail is not None:
        figure |= {
            "near_whites_k": list(whites_k),
            "at_k": detail.at_k,
            "both_delta_uv_prime": detail.both_delta_uv_prime,
            "bt2020_step_delta_uv_prime": detail.bt2020_delta_uv_prime,
        }
    elif is_xy:
        figure["step_delta_uv_prime"] = None
    if one.assumed or other.assumed:
        figure["span_assumed"] = True
    limit = seen if judged.is_seen else decimals
    said = _said(reading, judged, figure, is_xy)
    help_ = remedy(reading, mode, pair, judged.bits_needed, limit)
    return Fault(one.pointer, said, figure, help_, limit.severity)


def _said(reading: FixtureReading, judged: _Judged, figure: dict[str, object], is_xy: bool) -> str:
    names, size = ("CIE x and y" if is_xy else "CIE u' and v'"), figure["bits"]
    step = max(judged.step_first, judged.step_second)
    over = ", over an assumed 0 to 0.8" if "span_assumed" in figure else ""
    start = f"{names} move in steps of {number(step)} in {size} bits{over}"
    if not judged.is_seen:
        return f"{start}; {number(reading.limits['chromaticity-decimals'].value)}, four decimals, is wanted"
    if figure["step_delta_uv_prime"] is None:
        return f"{start}, too wide to have a distance in u'v'"
    seen = number(reading.limits["chromaticity-step"].value)
    where = "near whites " if is_xy else ""
    return (
        f"{start}: {where}up to {number(judged.step)} of delta u'v', {number(judged.multiples)} times the "
        f"0.0011 of CIE TN 001; {seen} is wanted"
    )


def _example(x: list[int], y: list[int]) -> dict[str, object]:
    span = {"from": 0, "to": 0.8, "unit": "1"}
    return {
        "modes": [
            {
                "parameters": [
                    {"parameter": "cie-x", "slots": x, "span": span},
                    {"parameter": "cie-y", "slots": y, "span": span},
                ]
            }
        ]
    }


RULE: Rule[FixtureReading] = Rule(
    name="coarse-chromaticity",
    severity="error",
    summary="CIE x and y move in steps that are seen near whites, or cannot be set to four decimals.",
    checks=(
        "Every x with the y of the same mode, cell or part. First the largest distance in u'v' that one "
        "step of either makes from a black body between the policy's whites (2700 to 6500 K), also in "
        "multiples of the 0.0011 of CIE TN 001:2014: an error beyond it. Then the step in x and y "
        "themselves: a warning where four decimals, 0.0001, cannot be set; the bits that would do are "
        "those. The figure also has the largest step from anywhere in the ITU-R BT.2020 triangle, as a "
        "plain distance. Where no span is recorded, 0 to 0.8 is assumed and said to be. u' and v' are "
        "compared with the 0.0011 directly."
    ),
    why=(
        "Color by coordinates is how a meter reading or a second fixture is matched. In 8 bits neighbors lie "
        "about two steps of chromaticity difference apart: the match that was measured cannot be sent."
    ),
    bad=Example("x and y in one slot each, 0 to 0.8.", _example([1], [2])),
    good=Example("x and y in two slots each.", _example([1, 2], [3, 4])),
    references=(
        "CIE TN 001:2014: a circle of 0.0011 in u'v' is one step of chromaticity difference",
        "ITU-R BT.2020: the primaries of the triangle",
        "four decimals: common practice, no source",
    ),
    check=in_every_mode(faults_in_mode, about=[pair[0] for pair in _PAIRS]),
)
