"""Ranges that change a setting: which setting and choice they name, and the settings that come of it."""

from __future__ import annotations

import re

from modebook.documents.base import slug
from modebook.intake.drafts import DraftParameter, Json
from modebook.intake.folding import fold
from modebook.intake.lexicon import SURE, exact, phrases

_KINDS = {
    "smoothing": "smoothing",
    "dimmer-curve": "dimmer-curve",
    "fan": "fan",
    "fan-mode": "fan",
    "modulation-frequency": "modulation-frequency",
}
"""Parameters of the synonyms that are settings where a range of a control slot names them."""
_HOLDERS = frozenset(
    {
        "control",
        "smoothing",
        "dimmer-curve",
        "fan-mode",
        "other",
        "reset",
        "output-mode",
        "modulation-frequency",
    }
)
_SMOOTHING_HEADS = frozenset(
    {
        "dimming",
        "dimmer",
        "dimmverhalten",
        "dimmen",
        "gradation",
        "dimmeraggio",
        "dimming mode",
        "dimmer mode",
    }
)
"""Heads that mean smoothing only where the choice is one of speed or softness."""
_SOFT = re.compile(
    r"\b(smooth\w*|sharp|soft|fast|slow|snap|medium|film|cine\w*|instant|immediate\w*|direct|hart|weich|schnell|langsam|direkt|mittel|doux|lent|rapide|lisse\w*|moyen|suave|lento|rapido|directo|medio|morbido|diretto|immediat\w*|keep|steep|gentle|standard|off|long|short|glide|lag\w*)\b"
)
_PACKETS = re.compile(
    r"(?P<n>\d{1,4})\s*(?:dmx[\s-]*)?(?:packets?|pakete?n?|paquets?|paquetes?|pacchetti|pacchetto|updates?)\b",
    re.IGNORECASE,
)
_SECONDS = re.compile(
    r"(?P<n>\d+(?:[.,]\d+)?)\s*(?P<unit>ms|milliseconds?|s|sec|seconds?|sek\w*|secondes?|segundos?|secondi)\b",
    re.IGNORECASE,
)


class Settings:
    """The settings that a document's ranges name, in the order in which they come up."""

    def __init__(self) -> None:
        self.found: dict[str, Json] = {}

    def read(self, parameter: DraftParameter) -> None:
        """Give the ranges of a parameter their `sets`, and remember setting and choice."""
        if parameter.word not in _HOLDERS:
            return
        for entry in parameter.ranges:
            if entry.get("does") in ("nothing", "as-menu", "unchanged", "closed") or "hazard" in entry:
                continue
            named = _named(parameter, str(entry["meaning"]))
            if named is None:
                continue
            kind, label, choice = named
            key = self._choice(kind, label, choice)
            if key:
                entry.setdefault("sets", {})[kind] = key
                in_order(entry)

    def _choice(self, kind: str, label: str, choice: str) -> str | None:
        key = slug(choice)[:80]
        if not key:
            return None
        setting = self.found.setdefault(
            kind, {"key": kind, "setting": kind, **({"label": label} if label else {}), "choices": []}
        )
        if all(known["key"] != key for known in setting["choices"]):
            made: Json = {"key": key, "label": choice}
            length = _length(choice) if kind == "smoothing" else None
            if length:
                made["length"] = length
            setting["choices"].append(made)
        return key

    def to_json(self, source: str) -> list[Json]:
        """The settings as the document writes them."""
        return [{**setting, "source": source} for setting in self.found.values()]


def in_order(entry: Json) -> None:
    """Put the keys of a range into the models' order."""
    order = (
        "from",
        "to",
        "meaning",
        "parameter",
        "key",
        "does",
        "span",
        "position",
        "sets",
        "hold_s",
        "kept",
        "needs",
        "hazard",
        "for",
        "snap",
        "source",
        "note",
    )
    for key in sorted(entry, key=order.index):
        entry[key] = entry.pop(key)


def _named(parameter: DraftParameter, meaning: str) -> tuple[str, str, str] | None:
    """Kind of setting, its printed label, and the choice that a range names; None where it names none."""
    if parameter.word in _KINDS and parameter.word != "fan":
        kind = _KINDS[parameter.word]
        head, choice = _parted(meaning)
        if head and _kind(head, choice) == kind:
            return kind, head, choice
        return kind, parameter.label, meaning
    head, choice = _parted(meaning)
    if not head or not choice:
        return None
    found = _kind(head, choice)
    return (found, head, choice) if found else None


def _parted(meaning: str) -> tuple[str, str]:
    """A meaning as the setting's name and the choice: at a colon or dash, else where a known name ends."""
    for sign in (":", " – ", " - ", " = "):
        head, mark, rest = meaning.partition(sign)
        if mark and head.strip() and rest.strip():
            return head.strip(), rest.strip()
    words = meaning.split()
    for length in range(min(len(words) - 1, 4), 0, -1):
        head = " ".join(words[:length])
        known = exact(head)
        if known and known.score >= SURE and known.word in _KINDS:
            return head, " ".join(words[length:]).strip("()")
    # Off and on may come first or stand alone behind: Smoothing off.
    return "", ""


def _kind(head: str, choice: str) -> str | None:
    known = exact(head)
    form = fold(choice)
    if known and known.score >= 0.8 and known.word in _KINDS:
        if known.word == "fan" and re.fullmatch(r"\d.*", form):
            return None
        return _KINDS[known.word]
    if fold(head) in _SMOOTHING_HEADS and _SOFT.search(form):
        return "smoothing"
    return None


def _length(choice: str) -> Json | None:
    """The length that a choice prints: packets or seconds; 0 only where it says so itself."""
    packets = _PACKETS.search(choice)
    if packets:
        return {"packets": int(packets["n"])}
    seconds = _SECONDS.search(choice)
    if seconds:
        value = float(seconds["n"].replace(",", "."))
        value = value / 1000 if seconds["unit"].casefold().startswith(("ms", "milli")) else value
        return {"seconds": int(value) if value.is_integer() else value}
    if fold(choice) in phrases("phrases", "off"):
        return {"packets": 0}
    return None
