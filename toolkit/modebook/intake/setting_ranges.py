"""Ranges that change a setting: which setting and choice they name, and the settings that come of it."""

from __future__ import annotations

import re

from modebook.documents.base import slug
from modebook.intake.drafts import DraftParameter, Json
from modebook.intake.folding import fold
from modebook.intake.lexicon import SURE, Found, exact, phrases
from modebook.words.families import Family

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
_AXES: tuple[tuple[Family, re.Pattern[str]], ...] = (
    ("movement", re.compile(r"\b(movement|pan|tilt|bewegung\w*|mouvement|movimient\w*|movimento)\b")),
    ("color", re.compile(r"\b(colou?rs?|farb\w*|couleurs?|colore|colori)\b")),
    ("intensity", re.compile(r"\b(dimmer|intensity|intensitat|intensite|intensidad|intensita)\b")),
)
"""What a smoothing acts on, where its name says so."""
_MOVED = (
    ("color", re.compile(r"\b(?:colou?r|farb|couleur|colore)")),
    ("gobo", re.compile(r"\bgobo")),
    ("wheel", re.compile(r"\b(?:wheel|rad|roue|rueda|ruota)")),
)
"""Which wheel a light goes out for; for a head where none is named."""
_PACKETS = re.compile(
    r"(?P<n>\d{1,4})\s*(?:dmx[\s-]*)?(?:packets?|pakete?n?|paquets?|paquetes?|pacchetti|pacchetto|updates?)\b",
    re.IGNORECASE,
)
_SECONDS = re.compile(
    r"(?P<n>\d+(?:[.,]\d+)?)\s*(?P<unit>ms|milliseconds?|s|sec|seconds?|sek\w*|secondes?|segundos?|secondi)\b",
    re.IGNORECASE,
)

_NONE = frozenset(("none", "keine", "kein", "aucun", "aucune", "ninguno", "ninguna", "nessuno", "nessuna"))
_NO = r"(?:no|not|without|disabled?|enabled?|kein|ohne|mit|sans|pas de|avec|sin|con|senza|nessun)"
_DARK = re.compile(
    rf"(?P<choice>(?:{_NO}\s+)?(?:black\s?-?out|dunkel|noir|apag[oó]n|oscuramento|buio))\s+"
    r"(?P<when>(?:while|when|during|on|in|at|by|bei|während|pendant|lors|au|durante|mentre|en|al|nel)\b"
    r".*?(?:mov|mouv|travel|chang|beweg|fahr|wechsel|cambi).*?)(?:\s*[:=]\s*(?P<to>\w+)|\s+(?P<last>on|off))?",
    re.IGNORECASE,
)
"""The light goes out, or does not, while something moves: `No blackout while the head moves`."""


class Settings:
    """The settings that a document's ranges name, in the order in which they come up."""

    def __init__(self) -> None:
        self.found: dict[str, Json] = {}

    def read(self, parameter: DraftParameter) -> None:
        """Give the ranges of a parameter their `sets`, and remember setting and choice."""
        if parameter.word not in _HOLDERS:
            return
        for entry in parameter.ranges:
            if parameter.word in ("smoothing", "dimmer-curve") and fold(entry["meaning"]) in _NONE:
                # Where one setting is chosen, none of it is a choice and not an idle range.
                entry.pop("does", None)
            if entry.get("does") in ("nothing", "as-menu", "unchanged", "closed") or "hazard" in entry:
                continue
            named = _named(parameter, str(entry["meaning"]))
            if named is None:
                continue
            kind, label, choice = named
            setting = self._setting(kind, label)
            key = self._choice(setting, choice)
            if key:
                entry.setdefault("sets", {})[setting["key"]] = key
                in_order(entry)

    def _setting(self, kind: str, label: str) -> Json:
        """The setting of a kind; smoothings whose names say what they act on are told apart by that."""
        axis = _axis(label) if kind == "smoothing" else None
        name = f"{kind}-{axis}" if axis in ("movement", "color") else kind
        if kind == "blackout-on-move":
            # Heads and wheels have settings of their own.
            moved = next((what for what, said in _MOVED if said.search(fold(label))), "")
            name = f"{kind}-{moved}" if moved else kind
        acts_on = {"acts_on": [axis]} if axis in ("movement", "color") else {}
        told = {"label": label} if label else {}
        return self.found.setdefault(name, {"key": name, "setting": kind, **told, **acts_on, "choices": []})

    def _choice(self, setting: Json, choice: str) -> str | None:
        key, kind = slug(choice)[:80], setting["setting"]
        if not key:
            return None
        if all(known["key"] != key for known in setting["choices"]):
            made: Json = {"key": key, "label": choice}
            length = _length(choice) if kind == "smoothing" else None
            if length:
                made["length"] = length
            setting["choices"].append(made)
        return key

    def to_json(self, source: str) -> list[Json]:
        """The settings as the document writes them."""
        return [{**one, "source": source} for one in self.found.values() if one["choices"]]


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
    dark = _DARK.fullmatch(meaning)
    if dark is not None and parameter.word == "control":
        end = dark["to"] or dark["last"]
        choice = f"{dark['choice']} {end}" if end else dark["choice"]
        return "blackout-on-move", dark["when"].strip(" :="), choice
    if parameter.word in _KINDS and parameter.word != "fan":
        kind = _KINDS[parameter.word]
        head, choice = _parted(meaning)
        if head and _kind(head, choice) == kind:
            return kind, head, choice
        label = parameter.label
        if meaning.casefold().startswith(f"{label} ".casefold()):
            meaning = meaning[len(label) :].strip(" :=–-")
        return kind, label, meaning
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
        known = _known(head)
        if known and known.score >= SURE and known.word in _KINDS:
            choice = " ".join(words[length:])
            return head, choice[1:-1] if re.fullmatch(r"\([^()]*\)", choice) else choice
    # Off and on may come first or stand alone behind: Smoothing off.
    return "", ""


def _known(head: str) -> Found | None:
    """The word of a setting's name, what it acts on left aside: `Movement smoothing`."""
    found = exact(head)
    if found is not None:
        return found
    form = fold(head)
    rest = " ".join(re.sub(pattern, " ", form) for _, pattern in _AXES if pattern.search(form))
    found = exact(" ".join(rest.split())) if rest.strip() else None
    return found if found is not None and found.word == "smoothing" else None


def _axis(label: str) -> Family | None:
    """What the name of a smoothing says that it acts on."""
    form = fold(label)
    return next((axis for axis, pattern in _AXES if pattern.search(form)), None)


def _kind(head: str, choice: str) -> str | None:
    known = _known(head)
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
