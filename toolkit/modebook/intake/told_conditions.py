"""Reads sentences below a chart that tell when a slot works, and gives its parameter that condition."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cache

from modebook.intake.conditions import ReadCondition, read_conditions
from modebook.intake.drafts import DraftMode, DraftParameter
from modebook.intake.grid import Line
from modebook.intake.lexicon import phrases
from modebook.intake.values import Values

_AND = r"\s*(?:,|and|und|et|y|e|&|\+|to|bis|à|a|hasta|-|–)\s*"
_NOTE = (
    r"(?:notes?|n\.?b\.?|important|attention|remark|hinweis|anmerkung|achtung|remarque|nota|importante|attenzione)"
    r"\s*[:.!–-]\s*"
)
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
def _subjects() -> tuple[re.Pattern[str], ...]:
    """Sentences whose subject is a slot: it comes first, or behind what must be the case."""
    words, when = _any("slotword"), _any("when")
    slots = (
        rf"(?:the\s|der\s|die\s|das\s|le\s|la\s|les\s|los\s|el\s|il\s|i\s)?\s*(?:{words}|kanäle|kanälen)\s+"
        rf"(?P<slots>\d{{1,3}}(?:{_AND}\d{{1,3}})*)"
    )
    return (
        re.compile(rf"^(?:{_NOTE})?{slots}\s+(?P<rest>[^\W\d].*)$", re.IGNORECASE),
        re.compile(
            rf"^(?:{_NOTE})?(?P<cond>(?:only\s+|nur\s+|solo\s+|seulement\s+)?(?:{when})\b.*?\d.*?)\s*[,:;]?\s+"
            rf"(?:does\s+|wirkt\s+|wirken\s+)?{slots}\s+(?P<rest>[^\W\d].*)$",
            re.IGNORECASE,
        ),
    )


def _any(subject: str) -> str:
    return "|".join(re.escape(p) for p in sorted(phrases("phrases", subject), key=len, reverse=True) if p)


@dataclass(frozen=True, slots=True)
class Told:
    """What a sentence says: of which slots, and in which words when they work."""

    slots: str
    when: str
    rest: str


def _read(text: str) -> Told | None:
    for pattern in _subjects():
        found = pattern.match(text)
        if found:
            parts = found.groupdict()
            return Told(parts["slots"], parts.get("cond") or parts["rest"], parts["rest"])
    return None


def tells_when(text: str) -> bool:
    """Whether a line is a sentence that says when slots work: `Slot 5 works only while slot 4 is at 9.`"""
    told = _read(text) if len(text.split()) > 5 else None
    if told is None or (_OF_MODES.search(told.when) and not read_conditions(told.when)):
        return False  # `Slot 7 is used only in the long mode` is what its table says
    return bool(_WORKS.search(told.rest) and _ONLY.search(told.when))


def apply_told(mode: DraftMode, lines: Sequence[Line], *, alone: bool) -> None:
    """Give the parameters of a mode the conditions that lines below its chart tell of their slots. What is
    not understood is doubted, so that it is not lost, and so is all where other modes may be meant.
    """
    for line in lines:
        told = _read(line.text)
        if told is None:
            continue
        conditions = _upward(told.when, read_conditions(told.when))
        for number in _slots(told.slots):
            for parameter in (p for p in mode.parameters if number in p.slots):
                _give(parameter, conditions, line, clear=alone and not _DENIED.search(told.rest))


def _slots(text: str) -> list[int]:
    numbers = [int(n) for n in re.findall(r"\d+", text)]
    run = len(numbers) == 2 and re.search(r"-|–|\b(?:to|bis|à|a|hasta)\b", text, re.IGNORECASE)
    return list(range(numbers[0], numbers[1] + 1)) if run and numbers[0] < numbers[1] else numbers


def _upward(text: str, conditions: tuple[ReadCondition, ...]) -> tuple[ReadCondition, ...]:
    """The conditions, with `128 or more` as what it is: 128 to the top."""
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
