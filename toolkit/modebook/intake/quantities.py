"""Reads physical spans out of printed words: -270 to 270 degrees, 3.200-5.600 K, 0,5-25 Hz."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

_DASH = r"\s*(?:\.{2,}|…|[-‐‑‒–—−~÷→⇒»>]+|\b(?:to|bis|à|a|al|au|hasta|up to|und|and)\b)\s*"
_NUMBER = r"[-+−–]?\s?\d+(?:[.,'’\u202f]\d+)*(?:[ \u00a0\u202f]\d{3}(?!\d))?"
_UNITS: tuple[tuple[str, str], ...] = (
    ("deg/s", r"°\s*/\s*s(?:ec)?|deg(?:rees)?\s*/\s*s(?:ec)?|degrees? (?:a|per) second"),
    ("deg", r"°(?!\s*[KCF]\b)|º|deg(?:rees?)?\b\.?|grad\b|degrés?\b|grados?\b|gradi\b"),
    ("K", r"°?\s?K\b(?!Hz)|kelvins?\b"),
    ("kHz", r"kHz\b"),
    (
        "Hz",
        r"Hz\b|hertz\b|fps\b|flashes? (?:a|per) second|/s\b|"
        r"(?:flash(?:e?s)?|[ée]clairs?|blitze?|destellos?|lampi|lampeggi)\s?/\s?s\b",
    ),
    ("%", r"%|percent\b|per cent\b|prozent\b|pour ?cent\b|por ciento\b|per cento\b"),
    ("rpm", r"rpm\b|u/min\b|tr/min\b|giri/min\b|r\.p\.m\."),
    ("bpm", r"bpm\b"),
    ("ms", r"ms\b|msec\b"),
    ("min", r"min(?:utes?|uten)?\b\.?"),
    ("s", r"s\b|secs?\b\.?|seconds?\b|sek\b\.?|sekunden?\b|secondes?\b|segundos?\b|secondi\b"),
    ("m/s", r"m/s\b"),
    ("mm", r"mm\b"),
    ("cm", r"cm\b"),
    ("m", r"m\b|met(?:er|re)s?\b"),
    ("mired", r"mireds?\b"),
)
_REMARK = r"(?:\s?\([^()\d]{1,24}\))?"
"""What the first end means, in brackets: `-100 % (magenta) to +100 % (green)`."""
_UNIT = "|".join(f"(?P<u{index}>{pattern})" for index, (_, pattern) in enumerate(_UNITS))
_FIRST_UNIT = "(?:" + "|".join(pattern for _, pattern in _UNITS) + ")"
_SPAN = re.compile(
    rf"(?<![\w.,])(?P<a>{_NUMBER})\s*(?:{_FIRST_UNIT})?{_REMARK}{_DASH}(?P<b>{_NUMBER})\s*(?:{_UNIT})",
    re.IGNORECASE,
)
_SENT = re.compile(
    r"(?<![\w.,-])0{1,3}\s?(?:[-–—…]|\.\.+|to\b|bis\b|à\b)\s?(?:255|65535)(?=[\s,;:=]+[-+−±]?\d)"
)
"""Values that are sent, before what they measure: in `0 - 255 -100 % to 100 %` nothing measures 255."""
_BOTH_WAYS = re.compile(rf"(?:±|\+\s*/\s*[-−–])\s*(?P<a>\d+(?:[.,]\d+)?)\s*(?:{_UNIT})", re.IGNORECASE)
_ONE = re.compile(rf"(?<![\w.,])(?P<a>{_NUMBER})\s*(?:{_UNIT})", re.IGNORECASE)
_PLAIN = re.compile(rf"(?<![\w.,])(?P<a>{_NUMBER}){_DASH}(?P<b>{_NUMBER})(?![\w%°])", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Quantity:
    """Two physical ends with their unit; `one` where a single figure was printed."""

    start: float
    end: float
    unit: str
    at: tuple[int, int]
    one: bool = False


@lru_cache(maxsize=8_000)
def spans(text: str) -> tuple[Quantity, ...]:
    """The spans that a text prints with a unit, in order; 3.400 K counts as 3400 K."""
    found: list[Quantity] = []
    text = _SENT.sub(lambda sent: " " * len(sent[0]), text)
    for match in _SPAN.finditer(text):
        unit = _unit(match)
        start, end = _number(match["a"], unit), _number(match["b"], unit)
        found.append(Quantity(start, end, unit, match.span()))
    for match in _BOTH_WAYS.finditer(text):
        unit = _unit(match)
        end = _number(match["a"], unit)
        if not any(match.start() < q.at[1] and q.at[0] < match.end() for q in found):
            found.append(Quantity(-end, end, unit, match.span()))
    return tuple(sorted(found, key=lambda q: q.at))


@lru_cache(maxsize=8_000)
def singles(text: str) -> tuple[Quantity, ...]:
    """The single figures with a unit that are not the end of a span."""
    taken = [q.at for q in spans(text)]
    found: list[Quantity] = []
    for match in _ONE.finditer(text):
        if any(match.start() < end and start < match.end() for start, end in taken):
            continue
        unit = _unit(match)
        value = _number(match["a"], unit)
        found.append(Quantity(value, value, unit, match.span(), one=True))
    return tuple(found)


@lru_cache(maxsize=8_000)
def unitless(text: str) -> tuple[Quantity, ...]:
    """Spans printed without any unit; the unit is empty."""
    taken = [q.at for q in spans(text)]
    return tuple(
        Quantity(_number(m["a"], ""), _number(m["b"], ""), "", m.span())
        for m in _PLAIN.finditer(text)
        if not any(m.start() < end and start < m.end() for start, end in taken)
    )


def _unit(match: re.Match[str]) -> str:
    return next(name for index, (name, _) in enumerate(_UNITS) if match.group(f"u{index}") is not None)


def _number(text: str, unit: str) -> float:
    told = re.sub(r"[\s'’\u00a0\u202f]", "", text).replace("−", "-").replace("–", "-").lstrip("+")
    if unit == "K" and re.fullmatch(r"-?\d{1,2}[.,]\d{3}", told):
        return float(re.sub(r"[.,]", "", told))
    if re.fullmatch(r"-?\d{1,3}(?:,\d{3})+", told) and unit != "Hz" and not told.startswith(("0,", "-0,")):
        return float(told.replace(",", ""))
    if told.count(".") > 1 or (told.count(",") and told.count(".") and told.rfind(",") < told.rfind(".")):
        told = told.replace(",", "") if told.count(".") == 1 else told.replace(".", "")
    return (
        float(told.replace(",", "."))
        if told.count(",") + told.count(".") <= 1
        else float(re.sub(r"[.,]", "", told))
    )
