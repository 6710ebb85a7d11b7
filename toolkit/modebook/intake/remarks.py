"""What stands beside a parameter and is of all of it: notes, a hold, a condition on its one row."""

from __future__ import annotations

import re

from modebook.intake.conditions import half_a_condition, opened, read_conditions
from modebook.intake.descriptions import Description, describe
from modebook.intake.drafts import DraftParameter
from modebook.intake.folding import fold
from modebook.intake.names import DESCRIBING
from modebook.intake.phrases import read_description
from modebook.intake.setting_ranges import in_order

_TELLING = 4  # words beside a figure that make it a sentence, not a measure


def note_remarks(parameter: DraftParameter, remarks: list[Description]) -> None:
    """Words beside a parameter that went nowhere else are kept as a note."""
    told = [
        r.printed
        for r in remarks
        if not (
            r.spans
            or r.needs
            or r.said.raw
            or r.said.default_at
            or r.said.hold_s is not None
            or (r.singles and len(re.findall(r"[^\W\d_]{3,}", r.printed)) < _TELLING)
        )
    ]
    told += [parameter.name.rest] if _unused(parameter) else []
    words = [text for text in told if re.search(r"[^\W\d_]{3,}", text)]
    if words and parameter.note is None:
        parameter.note = "; ".join(words)


def _unused(parameter: DraftParameter) -> bool:
    """Whether what follows a name says more than how its values run."""
    rest = parameter.name.rest
    if not rest or parameter.when or describe(rest).spans or describe(rest).said.default_at:
        return False
    return not all(DESCRIBING.fullmatch(word) for word in fold(rest).split())


def half_told(parameter: DraftParameter, text: str, printed: str, index: int) -> None:
    """A doubt where the words beside a range begin a condition that was not understood."""
    if not read_conditions(text) and half_a_condition(text):
        parameter.doubt(
            "a condition seems to be printed, and was not understood", printed, below=f"/ranges/{index}"
        )


def hold_all(parameter: DraftParameter, remarks: list[Description]) -> None:
    """A hold that a footnote tells of the name is of each of its ranges that does something."""
    told = {read_description(remark.printed).hold_s for remark in remarks}
    times = {hold_s for hold_s in told if hold_s is not None}
    if len(times) != 1 or not parameter.ranges:
        return
    (hold_s,) = times
    for entry in parameter.ranges:
        if entry.get("does") != "nothing":
            entry.setdefault("hold_s", int(hold_s) if float(hold_s).is_integer() else hold_s)
            in_order(entry)


def ruled_by(parameter: DraftParameter, description: Description) -> None:
    """The condition beside the one row of a parameter is the parameter's: `0-100 % (only if slot 5 = 0)`."""
    known = {(one.slot, one.name, one.values) for one in parameter.when}
    for one in description.needs:
        own = one.slot is not None and one.slot in parameter.slots
        every = any(value.start == 0 and value.end in (255, 65535) for value in one.values)
        if (
            not own
            and not every
            and (one.slot is not None or opened(one.printed))
            and (one.slot, one.name, one.values) not in known
        ):
            parameter.when.append(one)
