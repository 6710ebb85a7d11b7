"""One row of a chart, whatever its layout was: slots of each mode, name, values, meaning, with its place."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Literal

from modebook.intake.grid import Place
from modebook.intake.headings import without_mark

SlotKind = Literal["slots", "absent", "blank", "text"]
_ABSENT = frozenset(
    {
        "-",
        "–",
        "—",
        "−",
        "*",
        "/",
        "x",
        "X",
        "n/a",
        "N/A",
        ".",
        "--",
        "---",
        "•",
        "·",
        "**",
        "(-)",
        "_",
        "‐",
        "‑",
        "‒",
        "none",
    }
)
_ONE = re.compile(
    r"^(?:(?:ch|chan|channel|slot|kanal|canal|canale|k|c|dmx)\.?\s*)?#?\(?(\d{1,3})\)?[.:]?$", re.IGNORECASE
)
_SEVERAL = re.compile(
    r"^(?:(?:ch|chan|channels?|slots?|kanal|kanäle|canal|canaux|canali|canales|k|c)\.?\s*)?\(?(\d{1,3})\s*(?P<sign>[-–—−~…]|\.\.+|\bto\b|\bbis\b|\bà\b|\ba\b|\bhasta\b)\s*(\d{1,3})\)?$",
    re.IGNORECASE,
)
_LISTED = re.compile(
    r"^(?:(?:ch|chan|channels?|slots?|kanal|kanäle|canal|canaux|canali|canales|k|c)\.?\s*)?\(?(\d{1,3}(?:\s*(?:[+/&,;]|\band\b|\bund\b|\bet\b|\by\b|\be\b|\s)\s*\d{1,3})+)\)?$",
    re.IGNORECASE,
)
_STARRED = re.compile(r"(?P<mark>\*{1,2})\s*(\d{1,3})\s*(?P=mark)")
"""`* 5 *`: a slot of another mode, which this one leaves out; the legend says so."""
_BYTE = re.compile(
    r"(?P<slot>\d{1,3})\s*[(\[]?\s*(?P<byte>msb|lsb|coarse|fine|hi|lo|grob|fein)\s*[)\]]?", re.IGNORECASE
)


_MARKED = re.compile(
    r"(?P<slot>\d{1,3})\s*[(\[]?\s*(?P<byte>msb|lsb|coarse|fine|hi|lo|grob|fein)\b\s*[)\]]?"
    r"|[(\[]?\s*(?P<said>msb|lsb|coarse|fine|hi|lo|grob|fein)\b\s*[)\]]?\s*[:=]?\s*(?P<number>\d{1,3})",
    re.IGNORECASE,
)
_COARSE = frozenset({"msb", "coarse", "hi", "grob"})


@dataclass(frozen=True, slots=True)
class SlotCell:
    """What a cell of a slot column says."""

    kind: SlotKind
    slots: tuple[int, ...] = ()
    run: bool = False
    """Printed as first to last (5-8), not one by one."""
    mark: str | None = None
    """A footnote mark beside the number, or the sign that says that the mode has no such slot."""


BLANK = SlotCell("blank")


def without_byte(text: str) -> tuple[str, str]:
    """A slot cell without the mark of its byte, and the mark: `2 (LSB)`."""
    found = _BYTE.fullmatch(text)
    return (found["slot"], found["byte"]) if found else (text, "")


def _both_bytes(text: str) -> tuple[int, ...]:
    """The coarse and the fine slot of a cell that marks both: `1 (MSB) / 2 (LSB)`; empty for any other."""
    found = list(_MARKED.finditer(text))
    if len(found) != 2 or re.search(r"[^\s/,;+&|–-]", _MARKED.sub("", text)):
        return ()
    slots = {(m["byte"] or m["said"]).casefold() in _COARSE: int(m["slot"] or m["number"]) for m in found}
    return (slots[True], slots[False]) if len(slots) == 2 and all(slots.values()) else ()


@lru_cache(maxsize=8_000)
def read_slot_cell(text: str) -> SlotCell:
    """Slots in a cell: 5, 5-6, 5+6, 5/6, a dash or asterisk for none, 5* with a footnote mark, 5 (MSB)."""
    flat = without_byte(" ".join(text.split()))[0]
    if not flat:
        return BLANK
    both = _both_bytes(flat)
    if both:
        return SlotCell("slots", both)
    if flat in _ABSENT:
        return SlotCell("absent", mark=flat)
    starred = _STARRED.fullmatch(flat)
    if starred:
        return SlotCell("absent", (int(starred[2]),), mark=starred["mark"])
    body, mark = without_mark(flat)
    # 5¹ is a mark; 51 is a number. A digit in brackets behind a number is a mark as well.
    one = _ONE.match(body)
    if one:
        return SlotCell("slots", (int(one[1]),), mark=mark) if int(one[1]) > 0 else SlotCell("text")
    several = _SEVERAL.match(body)
    if several:
        a, b = int(several[1]), int(several[3])
        if 0 < a < b <= 512:
            return SlotCell("slots", tuple(range(a, b + 1)), run=True, mark=mark)
        if a > b > 0 and a - b == 1:
            return SlotCell("slots", (a, b), mark=mark)
        return SlotCell("text")
    listed = _LISTED.match(body)
    if listed:
        numbers = tuple(int(n) for n in re.findall(r"\d+", listed[1]))
        if all(numbers) and len(set(numbers)) == len(numbers):
            return SlotCell("slots", numbers, mark=mark)
    return SlotCell("text")


@dataclass(slots=True)
class ChartRow:
    """One row. Slots are told apart by mode column; a chart of one mode has column 0 only."""

    place: Place
    slots: dict[int, SlotCell] = field(default_factory=dict)
    name: str = ""
    value: str = ""
    meaning: str = ""
    percent: str = ""
    hex: str = ""
    default: str = ""
    group: str = ""
    bits: str = ""
    hold: str = ""
    kept: str = ""
    condition: str = ""
    unit: str = ""
    matrix: dict[int, str] = field(default_factory=dict)
    """Names by mode, in a slot by mode matrix."""
    whole: str = ""
    """A text that spans the table: a heading inside it, a label, a remark."""
    heads: bool = False
    """Its text stands alone above titles that are said again: it names what follows."""
    raw: str = ""
    why: list[str] = field(default_factory=list)
    """What is doubtful about the row itself."""
    loose: bool = False
    """Read from running text, without columns."""
    wraps: bool | None = None
    """Whether its words may be the next line of the words above; None where nothing tells."""
    unpaired: bool = False
    """Its values and texts are not to be put together."""

    def mark_unpaired(self) -> None:
        """Say that values and texts of the row do not belong together for sure."""
        self.unpaired = True

    @property
    def has_slot(self) -> bool:
        """Whether a slot number stands in it, for any mode."""
        return any(cell.kind == "slots" for cell in self.slots.values())

    @property
    def has_value(self) -> bool:
        """Whether it prints values."""
        return bool(self.value or self.percent or self.hex)
