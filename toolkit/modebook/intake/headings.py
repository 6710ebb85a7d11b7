"""Reads headings: a mode's title with its number and footprint, a slot's heading, a footnote."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from modebook.intake.folding import fold
from modebook.intake.lexicon import phrases
from modebook.intake.names import read_name

_MODE = (
    r"(?:dmx[\s-]*)?(?:mode|modus|modo|modalità|modalita|betriebsart|personality|betriebsmodus|kanalmodus|"
    r"profile?)"
)
_SLOTS = (
    r"(?:dmx[\s-]*)?(?:channels?|chan|ch|slots?|kanäle?n?|kanaele|kanal|kan|canaux|canal|canales|canali|canale|"
    r"voies?|circuits|k)"
)
_FOOTPRINT = re.compile(rf"(?<![\w.])(?P<n>\d{{1,3}})\s*[-–]?\s*{_SLOTS}\b\.?", re.IGNORECASE)
_FOOTPRINT_AFTER = re.compile(rf"\b{_SLOTS}\s*[:=]\s*(?P<n>\d{{1,3}})\b", re.IGNORECASE)
_NUMBERED = re.compile(
    rf"\b{_MODE}\b\s*(?:no\.?|nr\.?|n°|nº|#)?\s*(?P<n>\d{{1,3}})\b(?!\s*(?:bit|-?\s*{_SLOTS}\b))",
    re.IGNORECASE,
)
_NAMED = re.compile(
    rf"^(?:.*\b)?{_MODE}\b\s*(?:no\.?|nr\.?|n°|#)?\s*(?P<key>\d{{1,3}}|[A-Z]|[IVX]{{1,4}})?\b\s*(?P<rest>.*)$",
    re.IGNORECASE,
)
_SLOT_HEAD = re.compile(
    rf"^(?:{_SLOTS})\.?(?:\s*dmx)?\s*(?:no\.?|nr\.?|n°|nº|#)?\s*(?P<a>\d{{1,3}})(?:\s*(?:\+|&|/|,|and|und|et|y|e|-|–|to|bis)\s*(?P<b>\d{{1,3}}))?(?P<more>(?:\s*[,+/]\s*\d{{1,3}})*)\s*(?P<sign>[:.)=|–—-]|\s)\s*(?P<name>\S.*)$",
    re.IGNORECASE,
)
_BARE_SLOT_HEAD = re.compile(
    r"^[\[(]?(?P<a>\d{1,3})(?:\s*[+/&-]\s*(?P<b>\d{1,3}))?\s*(?:[.:)\]]|\s[-–—])\s+(?P<name>[^\W\d].*)$"
)
_OF_MODES = re.compile(
    rf"(?:dmx|512|{_MODE}s?|modi|modos|modalità|{_SLOTS}|available|verfügbare|disponib\w+|selection|\W)+",
    re.IGNORECASE,
)
"""Words of every mode: what is left of them alone is no name."""
_SLOTS_FIRST = re.compile(
    rf"^\W*\d{{1,3}}\s*[-–]?\s*{_SLOTS}[\s-]*{_MODE}\b\s*(?:[:–|-]|(?=[(\[]))\s*(?P<name>\S.*)$",
    re.IGNORECASE,
)
"""A footprint, the word for a mode, and its name: `14-channel mode (Basic)`."""
_DRAWN = re.compile(r"^[-–—=*_#~+<>•]{2,}\s*|\s*[-–—=*_#~+<>•]{2,}$")
"""What a plain text draws around a heading: `--- Mode A ---`."""
_VALUES_FIRST = re.compile(
    rf"\d{{1,3}}\s*(?:-|–|—|…|\.\.+|to|bis|à)\s*\d{{1,3}}\b(?!\s*[-–]?\s*{_SLOTS}\b)", re.IGNORECASE
)
_BEFORE_NUMBER = re.compile(
    rf"^(?!\W*\d+\s*[-–]?\s*{_SLOTS}\b)[^:]+?\s[-–—|]\s+(?={_MODE}\s*(?:no\.?|nr\.?|n°|nº|#)?\s*\d)",
    re.IGNORECASE,
)
"""What stands before a numbered mode is of the whole document: `Panel 60 – Mode 1: CCT`."""
_OF_CHARTS = re.compile(
    rf"(?:dmx|{_SLOTS}|chart|table|tabelle|tableau|tabla|tabella|protocol|protokoll|protocole|protocolo|protocollo|"
    r"functions?|funktionen|fonctions|funciones|funzioni|assignments?|belegung|512|of|de[ils]?|d[eou]s?|der|\s|-)+",
    re.IGNORECASE,
)
_SENTENCE = re.compile(
    r"\b(?:uses?|takes?|occup(?:y|ies)|requires?|needs?|has|have|occupe|utilise|comporte|belegt|ben(?:ö|oe)tigt|"
    r"verwendet|hat|ocupa|usa|utiliza|tiene|occupa|utilizza|richiede|ha)\b",
    re.IGNORECASE,
)
_FOOTNOTE = re.compile(
    r"^\s*(?P<mark>\*{1,4}|†|‡|§|[¹²³⁴⁵⁶⁷⁸⁹]|\(?\d\)|[a-c]\)|#)\s*[:=)]?\s*(?P<text>[^\s*](?![^*]*\*).*)$"
)
_STARS_LEGEND = re.compile(
    r"^\s*(?P<mark>\*{1,2})\s*(?:[a-z]{1,2}|#|\.{2,3}|…|\d{1,3})\s*(?P=mark)\s*(?:[:=]|[-–—]\s)\s*(?P<text>\S.*)$",
    re.IGNORECASE,
)
"""The legend of a number between stars: `* n * = not in this mode`."""
_QUOTED = re.compile(r"^[\"“”„«»‘’‚]\s*(?P<name>[^\"“”„«»‘’‚]+?)\s*[\"“”„«»‘’‚]$")
_NAME_MARK = re.compile(r"(?P<mark>\*{1,4}|†|‡|§|[¹²³⁴⁵⁶⁷⁸⁹]|(?<=\S)\s?\d\))$")


@dataclass(frozen=True, slots=True)
class ModeHead:
    """A mode's heading."""

    printed: str
    name: str
    number: int | None
    footprint: int | None
    strong: bool
    """Whether it says `mode`, and not only a number of slots."""
    continued: bool = False


@dataclass(frozen=True, slots=True)
class SlotHead:
    """A heading over one slot's values."""

    slots: tuple[int, ...]
    name: str


@dataclass(frozen=True, slots=True)
class Footnote:
    """A legend: what a mark means."""

    mark: str
    text: str


@lru_cache(maxsize=4_000)
def read_mode_head(text: str) -> ModeHead | None:
    """The mode that a line or title names; None if it is anything else."""
    flat = _DRAWN.sub("", " ".join(text.split())).strip(" :")
    if not flat or len(flat) > 90 or (flat.endswith((".", ";")) and len(flat.split()) > 7):
        return None
    if len(flat.split()) > 3 and re.search(r"[^\W\d]{5}\.$", flat):
        # A sentence: `This mode takes 5 channels.`
        return None
    if len(_FOOTPRINT.findall(flat)) > 1 and not _FOOTPRINT.sub("", flat).strip(" ,/|"):
        return None  # `6CH 11CH 13CH` titles the columns of several modes
    if _VALUES_FIRST.match(flat):
        return None  # `111-255: music mode` is a range
    footprint = _FOOTPRINT.search(flat) or _FOOTPRINT_AFTER.search(flat)
    says_mode = re.search(rf"\b{_MODE}s?\b", flat, re.IGNORECASE)
    if not says_mode and not footprint:
        return None
    if text.rstrip().endswith(".") and _SENTENCE.search(flat):
        # `This mode uses 12 channels.` says how many and names none.
        return None
    if re.search(rf"\b\d+\s+{_MODE}s?\b", flat, re.IGNORECASE) and not footprint:
        # `2 modes` counts them and names none.
        return None
    if _SLOT_HEAD.match(flat) or (not footprint and len(flat.split()) > 1 and _OF_MODES.fullmatch(flat)):
        # `DMX personality` stands over all modes, and names none.
        return None
    if not says_mode and len(flat.split()) > 8:
        return None
    number = _NUMBERED.search(flat)
    continued = any(
        re.search(rf"\b{re.escape(word)}\b", fold(flat)) for word in phrases("phrases", "continued")
    )
    sentences = footprint is not None and not says_mode and re.search(r"\w\.\s+\w.*\.$", flat)
    # `Lamp 60. 9 channels, 8 bit.` tells of the fixture: of the mode it says how many slots.
    name = footprint[0] if footprint and sentences else _QUOTED.sub(r"\g<name>", _mode_name(flat, footprint))
    return ModeHead(
        flat,
        name,
        int(number["n"]) if number else None,
        int(footprint["n"]) if footprint else None,
        bool(says_mode),
        continued,
    )


def _mode_name(flat: str, footprint: re.Match[str] | None) -> str:
    told = _BEFORE_NUMBER.sub("", flat)
    for word in phrases("phrases", "continued"):
        told = re.sub(rf"[\s(\[,–-]*\b{re.escape(word)}\b\.?[)\]]?", "", told, flags=re.IGNORECASE)
    if footprint:
        # `CCT (uses 2 channels)`: a word may stand before the number.
        inside = re.compile(r"[(\[]\s*(?:[^\W\d]+\s+)?" + re.escape(footprint[0]) + r"\s*[)\]]")
        shorter = inside.sub(" ", told)
        if _OF_MODES.fullmatch(shorter):
            return footprint[0]  # `DMX mode: 2 channels` is called by its slots
        if shorter == told:
            # One of several remarks: `RGBW (8 channels, 16 bit)`.
            shorter = re.sub(r"(?<=[(\[])\s*" + re.escape(footprint[0]) + r"\s*[,;/]\s*", "", told)
        if shorter == told:
            shorter = re.sub(
                r"(?:\s*[,:|–-]|(?<=[)\]]))\s*" + re.escape(footprint[0]) + r"(?:\s+dmx)?\s*(?=\)?$)",
                "",
                told,
                flags=re.IGNORECASE,
            )
        if _OF_MODES.fullmatch(shorter) or _OF_CHARTS.fullmatch(shorter):
            return footprint[0]
        told = shorter
    bracket = re.fullmatch(r"([^(\[]+)[(\[]([^)\]]+)[)\]]", told.strip())
    if bracket and _OF_CHARTS.fullmatch(bracket[1]):
        told = bracket[2]  # `DMX channels (9CH mode)`
    told = re.sub(r"^(?:the|der|die|das|le|la|el|il)\s+(?=\d)", "", told, flags=re.IGNORECASE)
    called = re.fullmatch(
        rf"\d{{1,3}}[\s-]*{_SLOTS}[\s-]*{_MODE}\s*(?:[(\[]|[:–—]\s)\s*(?P<name>[^()\[\]]*[^\W\d][^()\[\]]*?)[)\]]?",
        told,
        re.IGNORECASE,
    )
    if called:
        return called["name"].strip()  # `22-channel mode (Extended)`
    first = _SLOTS_FIRST.match(told)
    if first:
        return _unbracket(first["name"].strip(" :–-|"))
    told = (
        re.sub(rf"[(\[]\s*(?:\d+\s*[-–]?\s*{_SLOTS}\s*)?{_MODE}\s*[)\]]?", " ", told)
        if ":" not in told
        else told
    )
    # `Channel assignments in 12-channel mode`, `Canaux DMX – mode standard`.
    told = re.sub(
        rf"^.*\b(?:in|im|en|nel|au|del)\s+(?=\d{{1,3}}[\s-]?{_SLOTS}\b)", "", told, flags=re.IGNORECASE
    )
    parts = re.split(r"\s[-–—|]\s", told)
    if len(parts) == 2 and _OF_CHARTS.fullmatch(parts[0]):
        told = parts[1]
    # The number of a manual's section: `3.2 DMX protocol - Mode 2`.
    told = re.sub(r"^\s*\d{1,2}(?:\.\d{1,2})+\.?\s+(?=\S)", "", told)
    told = re.sub(
        r"^\W*(?:dmx\s+)?(?:(?:channels?|slots?|control|kanal|function|functions)\s+)?"
        r"(?:chart|table|tabelle|tableau|tabla|tabella|protocol|protokoll|protocole|protocolo|protocollo|dmx|layout|"
        r"map|list|liste|lista|assignment|belegung|kanalbelegung|overview)\b\s*[:,–-]?\s*(?=\S)",
        "",
        " ".join(told.split()),
        flags=re.IGNORECASE,
    )
    behind = re.match(
        rf"^{_MODE}\s*(?:no\.?|nr\.?|n°|#)?\s*(?:\d{{1,3}}(?!\s*-?bit)|[A-Z])?\s*(?:[:.)]|\s[-–—]|\s\||\s)\s*(?P<name>\S.*)$",
        told,
        re.IGNORECASE,
    )
    called = re.fullmatch(rf"{_MODE}\s+(?P<name>.*)", told, re.IGNORECASE)
    if footprint and called and called["name"] == footprint[0]:
        return footprint[0]  # `Modo 7 canales` is called by its slots, and 7 is not its number
    if footprint and _OF_CHARTS.fullmatch(told):
        return footprint[0]  # `DMX chart - 9 CH` names nothing else
    bare = rf"[(\[]?\s*\d+\s*(?:{_SLOTS})?\s*[)\]]?"
    if behind and not re.fullmatch(bare, behind["name"], re.IGNORECASE):
        name = _unbracket(behind["name"].strip(" :–-|"))
        # `Modo de 9 canales`: a mode of so many slots.
        name = re.sub(r"^(?:de|di|da|à|mit|with|von|of|con|a)\s+(?=\d)", "", name, flags=re.IGNORECASE)
        return told.strip(" :–-|") if _says_little(name) else name or told
    before = re.match(rf"^(?P<name>.*\S)\s+{_MODE}$", told, re.IGNORECASE)
    if before and before["name"].strip(" :–-").casefold() not in ("dmx", "the"):
        return told.strip(" :–-") if _says_little(before["name"]) else before["name"].strip(" :–-")
    return _unbracket(told.strip(" :–-")) or flat


_SLOTS_BEFORE = re.compile(
    rf"^(?:{_SLOTS})\b\.?\s*[:–-]?\s*(?=\S)(?P<name>(?!in\b|im\b|en\b|nel\b|no\b|nr\b|of\b|/).*[^\W\d].*)$",
    re.IGNORECASE,
)


def own_titles(titles: list[str]) -> list[str]:
    """The titles of modes' columns without the word for slots that they all begin with (`Channel Basic`)."""
    found = [_SLOTS_BEFORE.match(title) for title in titles if title]
    names = [_unbracket(one["name"].strip()) for one in found if one]
    if len(names) < 2 or len(names) < len(found) or len(set(names)) < len(set(filter(None, titles))):
        return titles
    told = iter(names)
    return [next(told) if title else "" for title in titles]


def heads_of(titles: list[str], head: ModeHead | None) -> list[ModeHead | None]:
    """The heads of a table's modes: by the titles of their columns; of a single one, the heading above it."""
    if len(titles) > 1 or (head is None and titles[0]):
        return [read_mode_head(title) or _named(title) for title in titles]
    return [head]


def _named(title: str) -> ModeHead | None:
    return ModeHead(title, title, None, None, True) if title else None


def numbered_mode(text: str) -> ModeHead:
    """The mode that a cell in a column of modes names: its number may stand before it (`2: HSI`)."""
    found = re.fullmatch(r"(?P<n>\d{1,2})\s*(?:[:.)|]|\s[-–—])\s*(?P<name>[^\W\d].*)", text)
    if found is None:
        return ModeHead(text, text, int(text) if re.fullmatch(r"\d{1,2}", text) else None, None, True)
    slots = _FOOTPRINT.search(found["name"])
    name = _mode_name(found["name"], slots)
    return ModeHead(text, name, int(found["n"]), int(slots["n"]) if slots else None, True)


def _says_little(name: str) -> bool:
    """Whether a mode's name without the word mode is but a letter: the word is a part of it (`Mode A`)."""
    return len(name) == 1 and name.isalpha()


def _unbracket(name: str) -> str:
    inner = re.fullmatch(r"[(\[](.*)[)\]]", name)
    return inner[1].strip() if inner else name


@lru_cache(maxsize=4_000)
def read_slot_head(text: str) -> SlotHead | None:
    """The slot and name that a heading over a table of values gives."""
    flat = " ".join(text.split()).strip()
    found = _SLOT_HEAD.match(flat)
    if not found:
        found = _BARE_SLOT_HEAD.match(flat)
        if not found or not (flat.startswith("[") or read_name(found["name"]).sure):
            return None
    first = int(found["a"])
    if first == 0 or (found.re is _BARE_SLOT_HEAD and found["b"] and int(found["b"]) != first + 1):
        # `0-9: Open` is a range, not a heading.
        return None
    second = int(found["b"]) if found["b"] else None
    more = [int(n) for n in re.findall(r"\d+", found.groupdict().get("more") or "")]
    slots = (first, *((second,) if second is not None else ()), *more)
    name = found["name"].strip(" :–—-=|")
    if not re.search(r"[^\W\d]", name) or len(name) > 120:
        return None
    if found.re is _SLOT_HEAD and found["sign"].isspace() and name[0].islower() and name.endswith("."):
        # `Channel 1 controls the dimmer.`
        return None
    called = re.split(r"\s*[:=(]\s*(?=\d)", name)[0]
    if len(called.split()) > 5 and (name.endswith(".") or not read_name(name).sure):
        # A sentence about a slot is no heading; values may stand behind its name.
        return None
    return SlotHead(slots, name)


@lru_cache(maxsize=4_000)
def read_footnote(text: str) -> Footnote | None:
    """The legend that a line gives."""
    flat = " ".join(text.split())
    found = _FOOTNOTE.match(flat) or _STARS_LEGEND.match(flat)
    if not found or len(found["text"]) < 3:
        return None
    behind = re.match(r"\d{1,3}\s+(.*)", found["text"])
    if behind and read_name(behind[1]).sure:
        # A star where another mode's slot number would stand: `* 2 Amber` is a row.
        return None
    return Footnote(found["mark"].strip("()"), found["text"].strip())


def without_mark(text: str) -> tuple[str, str | None]:
    """A text and the footnote mark at its end, if it has one."""
    flat = text.strip()
    found = _NAME_MARK.search(flat)
    if not found or found.start() == 0:
        return flat, None
    if found["mark"].endswith(")") and flat.count("(") == flat.count(")"):
        return flat, None
    return flat[: found.start()].strip(), found["mark"].strip().strip("()")
