"""Reads a parameter's printed name: which word of the vocabulary, which byte, which of several."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import cache, lru_cache

from modebook.intake.compounds import composed, narrowed, spelled_out, without_facets
from modebook.intake.folding import fold
from modebook.intake.lexicon import SURE, exact, inflected, nearest, phrases, reordered, shortened

_BRACKETS = re.compile(r"[(\[]([^)\]]*)[)\]]")
_MEASURED = re.compile(
    r"^(?P<name>.*?[^\W\d_].*?)\s*[,:(]?\s*(?:(?:from|von|de|da|desde)\s+)?(?P<span>[-+±]?\d[\d.,]*\s*[%°]?\s*(?:-|–|—|→|…|\.\.\.?|to|bis|à|a)\s*"
    r"[-+]?\d[\d.,]*\s*(?:%|°|deg|grad|K|Hz|kHz|s|ms)\.?)\)?$",
    re.IGNORECASE,
)
_ORDINAL = re.compile(r"(?<=\d)\s?º")
"""The sign of a Spanish ordinal, as it is typed for degrees."""
_GLUED = re.compile(r"^([a-z]{1,2})(\d{1,4})$")
_NUMBER = re.compile(r"^#?(\d{1,3})$")
_DESIGNATED = re.compile(r"\d{1,2}[a-d]|[a-d]\d{1,2}")
"""Which of the blades and which of its ends: `Blade 1A`."""
_SIDED = frozenset({"blade-position", "blade-angle", "barn-door", "barn-door-rotation"})
DESCRIBING = re.compile(
    r"[-+±]?\d[\d.,]*[%°k]?|[%°k]|hz|khz|deg|degrees?|grad|degres|grados|gradi|rpm|kelvin|bpm|s|ms|sec|to|bis|a|hasta|"
    r"slow|fast|langsam|schnell|lente?|rapide|lent[oa]|rapid[oa]|veloce|min|max|minimum|maximum|dark|bright|dunkel|hell|zu|"
    r"open|closed|narrow|wide|eng|weit|etroit|large|estrecho|ancho|stretto|largo|low|high|full|zero|linear|"
    r"in|out|up|near|far|sharp|soft|from|von|de|da|off|on|adjustment|control|value|steplessly|smooth|"
    r"increase|increasing|decrease|decreasing|intensity|brightness|level|or|and"
)


@dataclass(frozen=True, slots=True)
class Name:
    """What a name says. `score` below SURE is doubtful; word None: nothing of it is known."""

    label: str
    """The words as printed, without the byte's mark."""
    word: str | None
    score: float
    level: int | None = None
    """0 coarse, 1 fine, 2 and 3 finer; None where nothing is said."""
    bits: int | None = None
    """8, 16 or 24 where the name prints it."""
    number: int | None = None
    """The number of several of a kind (Gobo 2, Red 12)."""
    cell: bool = False
    """Whether the number is said to be a cell's."""
    side: str | None = None
    base: str = ""
    """The folded name without byte mark, for pairing."""
    rest: str = ""
    """What follows the name: a description."""

    @property
    def sure(self) -> bool:
        """Whether the word needs no doubt."""
        return self.word is not None and self.score >= SURE


@lru_cache(maxsize=8_000)
def read_name(text: str) -> Name:
    """The name in a cell that holds a name, perhaps with a description behind it."""
    flat = _ORDINAL.sub("°", " ".join(text.split()))
    head, rest = flat, ""
    plainer = spelled_out(flat)
    if plainer != flat:
        spelled = read_name(plainer)
        if spelled.sure:
            return _with(spelled, label=_label(flat, spelled.level, spelled.bits))
    turned = _inverted(flat)
    if turned is not None:
        return turned
    measured = _MEASURED.match(flat)
    if measured:
        # What is measured stands behind the name; its figures are no number of several.
        named = read_name(measured["name"].strip(" ,:("))
        if named.sure and not named.rest:
            return _settled(_with(named, rest=measured["span"].strip()), flat)
    whole = _settled(_read(head), flat)
    if whole.sure or not flat:
        return whole
    best = whole
    said = _service(flat) or _bracketed(flat) or _both_bytes(flat) or _said_twice(flat)
    if said is not None:
        return said
    for head, rest in _splits(flat):
        found = _read(head)
        if narrowed(found.word or "", fold(rest).split()):
            continue
        if found.word is not None and found.score > best.score + 0.005:
            level = _mark(rest)
            if level is not None and found.level is None:
                found = _with(found, level=level[0], bits=level[1])
                rest = ""
            best = _settled(_with(found, rest=rest), flat)
            if best.sure:
                break
    return best


_WHITES = frozenset({"color-temperature", "color-correction", "warm-correction", "cool-correction"})
_BY_KELVIN = frozenset({"white", "white-point", "color-correction"})
_DEGREES = re.compile(r"\d\s?(?:°|deg\b|grad\b)", re.IGNORECASE)
ENDED = {
    "pan-rotation": "pan",
    "tilt-rotation": "tilt",
    "gobo-rotation": "gobo-index",
    "prism-rotation": "prism-index",
}
"""What a rotation is whose degrees are printed from end to end."""
_KELVIN = re.compile(r"\d{4,5}\s?K\b|\d[.,]\d{3}\s?K\b")

_TO = re.compile(r"\d\s?K?\s*(?:[-–—~…→]|\.\.|\b(?:to|bis|à|a|hasta)\b)\s*\d")


def _settled(name: Name, flat: str) -> Name:
    """A name of two uses, settled by what is printed with it: endless turning has no degrees from end to
    end, a white with kelvins from end to end is a color temperature, an abbreviation in brackets says which
    of two is meant.
    """
    if name.word in ENDED and _DEGREES.search(name.rest):
        return _with(name, word=ENDED[name.word])
    if name.word in _BY_KELVIN and _KELVIN.search(name.rest):
        if name.word == "white" and len(_KELVIN.findall(name.rest)) == 1 and not _TO.search(name.rest):
            # A white of one color temperature is an emitter: its kelvins are a part of its name.
            label = _label(flat, name.level, name.bits)
            return _with(name, label=label, base=fold(label), rest="")
        return _with(name, word="color-temperature")
    inner = _BRACKETS.search(flat)
    if inner and name.word in _WHITES and inner[1].isupper():
        meant = exact(inner[1])
        if meant and meant.score >= SURE and meant.word in _WHITES:
            return _with(name, word=meant.word)
    return name


_SERVICE = frozenset({"control", "reset", "lamp-control"})
_SERVED = _SERVICE | {"fan", "fan-mode", "macro", "display", "dimmer-curve", "power", "smoothing"}


def _service(flat: str) -> Name | None:
    """A slot of several kinds of service (`Reset, internal programs`) is one of control."""
    parts = [part.strip() for part in re.split(r"\s*[,/&+;]\s*|\s+(?:and|und|et|y|e)\s+", flat)]
    words = {found.word for part in parts if (found := exact(part)) and found.score >= 0.8}
    known = all(exact(part) for part in parts) and words <= _SERVED
    if len(parts) < 2 or len(words) < 2 or not known or not words & _SERVICE:
        return None
    return Name(flat, "control", 1.0, base=fold(flat))


def _inverted(flat: str) -> Name | None:
    """A name with its first word behind a comma (`Gobo wheel, rotating`), if that is one of the lists."""
    parts = [part.strip() for part in flat.split(",")]
    if len(parts) != 2 or not all(parts) or any(letter.isdigit() for letter in parts[1]):
        return None
    found = _read(f"{parts[1]} {parts[0]}")
    listed = exact(f"{parts[1]} {parts[0]}")
    if listed is None or listed.score < SURE or found.word != listed.word:
        return None
    return _with(found, label=flat, base=fold(flat))


def _bracketed(flat: str) -> Name | None:
    """A name whose other name stands in brackets (`Giro (Pan)`, with a byte mark behind): the known one
    counts, and the label is all of it.
    """
    inner = _BRACKETS.search(flat)
    if not inner or not re.search(r"[^\W\d_]{3,}", inner[1]):
        return None
    outer, within = _read(" ".join((flat[: inner.start()] + flat[inner.end() :]).split())), _read(inner[1])
    if outer.sure or not within.sure or within.level is not None:
        return None
    if not re.search(r"[^\W\d_]{3,}", outer.base):
        return None
    label = f"{outer.label} ({inner[1]})" if outer.level is not None else flat
    return _with(within, label=label, level=outer.level, bits=outer.bits, base=fold(label))


def _both_bytes(flat: str) -> Name | None:
    """A name printed for both of its bytes (`Dimmer / Dimmer fine`): the name once, no byte of it meant."""
    parts = [part.strip() for part in re.split(r"\s[/+&]\s|\s?/\s?", flat)]
    if len(parts) != 2 or not all(parts):
        return None
    first, second = _read(parts[0]), _read(parts[1])
    alike = first.word == second.word and first.number == second.number and first.base == second.base
    if not first.sure or not alike or first.level not in (None, 0) or second.level != 1:
        return None
    return _with(first, level=None)


def _said_twice(flat: str) -> Name | None:
    """A name said in two ways or languages (`CCT Farbtemperatur`, `Fokus / Focus`): both are one thing."""
    words = [word for word in flat.split() if word not in ("/", "-", "–", "|")]
    if not 1 < len(words) < 7:
        return None
    for at in range(1, len(words)):
        first, second = _read(" ".join(words[:at])), _read(" ".join(words[at:]))
        if first.sure and second.sure and first.word == second.word:
            marks = {one.level for one in (first, second)} - {None}
            numbers = {one.number for one in (first, second)} - {None}
            if len(marks) < 2 and len(numbers) < 2:
                level, number = next(iter(marks), None), next(iter(numbers), None)
                label = _label(flat, level, first.bits or second.bits)
                return _with(first, label=label, level=level, number=number, base=fold(label))
    return None


def _splits(flat: str) -> list[tuple[str, str]]:
    """Ways to part a text into a name and what follows: at brackets and signs, then word by word."""
    found: list[tuple[str, str]] = []
    inner = _BRACKETS.search(flat)
    if inner:
        outer = " ".join((flat[: inner.start()] + flat[inner.end() :]).split())
        found.append((outer, inner[1].strip()))
    for sign in (":", " – ", " — ", " - ", ",", ";", "("):
        head, mark, rest = flat.partition(sign)
        if mark and head.strip():
            found.append((head.strip(), rest.strip(" )")))
    words = flat.split()
    for length in range(len(words) - 1, 0, -1):
        rest = " ".join(words[length:])
        if all(DESCRIBING.fullmatch(word) for word in fold(rest).split()):
            found.append((" ".join(words[:length]).rstrip(" ±"), rest))
    return found


def _mark(text: str) -> tuple[int, int | None] | None:
    """The byte that a text alone stands for: `fine`, `16 bit`."""
    form = fold(text)
    for level, key in enumerate(("coarse", "fine", "finer", "finest")):
        if form in phrases("marks", key):
            return level, _bits(form)
    return None


def _bits(form: str) -> int | None:
    found = re.search(r"\b(8|16|24|32)bit\b", form)
    return int(found[1]) if found else None


@cache
def _fillers() -> frozenset[str]:
    """Single words that add nothing to a name: controls, channels, levels, LEDs."""
    return frozenset(phrases("marks", "filler"))


@lru_cache(maxsize=8_000)
def _read(text: str) -> Name:
    """The name that is the whole text; byte mark, number and side are taken off first."""
    direct = exact(text)
    if direct and direct.score >= SURE and not _mark(text) and not fold(text).endswith(" lo"):
        # A lo at the end is a byte's mark and not the article that it is elsewhere.
        return Name(text.strip(), direct.word, direct.score, base=fold(text))
    form = without_facets(fold(text))
    words, level, bits = _without_marks(form.split())
    label = _label(text, level, bits)
    numbered, number, cell = _without_number(words)
    base = " ".join(words)
    candidates = [words, numbered]
    side = None
    sides = phrases("marks", "side")
    ends = [
        word for word in numbered if _DESIGNATED.fullmatch(word) or (number and re.fullmatch("[a-d]", word))
    ]
    without_side = [word for word in numbered if word not in sides and word not in ends]
    if without_side and len(without_side) < len(numbered):
        candidates.append(without_side)
    best: Name | None = None
    for index, tried in enumerate(candidates):
        phrase = " ".join(tried)
        found = exact(phrase) if phrase else None
        if found is None:
            continue
        if index == 2:
            if found.word not in _SIDED:
                continue
            side = "-".join(word for word in numbered if word not in without_side)
            if ends:
                found = replace(found, score=1.0)  # nothing else has ends of such names
        read = Name(
            label,
            found.word,
            found.score,
            level,
            bits,
            number if index else None,
            cell and index > 0,
            side,
            base,
        )
        if best is None or read.score > best.score:
            best = read
    if best:
        return best
    plain = [word for word in numbered if word not in _fillers()]
    if plain and len(plain) < len(numbered):
        # An amount of what two letters name (`UV level`) is sure where the two make a name together.
        letters = composed(" ".join(numbered)) if len("".join(plain)) <= 2 else None
        found = letters or exact(" ".join(plain))
        if found and not narrowed(found.word, numbered):
            score = (
                found.score
                if letters or (len(plain) == 1 and len(plain[0]) > 2) or len(plain) > 1
                else min(found.score, 0.85)
            )
            return Name(label, found.word, min(score, 0.95), level, bits, number, cell, None, base)
    for tried in (numbered, plain):
        found = (inflected(" ".join(tried)) or reordered(" ".join(tried))) if tried else None
        if found and not narrowed(found.word, numbered):
            return Name(label, found.word, found.score, level, bits, number, cell, None, base)
    for tried in (numbered, plain):
        found = composed(" ".join(tried)) if tried else None
        if found and (tried is numbered or not narrowed(found.word, numbered)):
            return Name(label, found.word, found.score, level, bits, number, cell, None, base)
    short = shortened(text) if level is None and number is None else None
    if short:
        return Name(label, short.word, short.score, level, bits, number, cell, None, base)
    found = nearest(" ".join(numbered)) if numbered else None
    if found:
        return Name(label, found.word, found.score, level, bits, number, cell, None, base)
    return Name(label or text.strip(), None, 0.0, level, bits, number, cell, None, base)


def _without_marks(words: list[str]) -> tuple[list[str], int | None, int | None]:
    """Takes `fine`, `coarse`, `16bit` and the like off a name, if something is left or nothing else was
    there.
    """
    for level, key in ((3, "finest"), (2, "finer"), (1, "fine"), (0, "coarse")):
        for phrase in sorted(phrases("marks", key), key=len, reverse=True):
            parts = phrase.split()
            at = _find(words, parts)
            if at is None:
                continue
            # Hi and lo mark a byte only behind a name: a high CRI filter is no coarse byte.
            if (
                phrase in ("hi", "lo", "high", "low", "micro", "gros", "precise", "preciso", "precis")
                and at == 0
            ):
                continue
            left = words[:at] + words[at + len(parts) :]
            bits = _bits(phrase)
            deeper, again, more = _without_marks(left) if left else (left, None, None)
            return deeper, max(level, again or 0), bits or more
    return words, None, None


def _find(words: list[str], parts: list[str]) -> int | None:
    for at in range(len(words) - len(parts) + 1):
        if words[at : at + len(parts)] == parts:
            return at
    return None


def _without_number(words: list[str]) -> tuple[list[str], int | None, bool]:
    """Takes the number of several off a name, and the word for a cell that goes with it."""
    cells = phrases("marks", "cell")
    if len(words) == 1:
        glued = _GLUED.match(words[0])
        if glued and exact(glued[1]):
            return [glued[1]], int(glued[2]), False
    spots = [index for index, word in enumerate(words) if _NUMBER.match(word)]
    if len(spots) != 1:
        return words, None, False
    at = spots[0]
    number = int(words[at].lstrip("#"))
    left = words[:at] + words[at + 1 :]
    if at > 0 and words[at - 1] in cells and len(left) > 1:
        return words[: at - 1] + words[at + 1 :], number, True
    return left or words, number if left else None, False


def _label(text: str, level: int | None, bits: int | None) -> str:
    """The printed words without the byte's mark."""
    flat = " ".join(text.split())
    if level is None and bits is None:
        return flat
    told = flat
    for key in ("finest", "finer", "fine", "coarse"):
        for phrase in sorted(phrases("marks", key), key=len, reverse=True):
            pattern = re.escape(phrase).replace(r"bit", r"[\s-]*bits?").replace(r"\ ", r"[\s-]+")
            shorter = re.sub(rf"[\s(\[,/–-]*\b{pattern}\b[)\]]?", "", told, flags=re.IGNORECASE)
            if shorter != told and (shorter.strip(" ()-–/") or told == flat):
                told = shorter
    told = told.strip(" -–/,:")
    if told.count("(") != told.count(")"):
        told = told.strip("()").strip()
    return told.strip(" -–/,:") or flat


def _with(name: Name, **changes: object) -> Name:
    return replace(name, **changes)  # type: ignore[arg-type]
