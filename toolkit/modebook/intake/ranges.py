"""Turns the stretches of a parameter into ranges of its full resolution, spans and doubts."""

from __future__ import annotations

import re

from modebook.intake.descriptions import Description, describe
from modebook.intake.doing import what_it_does
from modebook.intake.drafts import DraftParameter, Json
from modebook.intake.elision import expand
from modebook.intake.entries import Stretch
from modebook.intake.folding import fold
from modebook.intake.names import DESCRIBING, read_name
from modebook.intake.phrases import affirmed, turns_round
from modebook.intake.quantities import Quantity
from modebook.intake.remarks import half_told, hold_all, note_remarks, ruled_by
from modebook.intake.spans import full_span, range_span
from modebook.intake.values import Values
from modebook.words.parameters import PARAMETERS

TRIGGERING = frozenset(
    {
        "control",
        "reset",
        "lamp-control",
        "smoothing",
        "power",
        "fan-mode",
        "output-mode",
        "dimmer-curve",
        "other",
        "modulation-frequency",
        "arming",
        "macro",
        "effect",
        "color-mode",
        "signal-loss",
        "display",
    }
)
_STROBING = re.compile(
    r"\b(\w*strob\w*|flash\w*|\w*blitz\w*|estrob\w*|destell\w*|lampegg\w*|pulse|pulsing|lightning|stroboscop\w*|eclair\w*|puls\w*)\b",
    re.IGNORECASE,
)


_CONNECTING = frozenset(("from", "to", "von", "bis", "de", "a", "desde", "hasta", "da", "du"))


def fill_ranges(parameter: DraftParameter) -> None:
    """Give a parameter its ranges, its span and the doubts about them."""
    _attach_detached(parameter)
    parameter.stretches = expand(parameter)
    stretches = [s for s in parameter.stretches if s.values]
    triggers = parameter.word in TRIGGERING
    top = 256**parameter.bytes - 1
    if _is_physical(parameter, stretches):
        _physical(parameter, stretches)
        stretches = []
    raw = _raw(parameter, stretches, top)
    if raw:
        full_span(parameter, [describe(s.text) for s in stretches], single=True)
        return
    coarse = _counts_coarse(parameter, stretches)
    whole = _is_whole(stretches, top, coarse)
    made: list[tuple[Json, Description]] = []
    for stretch in stretches:
        description = describe(stretch.text, triggers=triggers)
        for values in stretch.values:
            ends = _scaled(parameter, values, coarse, top, stretch)
            if ends is None:
                continue
            entry = _range(parameter, ends, stretch, description, whole=whole)
            made.append((entry, description))
            index = len(made) - 1
            if values.why:
                parameter.doubt(values.why, stretch.printed, f"{ends[0]}-{ends[1]}", f"/ranges/{index}")
            for why in description.said.why:
                parameter.doubt(why, stretch.printed, below=f"/ranges/{index}")
            half_told(parameter, stretch.text, stretch.printed, index)
            _check_columns(parameter, stretch, values, index)
    descriptions = [description for _, description in made]
    name_rest = describe(parameter.name.rest, triggers=triggers) if parameter.name.rest else None
    remarks = [describe(remark, triggers=triggers) for remark in parameter.entry.remarks]
    if whole:
        full_span(parameter, [*descriptions, *([name_rest] if name_rest else []), *remarks], single=True)
        _keep_whole(parameter, made)
    else:
        full_span(parameter, [*([name_rest] if name_rest else []), *remarks], single=not made)
        parameter.ranges = [entry for entry, _ in made]
        for index, (entry, description) in enumerate(made):
            range_span(parameter, entry, description, index)
    note_remarks(parameter, remarks)
    hold_all(parameter, remarks)
    for index, (_, description) in enumerate(made):
        if whole and len(parameter.stretches) == 1:
            ruled_by(parameter, description)
        elif index < len(parameter.ranges) and description.needs:
            parameter.needs[index] = description.needs
    if parameter.ranges and not whole:
        _check_cover(parameter, top)


def _attach_detached(parameter: DraftParameter) -> None:
    """Words that stand apart from their values: not paired; with as many of both, paired and marked."""
    detached = [row for row in parameter.entry.detached if not row.unpaired]
    if not detached:
        return
    texts = [" ".join(piece for piece in (row.name, row.meaning) if piece) for row in detached]
    bare = [s for s in parameter.stretches if s.values and not s.text]
    printed = " / ".join([*(s.printed for s in bare), *texts])
    if bare and len(bare) == len(texts) and len(bare) == len([s for s in parameter.stretches if s.values]):
        from dataclasses import replace

        pairs = iter(texts)
        parameter.stretches = [
            replace(s, text=next(pairs)) if s.values and not s.text else s for s in parameter.stretches
        ]
        parameter.doubt(
            "values and words stand apart; as many of both were paired in order", printed, "paired in order"
        )
    elif bare:
        parameter.doubt(
            f"{len(bare)} values and {len(texts)} words stand apart: they are not paired",
            printed,
            "values left without their words",
        )
        parameter.stretches = [s for s in parameter.stretches if s.text]
    else:
        parameter.doubt("words without values stand between the rows", " / ".join(texts), "left out")


def _is_physical(parameter: DraftParameter, stretches: list[Stretch]) -> bool:
    """Whether what stands where values would is degrees: more than a byte holds, and no full scale."""
    if len(stretches) != 1 or len(stretches[0].values) != 1 or PARAMETERS[parameter.word].quantity != "angle":
        return False
    values = stretches[0].values[0]
    if values.single or values.pairs:
        return False
    return (
        values.end > 255
        and values.end not in (65535, 16777215, 65280)
        and (parameter.bytes == 1 or values.end <= 7200)
    )


def _physical(parameter: DraftParameter, stretches: list[Stretch]) -> None:
    from dataclasses import replace

    stretch = stretches[0]
    values = stretch.values[0]
    parameter.stretches = [replace(stretch, values=())]
    parameter.entry.remarks.append(f"{values.start}-{values.end}")
    if stretch.text:
        parameter.entry.remarks.append(stretch.text)


def _raw(parameter: DraftParameter, stretches: list[Stretch], top: int) -> bool:
    """Whether the number sent is the unit itself; records the span if so."""
    if parameter.word != "color-temperature" or parameter.bytes < 2 or len(stretches) != 1:
        return False
    values = stretches[0].values
    said = describe(stretches[0].text).said
    rest = describe(parameter.name.rest).said if parameter.name.rest else None
    told = said.raw or bool(rest and rest.raw) or any(describe(r).said.raw for r in parameter.entry.remarks)
    if len(values) != 1 or not 1000 <= values[0].start < values[0].end <= 25_000:
        return False
    parameter.span = {"from": values[0].start, "to": values[0].end, "unit": "K", "raw": True}
    if not told:
        parameter.doubt(
            "the values look like kelvin themselves, and the text does not say so",
            stretches[0].printed,
            "raw kelvin",
        )
    if values[0].why:
        parameter.doubt(values[0].why, stretches[0].printed)
    return True


def _counts_coarse(parameter: DraftParameter, stretches: list[Stretch]) -> bool:
    """Whether the values of a parameter of several bytes are printed for its coarse byte alone."""
    values = [v for s in stretches for v in s.values]
    return parameter.bytes > 1 and not any(v.wide or v.pairs for v in values)


def _is_whole(stretches: list[Stretch], top: int, coarse: bool) -> bool:
    values = [v for s in stretches for v in s.values]
    if len(values) != 1 or values[0].single:
        return False
    if values[0].form == "percent":
        return values[0].start == 0 and values[0].end == 255
    return values[0].start == 0 and values[0].end == (255 if coarse else top)


def _scaled(
    parameter: DraftParameter, values: Values, coarse: bool, top: int, stretch: Stretch
) -> tuple[int, int] | None:
    """The ends in the parameter's full resolution; None, with a doubt, where they do not fit into it."""
    start, end = values.start, values.end
    if coarse or (values.form == "percent" and parameter.bytes > 1):
        factor = 256 ** (parameter.bytes - 1)
        return start * factor, (end + 1) * factor - 1
    if values.pairs and parameter.bytes > 2:
        parameter.doubt(
            "coarse.fine pairs in a parameter of more than two bytes", stretch.printed, "left out"
        )
        return None
    if end > top:
        parameter.doubt(
            f"{end} is more than {parameter.bytes} slot{'s' if parameter.bytes > 1 else ''} can hold",
            stretch.printed,
            "left out",
        )
        return None
    return start, end


def _range(
    parameter: DraftParameter,
    ends: tuple[int, int],
    stretch: Stretch,
    description: Description,
    *,
    whole: bool,
) -> Json:
    said = description.said
    meaning = description.meaning or parameter.label or parameter.word
    entry: Json = {"from": ends[0], "to": ends[1], "meaning": meaning}
    if not stretch.text and not whole:
        parameter.doubt(
            "no meaning is printed beside these values",
            stretch.printed,
            meaning,
            f"/ranges/{len(parameter.ranges)}",
        )
    if (
        parameter.word in ("shutter", "dimmer")
        and _STROBING.search(affirmed(meaning))
        and said.does not in ("open", "closed", "nothing")
    ):
        entry["parameter"] = "strobe"
    elif parameter.word == "strobe" and ":" in meaning and read_name(meaning.split(":")[0]).word == "dimmer":
        entry["parameter"] = "dimmer"
    if turns_round(meaning):
        parameter.doubt(
            "the two languages of this text contradict each other",
            stretch.printed,
            meaning,
            f"/ranges/{len(parameter.ranges)}",
        )
    degrees = bool(description.spans) and all(one.unit == "deg" for one in description.spans)
    does = what_it_does(parameter.word, meaning, said.does, whole=whole, degrees=degrees)
    if does:
        entry["does"] = does
    if said.hold_s is not None:
        entry["hold_s"] = int(said.hold_s) if float(said.hold_s).is_integer() else said.hold_s
    if said.kept and parameter.word in TRIGGERING:
        entry["kept"] = said.kept
    if said.hazard and parameter.word in TRIGGERING:
        entry["hazard"] = said.hazard
    if stretch.row.why and "derived" in stretch.row.why:
        entry["note"] = "Derived: the chart leaves these rows out between two that fit."
    return entry


def _keep_whole(parameter: DraftParameter, made: list[tuple[Json, Description]]) -> None:
    """A single row over all values is a range only if it says more than the name and the span."""
    entry, description = made[0]
    text = description.meaning
    for quantity in (*description.spans, *description.singles):
        text = text.replace(description.printed[quantity.at[0] : quantity.at[1]], " ")
    words = fold(text).split()
    known = read_name(text.strip(" ()")) if text.strip(" ()") else None
    telling = [word for word in words if not re.fullmatch(r"[\d%°]+", word) and word not in _CONNECTING]
    repeats = known is not None and known.word == parameter.word and not known.rest
    runs = _CONNECTING.intersection(words) or re.search(r"\s[-–—]\s|[→⇒>]", text)
    if repeats and runs and fold(parameter.label) != fold(text):
        repeats = False  # `Magenta to green` names a tint, and says which end is which
    if description.spans and not description.needs and description.said.hold_s is None:
        # The span is the parameter's: what the words of the range say of it stays with them.
        entry["meaning"] = description.printed
    if entry.get("does") in ("rotate", "index") and PARAMETERS[parameter.word].quantity == "angle":
        del entry["does"]  # `Rotation 0 to 540 deg` is what a pan is
    special = any(key in entry for key in ("does", "hazard", "hold_s", "kept", "parameter"))
    numbers_only = all(DESCRIBING.fullmatch(word) and not re.fullmatch(r"[a-z]{2,}", word) for word in words)
    if special or (telling and not repeats and not numbers_only):
        parameter.ranges = [entry]


def _check_columns(parameter: DraftParameter, stretch: Stretch, values: Values, index: int) -> None:
    """Percent and hex columns beside decimals: the decimals count, a contradiction is marked."""
    from modebook.intake.values import read_values

    row = stretch.row
    if values.form != "dec" or not row.value or len(stretch.values) > 1:
        return
    if row.hex:
        other = read_values(row.hex, "hex")
        if other and (other[0].start, other[0].end) != (values.start, values.end) and not values.wide:
            parameter.doubt(
                f"the hex column says {other[0].start}-{other[0].end}",
                row.raw,
                f"{values.start}-{values.end}",
                f"/ranges/{index}",
            )
    if row.percent:
        other = read_values(row.percent, "percent")
        scale = 257 if values.wide else 1
        if (
            other
            and max(abs(other[0].start - values.start / scale), abs(other[0].end - values.end / scale)) > 5
        ):
            parameter.doubt(
                f"the percent column says {row.percent}",
                row.raw,
                f"{values.start}-{values.end}",
                f"/ranges/{index}",
            )


def _check_cover(parameter: DraftParameter, top: int) -> None:
    """Overlaps and gaps stay as printed and are marked."""
    ranges = parameter.ranges
    points = sum(entry["from"] == entry["to"] for entry in ranges)
    expected = 0
    for index, entry in enumerate(ranges):
        if entry["from"] < expected and index:
            before = ranges[index - 1]
            parameter.doubt(
                f"{entry['from']}-{entry['to']} overlaps {before['from']}-{before['to']}",
                _shown(entry, before),
                "as printed",
                f"/ranges/{index}",
            )
        elif entry["from"] > expected:
            missing = f"{expected}" if entry["from"] == expected + 1 else f"{expected} to {entry['from'] - 1}"
            why = f"what {missing} does is not printed"
            if points > 1 and points == len(ranges):
                why = f"single points are printed; what lies between ({missing}) is not"
            parameter.doubt(why, _shown(entry), "as printed", f"/ranges/{index}")
        expected = max(expected, entry["to"] + 1)
    if expected <= top:
        parameter.doubt(
            f"what {expected} to {top} does is not printed",
            _shown(ranges[-1]),
            "as printed",
            f"/ranges/{len(ranges) - 1}",
        )


def _shown(*entries: Json) -> str:
    def ends(entry: Json) -> str:
        return f"{entry['from']}" if entry["from"] == entry["to"] else f"{entry['from']}-{entry['to']}"

    return "; ".join(f"{ends(entry)} {entry['meaning']}" for entry in reversed(entries))


def quantities_of(parameter: DraftParameter) -> list[Quantity]:
    """All spans printed beside a parameter."""
    return [q for s in parameter.stretches for q in describe(s.text).spans]
