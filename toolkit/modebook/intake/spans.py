"""Gives parameters and ranges their physical spans, where the print has them; what is odd is marked."""

from __future__ import annotations

from modebook.intake.descriptions import Description
from modebook.intake.drafts import DraftParameter, Json
from modebook.intake.quantities import Quantity, unitless
from modebook.words.parameters import PARAMETERS
from modebook.words.units import UNITS

_FULL_TURN_DEG = 360
_MOST_DEG = {"pan": 1080, "tilt": 720, "zoom": 180, "hue": 720}
_UNSIGNED = ("angle", "hue")


def _json(quantity: Quantity) -> Json:
    return {"from": _short(quantity.start), "to": _short(quantity.end), "unit": quantity.unit}


def _short(value: float) -> float:
    return int(value) if float(value).is_integer() else value


def fits(word: str, unit: str) -> bool:
    """Whether a unit measures what a parameter is."""
    parameter = PARAMETERS[word]
    if unit in UNITS and parameter.quantity in UNITS[unit].quantities:
        return True
    # Speeds of turning are often printed in turns or degrees; times and rates stand for speeds.
    allowed: dict[str, tuple[str, ...]] = {
        "rotation": ("rpm", "deg/s", "Hz", "%"),
        "speed": ("s", "%", "deg/s", "rpm", "Hz", "bpm"),
        "rate": ("Hz", "kHz", "bpm", "%", "s", "ms"),
        "position": ("%", "deg", "m", "cm", "mm"),
        "time": ("s", "ms", "min", "%"),
        "angle": ("deg",),
        "level": ("%",),
    }
    return unit in allowed.get(parameter.quantity, ())


def full_span(parameter: DraftParameter, descriptions: list[Description], *, single: bool) -> None:
    """The span of the whole parameter, out of the texts that speak of all its values."""
    word = parameter.word
    if parameter.span is not None and parameter.span.get("raw"):
        return
    found: list[Quantity] = []
    for description in descriptions:
        found.extend(q for q in description.spans if fits(word, q.unit))
    distinct = {(q.start, q.end, q.unit) for q in found}
    physical = {one for one in distinct if one[2] != "%"} or distinct
    if len(physical) == 1:
        start, end, unit = next(iter(physical))
        parameter.span = {"from": _short(start), "to": _short(end), "unit": unit}
        _check(parameter, max(abs(start), abs(end)), unit, descriptions)
        return
    if len(physical) > 1:
        shown = ", ".join(f"{_short(a)} to {_short(b)} {u}" for a, b, u in sorted(physical))
        parameter.doubt(f"several spans are printed: {shown}", read="none of them")
        return
    if not single and not descriptions:
        return
    _without_unit(parameter, descriptions)
    if parameter.span is None:
        strange = [q for description in descriptions for q in description.spans if q.unit != "%"]
        _not_taken(parameter, strange)


def _not_taken(parameter: DraftParameter, strange: list[Quantity], below: str = "") -> None:
    """A span is printed that this parameter cannot have: nobody may think that none was printed."""
    for q in strange[:1]:
        shown = f"{_short(q.start)} to {_short(q.end)} {q.unit}"
        parameter.doubt(f"{shown} is printed, and is no measure of this parameter", shown, "no span", below)


def _without_unit(parameter: DraftParameter, descriptions: list[Description]) -> None:
    """Figures without a unit: x and y have none; degrees whose sign is lost are marked."""
    word = parameter.word
    quantity = PARAMETERS[word].quantity
    for description in descriptions:
        plain = unitless(description.printed)
        if not plain:
            continue
        q = plain[0]
        if quantity == "chromaticity" and 0 <= q.start < q.end <= 1:
            parameter.span = {"from": _short(q.start), "to": _short(q.end), "unit": "1"}
            return
        if quantity in _UNSIGNED and word in (
            "pan",
            "tilt",
            "hue",
            "zoom",
            "roll",
            "framing-rotation",
            "blade-angle",
        ):
            width = abs(q.end - q.start)
            if width <= 0:
                continue
            end = q.end
            if width > _MOST_DEG.get(word, _FULL_TURN_DEG) and q.end % 10 == 0:
                end = q.end / 10
                start = q.start / 10 if q.start % 10 == 0 and abs(q.start) > 90 else q.start
                parameter.span = {"from": _short(start), "to": _short(end), "unit": "deg"}
                parameter.doubt(
                    "the last 0 may be a degree sign that was read as a zero",
                    description.printed,
                    f"{_short(start)} to {_short(end)} deg",
                    "/span",
                )
            elif width != 255 and width != 65535:
                parameter.span = {"from": _short(q.start), "to": _short(q.end), "unit": "deg"}
                parameter.doubt(
                    "no unit is printed",
                    description.printed,
                    f"{_short(q.start)} to {_short(q.end)} deg",
                    "/span",
                )
            return
        if quantity == "color-temperature" and 1000 <= q.start < q.end <= 25_000:
            parameter.span = {"from": _short(q.start), "to": _short(q.end), "unit": "K"}
            parameter.doubt(
                "no unit is printed", description.printed, f"{_short(q.start)} to {_short(q.end)} K", "/span"
            )
            return
    for description in descriptions:
        ones = [q for q in description.singles if fits(word, q.unit)]
        if len(ones) == 1 and ones[0].unit == "deg" and quantity == "angle" and ones[0].end > 0:
            width = ones[0].end
            if width > _MOST_DEG.get(word, 10_000):
                parameter.doubt("so many degrees are not likely", description.printed, "no span")
                return
            parameter.span = {"from": 0, "to": _short(width), "unit": "deg"}
            parameter.doubt(
                "one figure is printed: where it begins is not",
                description.printed,
                f"0 to {_short(width)} deg",
                "/span",
            )
            return


def _check(parameter: DraftParameter, largest: float, unit: str, descriptions: list[Description]) -> None:
    if unit == "deg" and largest > _MOST_DEG.get(parameter.word, 10_000):
        parameter.doubt(
            "so many degrees are not likely",
            " ".join(d.printed for d in descriptions if d.spans),
            f"{largest:g} deg",
            "/span",
        )


def range_span(parameter: DraftParameter, entry: Json, description: Description, index: int) -> None:
    """The span of one range."""
    word = entry.get("parameter", parameter.word)
    selector = PARAMETERS[word].quantity == "selector"
    found = [q for q in description.spans if selector or fits(word, q.unit)]
    if word == "dimmer-curve" or not found:
        if not selector and not found and description.spans:
            q = description.spans[0]
            if q.unit == "Hz" and word in ("dimmer", "shutter"):
                entry["parameter"] = "strobe"
                entry["span"] = _json(q)
            elif q.unit in ("deg", "rpm", "Hz", "deg/s"):
                entry["span"] = _json(q)
            elif q.unit != "%":
                _not_taken(parameter, [q], f"/ranges/{index}")
        return
    distinct = {(q.start, q.end, q.unit) for q in found}
    physical = {one for one in distinct if one[2] != "%"} or distinct
    if len(physical) == 1:
        start, end, unit = next(iter(physical))
        entry["span"] = {"from": _short(start), "to": _short(end), "unit": unit}
        if unit == "Hz" and word == "shutter":
            entry["parameter"] = "strobe"
    else:
        parameter.doubt(
            "several spans are printed beside one range",
            description.printed,
            "none of them",
            f"/ranges/{index}",
        )
