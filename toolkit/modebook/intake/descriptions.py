"""Parts a description into its meaning and its remarks (hold, keeping, conditions, figures, default)."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from modebook.intake.conditions import ReadCondition, read_conditions, without_condition
from modebook.intake.phrases import Said, is_bare_hold, read_description
from modebook.intake.quantities import Quantity, singles, spans

_SHORT = r"(?<!\bsek)(?<!\bsec)(?<!\bseg)(?<!\bmin)(?<!\bmind)(?<!\bca)(?<!\bapprox)"
_SEGMENT = re.compile(rf";|,(?!\d)|(?<!\d),|{_SHORT}\.(?=\s|$)|\s[-–—]\s", re.IGNORECASE)
_ABBREVIATED = re.compile(r"\b(?:sek|sec|seg|mind?|ca|approx)$", re.IGNORECASE)
_BRACKET = re.compile(r"\s*[(\[]([^()\[\]]*)[)\]]")


@dataclass(frozen=True, slots=True)
class Description:
    """A description taken apart."""

    printed: str
    meaning: str
    """Without remarks that were understood and recorded elsewhere; never empty if `printed` is not."""
    said: Said
    needs: tuple[ReadCondition, ...] = ()
    spans: tuple[Quantity, ...] = ()
    singles: tuple[Quantity, ...] = ()


@lru_cache(maxsize=8_000)
def describe(text: str, *, triggers: bool = False) -> Description:
    """Take a description apart. `triggers`: it belongs to a slot of settings and actions."""
    flat = " ".join(text.split())
    said = read_description(flat, triggers=triggers)
    needs = read_conditions(flat)
    kept: list[str] = []

    def bracket(match: re.Match[str]) -> str:
        segments = [part.strip() for part in _SEGMENT.split(match[1])]
        left = [part for part in segments if part and not _remark(part, triggers)]
        if len(left) == len([part for part in segments if part]):
            return match[0]
        return f" ({', '.join(left)})" if left else " "

    core = _BRACKET.sub(bracket, flat)
    pieces = _split(core)
    for index, (piece, mark) in enumerate(pieces):
        if index and _remark(piece, triggers):
            if kept and kept[-1].endswith((",", ";", ".", "-", "–", "—")):
                kept[-1] = kept[-1].rstrip(" ,;.-–—")
            continue
        kept.append(piece + mark)
    meaning = " ".join(" ".join(kept).split()).strip(" ,;")
    meaning = re.sub(r"\(\s*\)", "", meaning).strip(" ,;")
    if meaning.endswith((" -", " –", " —")):
        meaning = meaning[:-2].strip()
    if not re.search(r"\w", meaning):
        meaning = flat
    return Description(flat, meaning, said, needs, spans(flat), singles(flat))


def _split(text: str) -> list[tuple[str, str]]:
    found: list[tuple[str, str]] = []
    at = depth = 0
    for index, letter in enumerate(text):
        if letter in "([":
            depth += 1
        elif letter in ")]":
            depth = max(0, depth - 1)
        cut = letter in ";," or (letter == "." and (index + 1 == len(text) or text[index + 1].isspace()))
        if (
            letter in ",."
            and 0 < index < len(text) - 1
            and text[index - 1].isdigit()
            and text[index + 1].isdigit()
        ):
            cut = False
        dash = letter in "-–—" and 0 < index < len(text) - 1 and text[index - 1] == text[index + 1] == " "
        if dash and re.search(r"\d\s*[°%K]?\s$", text[:index]) and re.match(r"\s[-+]?\d", text[index + 1 :]):
            dash = False
        if letter == "." and _ABBREVIATED.search(text[:index]):
            cut = False
        if depth == 0 and (cut or dash):
            found.append((text[at:index].strip(), f" {letter}" if dash else letter))
            at = index + 1
    found.append((text[at:].strip(), ""))
    return [(piece, mark) for piece, mark in found if piece]


def _remark(text: str, triggers: bool) -> bool:
    """Whether a piece says nothing but what is recorded elsewhere."""
    said = read_description(text, triggers=triggers)
    if said.default_at and said.default_at[1] - said.default_at[0] >= len(text.strip()) - 2:
        return True
    rest = text
    conditions = read_conditions(text)
    for condition in conditions:
        rest = without_condition(rest, condition)
    if triggers and is_bare_hold(text):
        return True
    if said.hold_s is not None:
        rest = re.sub(r"\d+(?:[.,]\d+)?\s*\+?\s*\w+\.?", " ", rest)
        return len(rest.split()) <= 5 and said.hazard is None
    if said.kept is not None and len(text.split()) <= 9:
        return True
    if conditions:
        return len(re.findall(r"[^\W\d_]{2,}", rest)) <= 2
    for quantity in (*spans(text),):
        return quantity.at[1] - quantity.at[0] >= len(text.strip()) - 1
    return False
