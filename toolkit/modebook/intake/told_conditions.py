"""Reads sentences below a chart that tell when a slot works, and gives its parameter that condition."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache

from modebook.intake.conditions import ReadCondition, read_conditions
from modebook.intake.drafts import DraftMode, DraftParameter
from modebook.intake.grid import Line
from modebook.intake.lexicon import phrases
from modebook.intake.values import Values

_AND = r"\s*(?:,|and|und|et|y|e|&|\+|to|bis|à|a|hasta|-|–)\s*"
_WORKS = re.compile(
    r"\b(?:works?|acts?|active|effect|effective|responds?|reacts?|functions?|used|valid|available|applies|apply|"
    r"wirk(?:t|en)|wirksam|aktiv|reagier(?:t|en)|funktionier(?:t|en)|gilt|gelten|"
    r"agi(?:t|ssent)|actifs?|active|effet|fonctionn(?:e|ent)|réagi(?:t|ssent)|"
    r"actúan?|activos?|activa|efecto|funcionan?|responden?|"
    r"agiscono?|agisce|attiv[oi]|effetto|funzionan?o?|risponde)\b",
    re.IGNORECASE,
)
_ONLY = re.compile(
    r"\b(?:only|nur|seulement|uniquement|solo|sólo|solamente|únicamente|soltanto|when|while|wenn|solange|quand|"
    r"lorsque|si|cuando|mientras|quando|se|finché)\b",
    re.IGNORECASE,
)
_DENIED = re.compile(
    r"\b(?:no|not|never|ignored?|inactive|disabled|without|kein\w*|nicht|ohne|inaktiv|pas|aucun\w*|sans|inactifs?|sin|"
    r"ningún|inactivos?|non|nessun\w*|senza|inattiv\w)\b",
    re.IGNORECASE,
)
_OF_MODES = re.compile(
    r"\b(?:mode|modus|modi|betriebsart|modo|modos|modalità|versions?|firmware)\b", re.IGNORECASE
)
_UPWARD = re.compile(
    r"^\s*(?:or|oder|ou|o|and|und|et|y|e)\s+(?:more|above|higher|up|mehr|höher|darüber|plus|au-dessus|más|superior|più|oltre)\b",
    re.IGNORECASE,
)


@cache
def _subject() -> re.Pattern[str]:
    words = "|".join(re.escape(p) for p in sorted(phrases("phrases", "slotword"), key=len, reverse=True))
    plain = rf"(?:{words}|kanäle|kanälen)"
    return re.compile(
        rf"^(?:[^\W\d]+\s?:\s*)?(?:the|der|die|das|le|la|les|los|el|il|i)?\s*{plain}\s+(?P<slots>\d{{1,3}}(?:{_AND}\d{{1,3}})*)\s+(?P<rest>[^\W\d].*)$",
        re.IGNORECASE,
    )


def tells_when(text: str) -> bool:
    """Whether a line is a sentence that says when slots work: `Slot 5 works only while slot 4 is at 9.`"""
    found = _subject().match(text)
    if found is None or len(text.split()) < 6:
        return False
    rest = found["rest"]
    if _OF_MODES.search(rest) and not read_conditions(rest):
        return False  # `Slot 7 is used only in the long mode` is what its table says
    return bool(_WORKS.search(rest) and _ONLY.search(rest))


def apply_told(mode: DraftMode, lines: Sequence[Line], *, alone: bool) -> None:
    """Give the parameters of a mode the conditions that lines below its chart tell of their slots. What is
    not understood is doubted, so that it is not lost, and so is all where other modes may be meant.
    """
    for line in lines:
        found = _subject().match(line.text)
        if found is None:
            continue
        conditions = _upward(found["rest"], read_conditions(found["rest"]))
        for number in _slots(found["slots"]):
            for parameter in (p for p in mode.parameters if number in p.slots):
                _give(parameter, conditions, line, clear=alone and not _DENIED.search(found["rest"]))


def _slots(text: str) -> list[int]:
    numbers = [int(n) for n in re.findall(r"\d+", text)]
    run = len(numbers) == 2 and re.search(r"-|–|\b(?:to|bis|à|a|hasta)\b", text, re.IGNORECASE)
    return list(range(numbers[0], numbers[1] + 1)) if run and numbers[0] < numbers[1] else numbers


def _upward(text: str, conditions: tuple[ReadCondition, ...]) -> tuple[ReadCondition, ...]:
    """The conditions, with `128 or more` as what it is: 128 to the top."""
    from dataclasses import replace

    if len(conditions) != 1 or len(conditions[0].values) != 1 or not conditions[0].values[0].single:
        return conditions
    value: Values = conditions[0].values[0]
    behind = re.split(rf"\b{value.start}\b", text)[-1]
    if not _UPWARD.match(behind):
        return conditions
    return (replace(conditions[0], values=(replace(value, end=255, single=False),)),)


def _give(
    parameter: DraftParameter, conditions: tuple[ReadCondition, ...], line: Line, *, clear: bool
) -> None:
    others = tuple(c for c in conditions if c.slot is None or c.slot not in parameter.slots)
    if not clear or not others:
        parameter.doubt(
            "a line below the chart tells when this works, and is not sure", line.text, "left out"
        )
        return
    known = {(c.slot, c.name, c.values) for c in parameter.when}
    parameter.when.extend(c for c in others if (c.slot, c.name, c.values) not in known)
