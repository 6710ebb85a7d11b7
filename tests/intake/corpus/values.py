"""How makers print ranges of values: dashes, zeros before, words between, hex, percent."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random

MARKS = {"hyphen": "-", "en": "–", "spaced": " - ", "spaceden": " – ", "dots": "..", "ellipsis": "…"}


@dataclass
class Values:
    """A chart's manner of printing ranges. `kind` is a key of MARKS, "to" for the word, or "mixed"."""

    kind: str = "hyphen"
    zeros: bool = False
    word: str = "to"
    rng: Random | None = None

    def number(self, value: int) -> str:
        return f"{value:03d}" if self.zeros else str(value)

    def __call__(self, lo: int, hi: int) -> str:
        if lo == hi:
            return self.number(lo)
        if self.kind == "to":
            return f"{self.number(lo)} {self.word} {self.number(hi)}"
        kind = self.kind
        if kind == "mixed" and self.rng is not None:
            kind = self.rng.choice(["hyphen", "en", "spaced"])
        return f"{self.number(lo)}{MARKS[kind]}{self.number(hi)}"


def hexed(lo: int, hi: int, manner: str = "h") -> str:
    """A range in hex: 00h-0Ah, 0x00-0x0A or 00-0A."""
    forms = {"h": "{:02X}h", "0x": "0x{:02X}", "bare": "{:02X}"}
    low, high = forms[manner].format(lo), forms[manner].format(hi)
    return low if lo == hi else f"{low}-{high}"


def percent(lo: int, hi: int) -> str:
    """The share of full, rounded as makers round: neighbors overlap."""
    low, high = round(lo / 255 * 100), round(hi / 255 * 100)
    return f"{low}-{high}%" if low != high else f"{low}%"


def thousands(value: int, mark: str) -> str:
    return f"{value:,}".replace(",", mark)
