"""Reads conditions: when slot 5 is 0-99; dimmer at 0 and strobe at 255; wenn Kanal 5 = 10-19."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache, lru_cache

from modebook.intake.lexicon import SURE, exact, phrases
from modebook.intake.names import read_name
from modebook.intake.values import Values, read_values


@dataclass(frozen=True, slots=True)
class ReadCondition:
    """One condition as printed: on a slot's number or a parameter's name, or a state in words."""

    printed: str
    slot: int | None = None
    name: str | None = None
    values: tuple[Values, ...] = ()
    percent: bool = False
    given: str | None = None
    state: str | None = None
    """What the named parameter does then, `closed` or `open`, where no values are printed."""


_BETWEEN_NUMBERS = (
    r"(?:(?<=between )|(?<=zwischen )|(?<=entre )|(?<=tra )|(?<=fra ))"
    r"\d{1,5}\s*%?\s+(?:and|und|et|y|e)\s+\d{1,5}(?:\s*%)?(?!\d)"
)
_NUMBERS = (
    rf"(?:{_BETWEEN_NUMBERS}|"
    r"\d{1,5}(?:\s*(?:-|–|—|\.\.+|…|to|bis|à|a|hasta)\s*\d{1,5})?(?:\s*%)?"
    r"(?!\d)(?!\s*(?:s|sec|sek|hz|k|ms)\b)(?!\s*°))"
)
_COUNTED = re.compile(
    r"\b(?:from|von|de|du|desde|da|dal|no\.?|nr\.?)\s+\d{1,3}\s+(?:to|bis|a|au|al|hasta)\s+\d{1,3}\b",
    re.IGNORECASE,
)
_OF_SEVERAL = re.compile(r"\s\d{1,3}\s+a\s+\d{1,3}$", re.IGNORECASE)
"""`Gobos 1 à 6` are six: only with a word for a condition does gobo 1 stand at 6."""
_BETWEEN = re.compile(
    r"\b(between|zwischen|entre|tra|fra)\s+(\d{1,5}\s*%?)\s+(?:and|und|et|y|e)\s+(\d{1,5})(?!\d)",
    re.IGNORECASE,
)
_AND = re.compile(r"\s*(?:,|;|\band\b|\bund\b|\bet\b|\by\b|\be\b|&)\s*", re.IGNORECASE)


def _any(subject: str) -> str:
    ordered = sorted(phrases("phrases", subject), key=len, reverse=True)
    return "|".join(re.escape(phrase) for phrase in ordered if phrase)


@cache
def _on_slot() -> re.Pattern[str]:
    when, slot = _any("when"), _any("slotword")
    at = "|".join((_any("at"), "=", ":", "@"))
    return re.compile(
        rf"(?:\b(?P<when>{when})\b\s*)?(?:\b(?:the|le|la|el|il|der|den|dem)\s+)?\b(?:{slot})(?:\b\.?\s*#?|(?=\d))(?P<slots>\d{{1,3}}(?:\s*(?:,|and|und|et|y|e|&|\+)\s*\d{{1,3}}(?!\d))*)"
        rf"\s*(?:\((?P<called>[^)]*)\)\s*)?(?:(?P<at>{at})\s*)*(?:(?:value|wert|valeur|valor|valore)s?\s*)?(?P<values>{_NUMBERS}(?:\s*(?:or|oder|ou|o)\s*{_NUMBERS})*)",
        re.IGNORECASE,
    )


def _names_at() -> frozenset[str]:
    return phrases("phrases", "at") - {"in", "en", "from", "has", "on", "auf", "da"}


@cache
def _on_name() -> re.Pattern[str]:
    at_name = "|".join(re.escape(p) for p in sorted(_names_at(), key=len, reverse=True) if p)
    return re.compile(
        rf"(?:\b(?P<when>{_any('when')})\b\s*)?(?P<name>[^\W\d][\w/' .-]{{0,40}}?)\s*"
        rf"(?:(?:\b(?:{at_name})|=|:|@)(?:\s|(?=\d)))+"
        rf"(?:(?:value|wert|valeur|valor|valore)s?\s*)?(?P<values>{_NUMBERS})",
        re.IGNORECASE,
    )


_STATES = {
    "closed": "closed|shut|geschlossen|ferme|fermee|cerrado|cerrada|chiuso|chiusa",
    "open": "open|opened|offen|geoffnet|ouvert|ouverte|abierto|abierta|aperto|aperta",
}
_STATE = re.compile(rf"\b(?:{'|'.join(_STATES.values())})\b", re.IGNORECASE)


_BESIDE = frozenset({"with", "mit", "avec", "con", "bei", "needs", "requires"})
"""`Strobe with shutter open` says how, and is no condition."""


@cache
def _on_state() -> re.Pattern[str]:
    """`only when the shutter is closed`, `shutter must be closed (0-3)`."""
    return re.compile(
        rf"(?:\b(?P<when>{_any('when')})\b\s*)?(?:\b(?:the|der|die|das|le|la|el|il|lo)\s+|\bl')?"
        r"(?P<name>[^\W\d][\w/ -]{0,30}?)\s+"
        r"(?:(?P<must>must be|has to be|needs to be|muss|doit etre|debe estar|deve essere)\s+|"
        r"(?:is|ist|est|esta|e)\s+)?"
        rf"(?P<state>{_STATE.pattern})(?:\s*\(\s*(?P<values>{_NUMBERS})\s*\))?",
        re.IGNORECASE,
    )


def _states(flat: str) -> list[ReadCondition]:
    """The conditions of a text on what a parameter does."""
    found: list[ReadCondition] = []
    for match in _on_state().finditer(flat):
        when = (match["when"] or "").casefold()
        if not (match["must"] or (when and when not in _BESIDE)) or not read_name(match["name"]).sure:
            continue
        values = _values(match["values"]) if match["values"] else ()
        state = next(one for one, words in _STATES.items() if re.fullmatch(words, match["state"].casefold()))
        found.append(
            ReadCondition(match[0].strip(), None, match["name"], values, state=None if values else state)
        )
    return found


@cache
def _when_inside() -> re.Pattern[str]:
    return re.compile(rf"\s(?:{_any('when')})\s", re.IGNORECASE)


@cache
def _given() -> re.Pattern[str]:
    return re.compile(rf"\b(?:{_any('when')})\b\s*(?P<state>.*\b(?:{_any('menu')})\b.*)", re.IGNORECASE)


@cache
def _opening(subject: str) -> frozenset[str]:
    """The first words of a subject's phrases: a text that has none of them has none of the phrases."""
    listed = _names_at() if subject == "at" else phrases("phrases", subject)
    return frozenset(first[0] for phrase in listed if (first := re.findall(r"\w+", phrase)))


@lru_cache(maxsize=8_000)
def read_conditions(text: str) -> tuple[ReadCondition, ...]:
    """The conditions that a text prints; empty if it prints none."""
    flat = " ".join(text.split())
    if (
        not any(letter.isdigit() for letter in flat)
        and not any(word in flat.casefold() for word in ("menu", "menü", "menú", "display"))
        and not _STATE.search(flat)
    ):
        return ()
    from modebook.intake.compounds import FACETS
    from modebook.intake.phrases import _plain

    # How many facets a prism has is no value that it stands at.
    flat = FACETS.sub(" ", _plain(flat))
    # `Macro da 1 a 20` counts macros; nothing stands at 20.
    flat = _COUNTED.sub(" ", flat)
    # The patterns are large: each is made only for a text that has the words that it looks for.
    lower = flat.casefold()
    words = set(re.findall(r"\w+|[^\W\d_]+", lower)) | set(re.findall(r"[^\W\d_]+(?=\d)", lower))
    found: list[ReadCondition] = []
    taken: list[tuple[int, int]] = []
    for match in _on_slot().finditer(flat) if words & _opening("slotword") else ():
        if match["when"] is None and match["at"] is None:
            continue
        values = _values(match["values"])
        if not values:
            continue
        for number in re.findall(r"\d+", match["slots"]):
            found.append(
                ReadCondition(match[0].strip(), int(number), match["called"], values, "%" in match["values"])
            )
        taken.append(match.span())
    named = any(sign in lower for sign in ("=", ":", "@", *_opening("at")))
    # `between 10 and 99` is one stretch, not two values.
    pieces = _AND.split(_BETWEEN.sub(r"\1 \2-\3", _without(flat, taken))) if named else []
    for piece in pieces:
        for inner in re.split(r"[()\[\]]", piece):
            beside = _on_name().search(inner)
            if not beside:
                continue
            name = beside["name"].strip()
            # What is needed stands behind the word for it: Reset if dimmer at 0.
            inside = list(_when_inside().finditer(name))
            name = name[inside[-1].end() :].strip() if inside else name
            if not beside["when"] and _OF_SEVERAL.search(beside[0]):
                continue
            told = read_name(name)
            if not (told.sure or (exact(name) and beside["when"])) or told.word == "reserved":
                continue
            values = _values(beside["values"])
            if values:
                found.append(ReadCondition(beside[0].strip(), None, name, values, "%" in beside["values"]))
    if not found and _STATE.search(flat):
        found.extend(_states(flat))
    if not found and words & _opening("menu"):
        state = _given().search(flat)
        if state:
            found.append(ReadCondition(state[0].strip(), given=state[0].strip(" ()[].")))
    return tuple(found)


def _values(text: str) -> tuple[Values, ...]:
    parts = [part for part in re.split(r"\b(?:or|oder|ou|o)\b", text, flags=re.IGNORECASE) if part.strip()]
    read = [read_values(re.sub(r"\s(?:and|und|et|y|e)\s", "-", part.strip())) for part in parts]
    return tuple(value for one in read for value in one) if all(read) else ()


def _without(text: str, taken: list[tuple[int, int]]) -> str:
    for start, end in reversed(taken):
        text = text[:start] + " , " + text[end:]
    return text


def name_of(condition: ReadCondition) -> str | None:
    """The vocabulary's word for the parameter that a condition names."""
    if condition.name is None:
        return None
    told = read_name(condition.name)
    return told.word if told.score >= SURE else None


def without_condition(text: str, condition: ReadCondition) -> str:
    """A text without a condition that was read from it, whatever accents and signs it is printed with."""
    from modebook.intake.phrases import _plain

    letters = [(plain, index) for index, letter in enumerate(text) for plain in _plain(letter)]
    at = "".join(plain for plain, _ in letters).find(condition.printed)
    if at < 0 or not condition.printed:
        return text
    start, end = letters[at][1], letters[at + len(condition.printed) - 1][1] + 1
    return f"{text[:start]} {text[end:]}"


def opened(text: str) -> bool:
    """Whether a text begins with a word for a condition: `only if`, `wenn`."""
    return re.match(rf"(?:{_any('when')})\b", text, re.IGNORECASE) is not None


_WEAK = frozenset({"with", "mit", "avec", "con", "bei", "needs", "requires"})
"""Words for a condition that mostly say by what something is done: `set with channel 9`."""


def half_a_condition(text: str) -> bool:
    """Whether a text begins a condition on a slot, as far as its words tell."""
    words = "|".join(
        re.escape(word) for word in sorted(phrases("phrases", "when") - _WEAK, key=len, reverse=True)
    )
    pattern = rf"\b(?:{words})\b\s+(?:the\s+)?\b(?:{_any('slotword')})(?:\b|(?=\d))"
    return re.search(pattern, text, re.IGNORECASE) is not None
