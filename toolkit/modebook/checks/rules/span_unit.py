"""span-unit: a span has a unit that its parameter cannot be measured in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._every_mode import in_every_mode
from modebook.checks.rules._text import number, together
from modebook.documents.modes import Parameter, Span, spans_of
from modebook.words.parameters import PARAMETERS
from modebook.words.quantities import Quantity
from modebook.words.units import UNITS

_ALSO: dict[Quantity, tuple[str, ...]] = {
    # As manuals print them: a blade in degrees, a filter by the white that it makes, a fan by its turns, a
    # speed by what it comes to, a flash by its length.
    "position": ("deg", "m", "cm", "mm", "ft", "in"),
    "level": ("K", "mired", "lx", "fc", "cd/m2", "rpm"),
    "tint": ("mired",),
    "speed": ("deg/s", "rpm", "m/s", "Hz", "bpm", "s", "ms", "min"),
    "rate": ("s", "ms", "min", "rpm", "%"),
    "rotation": ("Hz", "bpm", "s", "%"),
    "angle": ("%",),
    "distance": ("%",),
    "color-temperature": ("%",),
    "hue": ("%",),
    "velocity": ("%", "deg/s", "rpm", "s"),
    "time": ("%", "Hz"),
    "illuminance": ("%",),
    "luminance": ("%",),
}
_MOVES = frozenset({"rotate", "bounce", "random", "runs"})
"""What a range does that is told by a speed or a time, whatever the parameter itself is."""
_OF_MOVING: tuple[Quantity, ...] = ("rotation", "rate", "speed", "time", "velocity")


def fitting(quantity: Quantity) -> frozenset[str]:
    """The units that a quantity may be printed in; all of them for a selector, which may choose anything."""
    if quantity == "selector":
        return frozenset(UNITS)
    own = {symbol for symbol, unit in UNITS.items() if quantity in unit.quantities}
    return frozenset(own | set(_ALSO.get(quantity, ())))


_FITTING = {word: fitting(parameter.quantity) for word, parameter in PARAMETERS.items()}
# Coordinates are looked at whatever their unit, for their ends.
_FITTING_SURELY = {
    word: frozenset[str]() if PARAMETERS[word].quantity == "chromaticity" else units
    for word, units in _FITTING.items()
}
_SURELY = frozenset((word, unit) for word, units in _FITTING_SURELY.items() for unit in units)
_FITTING_MOVING = frozenset().union(*(fitting(quantity) for quantity in _OF_MOVING))


def faults_in_mode(reading: FixtureReading, mode: ModeReading) -> Sequence[Fault]:
    """The spans of a mode whose unit does not fit, and coordinates outside the diagram."""
    survey = mode.survey
    if not survey.fitted <= _SURELY:
        return [fault for index in survey.spanned for fault in _in_parameter(*mode.at(index))]
    found: list[Fault] = []
    for index in survey.in_pieces:
        if not _fits_surely(mode.written[index]):
            found += _in_parameter(*mode.at(index))
    return found


def _fits_surely(parameter: Parameter) -> bool:
    """Whether each single span of a parameter and its ranges has a fitting unit; False: look closer."""
    span = parameter.span
    if span is not None and (isinstance(span, list) or span.unit not in _FITTING_SURELY[parameter.parameter]):
        return False
    for piece in parameter.ranges:
        span = piece.span
        if span is not None and (
            isinstance(span, list) or span.unit not in _FITTING_SURELY[piece.parameter or parameter.parameter]
        ):
            return False
    return True


def _is_coordinate(word: str) -> bool:
    return PARAMETERS[word].quantity == "chromaticity"


def _in_parameter(parameter: Parameter, pointer: str) -> Iterator[Fault]:
    for span in spans_of(parameter.span):
        yield from _judged(span, parameter.parameter, f"{pointer}/span", _FITTING[parameter.parameter])
    for index, piece in enumerate(parameter.ranges):
        word = piece.parameter or parameter.parameter
        fits = _FITTING[word] | _FITTING_MOVING if piece.does in _MOVES else _FITTING[word]
        for span in spans_of(piece.span):
            yield from _judged(span, word, f"{pointer}/ranges/{index}/span", fits)


def _judged(span: Span, word: str, pointer: str, fits: frozenset[str]) -> Iterator[Fault]:
    if span.unit not in fits:
        quantity = PARAMETERS[word].quantity
        article = "an" if quantity[0] in "aeiou" else "a"
        usual = [symbol for symbol, unit in UNITS.items() if unit.quantities[0] == quantity]
        yield Fault(
            pointer,
            f"{word} is {article} {quantity.replace('-', ' ')}, and {span.unit} does not measure one",
            {"parameter": word, "unit": span.unit, "quantity": quantity},
            f"usual units are {together(usual or [PARAMETERS[word].unit])}",
        )
    elif _is_coordinate(word) and not (0 <= span.from_ <= 1 and 0 <= span.to <= 1 and not span.raw):
        yield Fault(
            pointer,
            f"{word} cannot span {number(span.from_)} to {number(span.to)}{' as sent' if span.raw else ''}: "
            "a coordinate lies within 0 to 1",
            {"parameter": word, "from": span.from_, "to": span.to},
            "give the coordinates that the lowest and the highest value stand for, such as 0 to 0.8",
        )


def _example(unit: str) -> dict[str, object]:
    span = {"from": 0, "to": 540, "unit": unit}
    return {"modes": [{"parameters": [{"parameter": "pan", "slots": [1, 2], "span": span}]}]}


RULE: Rule[FixtureReading] = Rule(
    name="span-unit",
    severity="error",
    summary="A span has a unit that its parameter cannot be measured in.",
    checks=(
        "The unit of every span against the quantity of the parameter that it is of; a range in which "
        "something moves by itself may be told in speeds and times. A percentage fits everything but "
        "coordinates, and a selector may choose among anything. Coordinates of chromaticity lie within 0 "
        "to 1 and are never sent as whole numbers."
    ),
    why="A pan in hertz is a slip of the record, and whatever is computed from it is wrong in silence.",
    bad=Example("Pan from 0 to 540 Hz.", _example("Hz")),
    good=Example("Pan from 0 to 540 degrees.", _example("deg")),
    references=("common practice, no source",),
    check=in_every_mode(faults_in_mode),
)
