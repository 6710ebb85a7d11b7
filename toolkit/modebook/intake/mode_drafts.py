"""Puts one mode together out of a chart's entries: parameters, cells, conditions, footprint, doubts."""

from __future__ import annotations

import re
from collections.abc import Sequence

from modebook.intake.byte_pairs import parameters_of
from modebook.intake.cell_blocks import find_cells, number_groups
from modebook.intake.conditions import (
    ReadCondition,
    half_a_condition,
    name_of,
    read_conditions,
    without_condition,
)
from modebook.intake.drafts import DraftMode, DraftParameter, Json, Unsure
from modebook.intake.entries import Entry
from modebook.intake.folding import fold
from modebook.intake.footnotes import Footnotes
from modebook.intake.grid import Line
from modebook.intake.light_kinds import settle_by_kind
from modebook.intake.naming import confirm_name, head_of
from modebook.intake.ranges import fill_ranges
from modebook.intake.references import doubt_references
from modebook.intake.setting_ranges import Settings, in_order
from modebook.intake.told_conditions import apply_told
from modebook.words.parameters import PARAMETERS

_LETTERS = re.compile(r"^[a-z]\s?\d*$", re.IGNORECASE)


def build_mode(
    mode: DraftMode,
    entries: list[Entry],
    column: int,
    settings: Settings,
    notes: Footnotes,
    told: Sequence[Line] = (),
    *,
    alone: bool = True,
) -> DraftMode:
    """Fill a mode with the parameters that the entries give it in their mode column. told: sentences below
    the chart that tell when slots work; alone: they can be of no other mode.
    """
    entries = notes.applied(entries, column, mode)
    mode.parameters = parameters_of(entries, column)
    for parameter in mode.parameters:
        _conditions_of_name(parameter)
    apply_told(mode, told, alone=alone)
    _context(mode)
    settle_by_kind(mode)
    words = [p.word for p in mode.parameters]
    for parameter in mode.parameters:
        fill_ranges(parameter)
        doubt_references(parameter)
        _default(parameter)
        settings.read(parameter)
        confirm_name(parameter, words)
    mode.parameters.sort(key=lambda p: p.slots[0])
    number_groups(mode)
    find_cells(mode)
    _resolve(mode)
    _footprint(mode)
    return mode


def _conditions_of_name(parameter: DraftParameter) -> None:
    """Conditions printed with a name, or in a column of conditions, rule the whole parameter."""
    printed = f"{parameter.entry.name} {parameter.entry.condition}"
    found = read_conditions(printed)
    if not found and len(parameter.stretches) == 1:
        text = parameter.stretches[0].text
        found = (
            tuple(c for c in read_conditions(text))
            if re.search(r"^\W*(?:if|when|wenn|si|se|quand|quando|cuando|only|nur)\b", text, re.IGNORECASE)
            else ()
        )
    # `Tempo: 0 = slow, 255 = fast` says what its own values do.
    own = fold(parameter.entry.name)
    parameter.when = [
        condition
        for condition in found
        if not (condition.slot is not None and condition.slot in parameter.slots)
        and not (condition.name and own.startswith(fold(condition.printed)))
    ]
    if not found and half_a_condition(printed):
        parameter.doubt("a condition seems to be printed, and was not understood", parameter.entry.printed)
    for condition in parameter.when:
        label = without_condition(parameter.label, condition)
        label = re.sub(r"\(\s*\)|\[\s*\]", " ", label)
        parameter.label = " ".join(label.split()).strip(" ,;:–-()") or parameter.label
        if parameter.word == "other" or not parameter.name.sure:
            from modebook.intake.names import read_name

            again = read_name(parameter.label)
            if again.sure:
                parameter.name, parameter.word, parameter.label = again, again.word or "other", again.label
                parameter.unsure = [u for u in parameter.unsure if "name" not in u.why]


def _context(mode: DraftMode) -> None:
    """What the names of a whole mode tell: letters of a mix, and cyan that is an emitter beside red and
    blue.
    """
    words = {p.word for p in mode.parameters}
    singles = [p for p in mode.parameters if _LETTERS.match(p.label.strip())]
    letters = {p.label.strip()[0].casefold() for p in singles}
    if (
        {"r", "g", "b"} <= letters
        or {"c", "m", "y"} <= letters
        or ({"red", "green", "blue"} <= words and singles)
    ):
        for parameter in singles:
            parameter.unsure = [u for u in parameter.unsure if not u.why.startswith("the name may mean")]
    if {"red", "blue"} <= words and not {"cyan", "magenta", "yellow"} <= words:
        for parameter in mode.parameters:
            if parameter.word in ("cyan", "yellow"):
                parameter.word += "-emitter"
    previous: DraftParameter | None = None
    for parameter in mode.parameters:
        if parameter.word in ("overall-speed", "tempo") and parameter.name.score < 1 and previous is not None:
            speed = f"{previous.word}-speed"
            if speed in PARAMETERS:
                parameter.unsure = [u for u in parameter.unsure if not u.why.startswith("the name may mean")]
                parameter.word = speed
                heads = [head_of(stretch.text) for stretch in parameter.stretches]
                told = any(head and head.word == speed for head in heads)
                if not told and not _only_speed(parameter, previous, mode):
                    parameter.doubt(
                        f"only {parameter.label!r} is printed; it stands behind {previous.label!r}",
                        parameter.entry.printed,
                        speed,
                    )
        previous = parameter


def _only_speed(parameter: DraftParameter, previous: DraftParameter, mode: DraftMode) -> bool:
    """Whether a slot called `Speed` can be of nothing but the programs on the slot just before it: nothing
    else in the mode moves or runs.
    """
    others = [p for p in mode.parameters if p is not parameter and p is not previous]
    moving = any(p.word in ("pan", "tilt", "strobe-mode") or f"{p.word}-speed" in PARAMETERS for p in others)
    running = previous.word in ("macro", "color-macro", "effect", "pixel-effect", "pixel-macro")
    return running and previous.slots[-1] + 1 == parameter.slots[0] and not moving


def _default(parameter: DraftParameter) -> None:
    """Printed defaults: a column, or `(128 = default)` in the text; a coarse byte's alone leaves the fine
    open.
    """
    from modebook.intake.phrases import read_description

    top = 256**parameter.bytes - 1
    columns = [text.strip() for text in parameter.defaults]
    numbers = [int(text) if re.fullmatch(r"\d{1,5}", text) else None for text in columns]
    texts = [parameter.entry.name, *(s.text for s in parameter.stretches), *parameter.entry.remarks]
    told = [said for text in texts if (said := read_description(text).default) is not None]
    label = parameter.label
    beside = read_description(label)
    if beside.default_at:
        parameter.label = (
            " ".join((label[: beside.default_at[0]] + " " + label[beside.default_at[1] :]).split()).strip(
                " ,;()"
            )
            or label
        )
    for text, number in zip(columns, numbers, strict=True):
        if text and number is None and not re.fullmatch(r"[-–—n/a]*", text):
            parameter.doubt(f"the default {text!r} is no value of the slot", text, "no default")
    given = [n for n in numbers if n is not None]
    if not given and told:
        given = told[:1]
        numbers = [told[0], *[None] * (parameter.bytes - 1)]
    if not given:
        return
    if len(numbers) == parameter.bytes and all(n is not None and n <= 255 for n in numbers):
        value = 0
        for n in numbers:
            value = value * 256 + (n or 0)
        parameter.default = value
        return
    first = given[0]
    if parameter.bytes == 1:
        if first <= top:
            parameter.default = first
        else:
            parameter.doubt(f"the default {first} is more than a slot can hold", str(first), "no default")
        return
    wide = any(v.wide or v.pairs for s in parameter.stretches for v in s.values) or first > 255
    if wide and first <= top:
        parameter.default = first
        if first and first <= 255 and not (parameter.span or {}).get("raw"):
            parameter.doubt("the default may count the coarse byte alone", str(first), str(first))
    elif first <= 255:
        parameter.coarse_default = first


def _resolve(mode: DraftMode) -> None:
    """Conditions on slot numbers and names become conditions on the mode's parameters."""
    everything = [*mode.parameters, *(p for _, members in mode.cells for p in members)]
    for parameter in everything:
        found = [_condition(c, mode, parameter, "") for c in parameter.when]
        parameter.when_json = [one for one in found if one is not None]
        for index, conditions in parameter.needs.items():
            made = [
                m for c in conditions if (m := _condition(c, mode, parameter, f"/ranges/{index}")) is not None
            ]
            if made and index < len(parameter.ranges):
                entry = parameter.ranges[index]
                entry["needs"] = made
                in_order(entry)
    _shared_slots(mode)


def _condition(
    condition: ReadCondition, mode: DraftMode, parameter: DraftParameter, below: str
) -> Json | None:
    if condition.given:
        return {"given": condition.given}
    target: DraftParameter | None = None
    if condition.slot is not None:
        holding = [p for p in mode.parameters if condition.slot in p.slots]
        target = holding[0] if holding else None
    else:
        word = name_of(condition)
        named = [p for p in mode.parameters if p.word == word]
        target = named[0] if len(named) == 1 else None
    if target is None or target is parameter:
        parameter.doubt(
            "a condition names a slot or parameter that is not found in this mode",
            condition.printed,
            "left out",
            below,
        )
        return None
    top = 256**target.bytes - 1
    ends = [
        (r["from"], r["to"]) for r in target.ranges if condition.state and r.get("does") == condition.state
    ]
    if condition.state and not ends:
        parameter.doubt(
            f"a condition says {condition.state}, and no range of {target.label or target.word} does",
            condition.printed,
            "left out",
            below,
        )
        return None
    for values in condition.values:
        start, end = values.start, values.end
        if condition.percent or values.form == "percent":
            start, end = (
                (0, 0)
                if end == 0
                else ((top, top) if start == 255 else (start * top // 255, end * top // 255))
            )
        elif target.bytes > 1 and not values.wide:
            factor = 256 ** (target.bytes - 1)
            start, end = (
                (0, 0)
                if (start, end) == (0, 0) and values.single
                else (start * factor, (end + 1) * factor - 1)
            )
        ends.append((start, end))
    if any(end > top for _, end in ends):
        parameter.doubt(
            "a condition's value does not fit into the slot", condition.printed, "left out", below
        )
        return None
    name = target.key or target.word
    if len(ends) == 1:
        return {"parameter": name, "from": ends[0][0], "to": ends[0][1]}
    return {"parameter": name, "any_of": [{"from": a, "to": b} for a, b in ends]}


def _shared_slots(mode: DraftMode) -> None:
    """Two parameters on one slot need conditions; without, they are doubtful."""
    seen: dict[int, DraftParameter] = {}
    for parameter in mode.parameters:
        for slot in parameter.slots:
            other = seen.get(slot)
            parted = other is not None and bool(other.when_json) and bool(parameter.when_json)
            told = any(u.why.startswith("another parameter") for u in parameter.unsure)
            if other is not None and not parted and not told:
                parameter.doubt(
                    f"another parameter stands on slot {slot} as well, and no condition parts them",
                    f"{other.entry.printed} / {parameter.entry.printed}",
                    "both",
                )
            seen[slot] = parameter


def _footprint(mode: DraftMode) -> None:
    used: set[int] = set()
    for parameter in mode.parameters:
        used.update(parameter.slots)
    for cells, members in mode.cells:
        for number in range(cells["count"]):
            base = cells["first"] - 1 + number * cells["stride"]
            used.update(slot + base for member in members for slot in member.slots)
    highest = max(used, default=0)
    printed = mode.printed_footprint
    mode.footprint = printed if printed is not None and printed >= highest else highest
    missing = [slot for slot in range(1, mode.footprint + 1) if slot not in used]
    if printed is not None and printed < highest:
        mode.unsure.append(
            Unsure(
                f"the heading says {printed} slots, the rows go to slot {highest}",
                f"{printed}",
                f"{highest}",
                "/footprint",
                mode.place,
            )
        )
    if missing:
        shown = _runs(missing)
        mode.unsure.append(
            Unsure(
                f"nothing was read for slot{'s' if len(missing) > 1 else ''} {shown}",
                "",
                "nothing",
                "",
                mode.place,
                tuple(missing[:64]),
            )
        )


def _runs(numbers: list[int]) -> str:
    pieces: list[str] = []
    start = end = numbers[0]
    for number in [*numbers[1:], -1]:
        if number == end + 1:
            end = number
            continue
        pieces.append(str(start) if start == end else f"{start}-{end}")
        start = end = number
    return ", ".join(pieces)
