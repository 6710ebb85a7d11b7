"""Finds values in a line of running text, and parts them from the name before and the meaning behind."""

from __future__ import annotations

import re

from modebook.intake.chart_rows import ChartRow
from modebook.intake.names import read_name
from modebook.intake.values import read_values

_DASH = r"\s*(?:\.{2,}|…|[-‐‑‒–—−~÷]|\bto\b|\bbis\b|\bà\b|\ba\b|\bhasta\b)\s*"
_N = r"\d{1,3}(?:[.,]\d{3})+|\d{1,5}"
_RANGE = re.compile(
    rf"(?<![\w.,°%-])(?:0x[0-9A-F]+{_DASH}0x[0-9A-F]+|(?:{_N}){_DASH}(?:{_N}))(?![\w°%]|[.,]\d|\s?(?:°|%|K(?![\w-])|Hz\b|deg\b|degrees|Grad\b|s(?![\w-])|rpm\b))",
    re.IGNORECASE,
)
_PADDED = re.compile(r"(?<![\w.,-])0\d{2}(?:\s+\d{3})?(?![\w.,°%-])")
_PARTED = re.compile(r"(?<=[^\W\d] )0{1,3} (?P<to>[1-9]\d{0,2})(?=\s|$)(?!\s?[-–.…%°])")


def first_range(text: str) -> tuple[int, int] | None:
    """Where the first stretch of values stands in a text."""
    found = _RANGE.search(text)
    padded = _PADDED.search(text)
    if padded and (not found or padded.start() < found.start()):
        found = padded
    return found.span() if found else None


def _parted_range(text: str) -> tuple[int, int] | None:
    """Where a name is followed by 0 and a second number: a range whose dash was lost, or two columns."""
    found = _PARTED.search(text)
    if not found or not text[: found.start()].strip() or int(found["to"]) > 255:
        return None
    return found.span()


def name_and_values(rest: str, row: ChartRow) -> None:
    """Give a row the name, the values and the meaning that a text beside its slot holds."""
    values = read_values(rest)
    if values:
        row.value = rest
        return
    spot = first_range(rest) or _parted_range(rest)
    if spot is None:
        zero = re.match(r"^(\D+?) (0{1,3}) ([^\W\d].*)$", rest)
        if zero and read_name(zero[1]).sure:
            # The first of its values is a single one: `Color wheel 0 Open`.
            row.name, row.value, row.meaning = zero[1], zero[2], zero[3]
            return
        row.name = rest
        return
    start, end = spot
    before, after = trimmed(rest[:start]), trimmed(rest[end:])
    read = read_values(rest[start:end])
    name = read_name(before) if before else None
    if read and read[0].end > 255 and name and name.word in ("pan", "tilt") and read[0].end not in (65535,):
        # Degrees whose sign was lost, perhaps read as a zero: the description, not values.
        row.name, row.meaning = before, rest[start:]
        return
    row.value = rest[start:end].strip()
    row.name, row.meaning = (before, after) if before else (after, "")


def trimmed(text: str) -> str:
    """A text without the signs that part it from its neighbor; a minus before a number stays."""
    told = text.strip(" :=|")
    if re.fullmatch(r"[-–—•*·>]", told):
        return ""  # the sign of a list: `- 0-10: off`
    told = re.sub(r"^[-–—]+(?=\s)|(?<=\s)[-–—]+$", "", told).strip(" :=|")
    if told.startswith(")") or told.endswith("("):
        told = told.strip("()").strip()
    return told
