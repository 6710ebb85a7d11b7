"""Short forms of the sixth charts: parameters as lines of text, and a sheet drawn on a bare canvas."""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any

from intake.corpus.content import M, P, R, span
from intake.corpus.open import fifth_b_kit as fb
from intake.corpus.open import fresh_kit as k

Rows = list[list[str]]


def _menu(lo: int, hi: int, text: str, kind: str) -> R:
    return k.optional(R(lo, hi, text, "as-menu"), sets=(kind,))


def _choice(lo: int, hi: int, text: str, kind: str, key: str) -> R:
    """A choice that a setting is set to; one that switches it off may be called nothing, or stop."""
    made = R(lo, hi, text, sets=(kind, key, text))
    return k.optional(made, does=("nothing", "stop")) if key == "off" else made


def _perhaps(lo: int, hi: int, text: str, kind: str) -> R:
    """A choice of a slot that does nothing but choose: the setting need not be told apart."""
    return k.optional(R(lo, hi, text), sets=(kind,), does=("nothing", "stop"))


def _sound(lo: int, hi: int, text: str) -> R:
    return k.optional(R(lo, hi, text), does=("runs", "random"))


def _erratic(lo: int, hi: int, text: str) -> R:
    """Flashing without a pattern, out of a list of effects: they run by themselves, too."""
    return k.optional(R(lo, hi, text), does=("runs", "random"), parameter=("strobe",))


KINDS: dict[str, Callable[..., R]] = {
    **fb.KINDS,
    "menu": _menu,
    "set": _choice,
    "maybe-set": _perhaps,
    "sound": _sound,
    "erratic": _erratic,
    "bounce": lambda lo, hi, text: R(lo, hi, text, "bounce"),
    "lamp-on": lambda lo, hi, text: R(lo, hi, text, hazard="lamp on"),
    "lamp-off": lambda lo, hi, text: R(lo, hi, text, hazard="lamp off"),
    "unchanged": lambda lo, hi, text: k.optional(R(lo, hi, text, "unchanged"), does=("nothing",)),
}


def _spans(text: str) -> tuple[str, tuple[Any, ...]]:
    """A text without the span at its end; ``[? 0 100 %]`` is one that may be left out."""
    found = re.search(r" \[(\? )?(\S+) (\S+) (\S+)\]$", text)
    if not found:
        return text, ()
    made = span(float(found[2]), float(found[3]), found[4])
    return text[: found.start()], (None, made) if found[1] else (made,)


def ranged(line: str) -> R:
    """``20-129 flash: Slow to fast [1 20 Hz] {hold 3; kept stored; needs dimmer 128 255}``."""
    head, text = line.strip().split(": ", 1)
    more: dict[str, Any] = {}
    if found := re.search(r" \{(.+)\}$", text):
        text = text[: found.start()]
        for part in found[1].split("; "):
            key, rest = part.split(" ", 1)
            if key == "hold":
                more["hold_s"] = float(rest)
            elif key == "kept":
                more["kept"] = rest
            else:
                word, lo, hi = rest.split()
                more["needs"] = (*more.get("needs", ()), (word, int(lo), int(hi)))
    text, spans = _spans(text)
    if spans:
        more |= {"span": spans[0], "spans_also": spans[1:]}
    values, _, kind = head.partition(" ")
    lo, _, hi = values.partition("-")
    name, *rest_of = kind.split() or ["plain"]
    return replace(KINDS[name](int(lo), int(hi or lo), text, *rest_of), **more)


def params(text: str) -> tuple[P, ...]:
    """Parameters out of lines: ``words: Label + fine label = text [0 100 %] @128+0``, ranges indented below.

    The default's fine byte stands behind its plus; ranges on one line are parted by a bar.
    """
    made: list[P] = []
    for line in text.strip("\n").splitlines():
        if line.startswith(" "):
            found = tuple(ranged(part) for part in line.split(" | "))
            made[-1] = replace(made[-1], ranges=(*made[-1].ranges, *found))
            continue
        words, rest = line.split(": ", 1)
        default = re.search(r" @(\d+)(?:\+(\d+))?$", rest)
        rest, spans = _spans(rest[: default.start()] if default else rest)
        names, _, said = rest.partition(" = ")
        label, *fine = names.split(" + ")
        made.append(P(tuple(words.split()), label, (), tuple(fine), said, spans))
        if default:
            low = int(default[2]) if default[2] else None
            made[-1] = replace(made[-1], default=int(default[1]), fine_default=low)
    return tuple(made)


def listed(names: str, first: int, width: int) -> tuple[R, ...]:
    """Places of a wheel or list, the names parted by commas; the first is the open one, from 0 on."""
    split = [name.strip() for name in names.split(",")]
    return (fb.white(0, first - 1, split[0]), *k.steps(first, width, *split[1:], last=255))


def pick(source: Sequence[P], labels: str, plan: str) -> tuple[P, ...]:
    """Some of the parameters, by their labels parted by bars, seated by a plan such as ``1/2 3``."""
    by_label = {p.label: p for p in source}
    return k.seat([by_label[label.strip()] for label in labels.split("|")], plan)


def run(source: Sequence[P], first: int = 1) -> tuple[P, ...]:
    """Parameters one after the other, fine bytes behind their coarse one."""
    made = []
    for p in source:
        made.append(p.at(*range(first, first + 1 + len(p.fine))))
        first += 1 + len(p.fine)
    return tuple(made)


def mode(seated: Sequence[P], title: str = "", *names: str) -> M:
    return k.mode(seated, title, *names)


def joined(params: Sequence[P], value: Callable[[int, int], str], columns: str, joint: str = "-") -> Rows:
    """Rows where a parameter of two bytes has one row: ``1-2``, with values up to 65535."""
    made: Rows = []
    for p in sorted(params, key=lambda one: one.slots[0]):
        rows = [(r.lo, r.hi, r.text) for r in p.ranges] or [(0, p.top, p.text)]
        for n, (lo, hi, text) in enumerate(rows):
            cells = {"slot": joint.join(map(str, p.slots)), "name": p.label}
            if n:
                cells = dict.fromkeys(cells, "")
            cells |= {"value": value(lo, hi), "text": text}
            made.append([cells[column] for column in columns.split()])
    return made


def columns(rows: Sequence[Sequence[str]], widths: Sequence[int]) -> list[str]:
    """Lines of columns; a cell too wide for its column goes on below, as viewers lay it out."""
    made: list[str] = []
    for row in rows:
        split = [_split(text, width - 2) for text, width in zip(row, widths, strict=True)]
        for n in range(max(map(len, split))):
            parts = (c[n] if n < len(c) else "" for c in split)
            made.append("".join(t.ljust(w) for t, w in zip(parts, widths, strict=True)).rstrip())
    return made


def _split(text: str, width: int) -> list[str]:
    lines = [""]
    for word in text.split():
        if lines[-1] and len(lines[-1]) + 1 + len(word) > width:
            lines.append("")
        lines[-1] = f"{lines[-1]} {word}".strip()
    return lines


class Sheet:
    """Pages drawn on reportlab's canvas: words at places, and rules where a chart has some."""

    def __init__(
        self,
        font: str = "Helvetica",
        head: str = "",
        foot: str = "",
        paper: tuple[float, float] = (595, 842),
        margin: float = 50,
    ) -> None:
        from reportlab.pdfgen.canvas import Canvas

        self.kept = io.BytesIO()
        self.canvas = Canvas(self.kept, pagesize=paper, invariant=1)
        self.font, self.head, self.foot, self.paper, self.margin = font, head, foot, paper, margin
        self.bold = "Times-Bold" if font == "Times-Roman" else f"{font}-Bold"
        self.page = 0
        self.y = 0.0
        self.turn()

    def turn(self) -> None:
        """A new page with its head and foot."""
        if self.page:
            self.canvas.showPage()
        self.page += 1
        wide, high = self.paper
        self.canvas.setFont(self.font, 7)
        self.canvas.drawString(self.margin, high - 30, self.head)
        self.canvas.drawString(self.margin, 26, self.foot)
        self.canvas.drawRightString(wide - self.margin, 26, str(self.page))
        self.y = high - 60

    def say(self, text: str, size: float = 9, bold: bool = False, after: float = 5, x: float = 0) -> None:
        """A paragraph, wrapped to the page."""
        from reportlab.lib.utils import simpleSplit

        font = self.bold if bold else self.font
        for line in simpleSplit(text, font, size, self.paper[0] - 2 * self.margin - x):
            self.room(size * 1.3 + (60 if bold else 0))
            self.canvas.setFont(font, size)
            self.canvas.drawString(self.margin + x, self.y - size, line)
            self.y -= size * 1.3
        self.y -= after

    def room(self, height: float) -> bool:
        """Turns the page where so much does not fit any more, and says so."""
        if self.y - height > 44:
            return False
        self.turn()
        return True

    def band(self, text: str, width: float, size: float = 9.5, gray: float = 0.85) -> None:
        """A heading on a gray ground."""
        self.room(90)
        self.canvas.setFillGray(gray)
        self.canvas.rect(self.margin, self.y - size * 1.6, width, size * 1.6, stroke=0, fill=1)
        self.canvas.setFillGray(0)
        self.canvas.setFont(self.bold, size)
        self.canvas.drawString(self.margin + 4, self.y - size * 1.15, text)
        self.y -= size * 2

    def table(
        self,
        rows: Rows,
        widths: Sequence[float],
        rules: str = "",
        size: float = 8.5,
        heads: int = 1,
        by_column: bool = False,
        x: float = 0,
        after: float = 12,
    ) -> None:
        """A table; `rules` are rows, slots, head or box. `by_column` writes a page's columns one by one."""
        from reportlab.lib.utils import simpleSplit

        drawn: list[tuple[int, float, float, str, str]] = []
        starts = [self.margin + x + sum(widths[:n]) for n in range(len(widths) + 1)]

        def flush() -> None:
            for _, left, y, font, text in sorted(drawn, key=lambda one: one[0]) if by_column else drawn:
                self.canvas.setFont(font, size)
                self.canvas.drawString(left, y, text)
            drawn.clear()

        def put(n: int, row: list[str]) -> None:
            font = self.bold if n < heads else self.font
            split = [simpleSplit(t, font, size, w - 5) for t, w in zip(row, widths, strict=True)]
            high = max(max(map(len, split)), 1) * size * 1.2 + 4
            if self.y - high <= 44:
                flush()
                self.turn()
                if n >= heads:
                    for m in range(heads):
                        put(m, rows[m])
            top = self.y
            for column, lines in enumerate(split):
                for m, line in enumerate(lines):
                    y = top - 2 - size * (1 + 1.2 * m)
                    drawn.append((column, starts[column] + 3, y, font, line))
            self.y -= high
            self.canvas.setLineWidth(0.5)
            if rules == "box":
                for left in starts:
                    self.canvas.line(left, top, left, self.y)
            if rules in ("box", "rows") or (rules == "slots" and row[0]):
                self.canvas.line(starts[0], top, starts[-1], top)
            if rules in ("box", "rows") or (rules and n < heads) or (n == len(rows) - 1 and rules):
                self.canvas.line(starts[0], self.y, starts[-1], self.y)

        for n, row in enumerate(rows):
            put(n, row)
        flush()
        self.y -= after

    def data(self) -> bytes:
        self.canvas.save()
        return self.kept.getvalue()
