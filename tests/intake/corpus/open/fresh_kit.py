"""Short forms for charts written out by hand: what ranges do, where slots sit, and the printed lines."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Any

from intake.corpus.content import M, Made, P, R, span, truth

LEVEL = (span(0, 100, "%"),)


def optional(r: R, **fields: Any) -> R:
    """The same with fields that a reading may carry and need not."""
    return replace(r, may={**r.may, **fields})


def nothing(lo: int, hi: int, text: str = "No function") -> R:
    return R(lo, hi, text, "nothing")


def opened(lo: int, hi: int, text: str = "Open") -> R:
    return R(lo, hi, text, "open")


def closed(lo: int, hi: int, text: str = "Closed") -> R:
    return optional(R(lo, hi, text, "closed"), hazard=("blackout",))


def stop(lo: int, hi: int, text: str = "Stop") -> R:
    return R(lo, hi, text, "stop")


def out(lo: int, hi: int, text: str) -> R:
    """A prism or frost that is out of the beam: no word of the vocabulary is due."""
    return optional(R(lo, hi, text), does=("open", "nothing"))


def flash(lo: int, hi: int, text: str, hz: tuple[float, float] | None = None) -> R:
    """Even flashing, which may be called the strobe's own stretch."""
    printed = span(*hz, "Hz") if hz else None
    return R(lo, hi, text, span=printed, may={"parameter": ("strobe",)})


def pulse(lo: int, hi: int, text: str) -> R:
    return optional(R(lo, hi, text), does=("runs",), parameter=("strobe",))


def chance(lo: int, hi: int, text: str) -> R:
    """Flashing at random."""
    return optional(R(lo, hi, text, "random"), parameter=("strobe",))


def spin(lo: int, hi: int, text: str, part: str = "", rpm: tuple[float, float] | None = None) -> R:
    """Endless turning, which may be called the part's rotation."""
    made = R(lo, hi, text, "rotate", span=span(*rpm, "rpm") if rpm else None)
    return optional(made, parameter=(f"{part}-rotation",)) if part else made


def index(lo: int, hi: int, text: str, part: str, deg: tuple[float, float] | None = None) -> R:
    """A set angle."""
    made = R(lo, hi, text, "index", span=span(*deg, "deg") if deg else None)
    return optional(made, parameter=(f"{part}-index",))


def rainbow(lo: int, hi: int, text: str) -> R:
    """A color wheel that turns without end."""
    return optional(
        R(lo, hi, text, "rotate"), does=("runs",), parameter=("color-wheel-rotation", "color-macro")
    )


def shake(lo: int, hi: int, text: str) -> R:
    return optional(R(lo, hi, text, "bounce"), parameter=("gobo-shake",))


def runs(lo: int, hi: int, text: str) -> R:
    return R(lo, hi, text, "runs")


def maybe_runs(lo: int, hi: int, text: str) -> R:
    return optional(R(lo, hi, text), does=("runs",))


def reset(lo: int, hi: int, text: str, hold_s: float | None = None) -> R:
    return R(lo, hi, text, hazard="reset", hold_s=hold_s)


def fan_choice(lo: int, hi: int, text: str) -> R:
    """A choice of a slot that does nothing but choose how fans run."""
    return optional(R(lo, hi, text), sets=("fan",))


def steps(first: int, width: int, *texts: str, last: int | None = None) -> tuple[R, ...]:
    """Positions of equal width, one after the other; the last may end elsewhere."""
    made = [R(first + n * width, first + (n + 1) * width - 1, text) for n, text in enumerate(texts)]
    if last is not None:
        made[-1] = replace(made[-1], hi=last)
    return tuple(made)


def level(word: str, label: str, text: str = "", fine: str = "", also: Sequence[str] = ()) -> P:
    """A plain level; a text that prints percents has a span."""
    spans = LEVEL if "%" in text else ()
    return P((word, *also), label, fine=(fine,) if fine else (), text=text, spans=spans)


def seat(params: Iterable[P], plan: str) -> tuple[P, ...]:
    """Parameters at the slots of a plan: ``1/2 3 - 4`` has a fine byte at 2 and leaves out the third."""
    seats = plan.split()
    params = list(params)
    if len(seats) != len(params):
        raise ValueError(f"{len(params)} parameters, {len(seats)} seats")
    return tuple(
        p.at(*(int(s) for s in at.split("/"))) for p, at in zip(params, seats, strict=True) if at != "-"
    )


def mode(params: Sequence[P], title: str = "", *names: str) -> M:
    """A mode as long as its highest slot; its title counts among its names."""
    known = tuple(dict.fromkeys((*names, title))) if title else names
    return M(title, known, max(slot for p in params for slot in p.slots), tuple(params))


@dataclass(frozen=True)
class Line:
    """One slot as a chart prints it: its name, and its values with their texts."""

    slot: int
    name: str
    rows: tuple[tuple[int, int, str], ...]
    p: P
    byte: int
    """0 for the coarse byte."""


def lines(params: Iterable[P]) -> list[Line]:
    """A line a slot, in the order of the slots. A fine byte has all values and no text."""
    made: list[Line] = []
    for p in params:
        rows = tuple((r.lo, r.hi, r.text) for r in p.ranges) or ((0, 255, p.text),)
        made.append(Line(p.slots[0], p.label, rows, p, 0))
        made += [Line(s, p.fine[n], ((0, 255, ""),), p, n + 1) for n, s in enumerate(p.slots[1:])]
    return sorted(made, key=lambda line: line.slot)


def hyphen(lo: int, hi: int) -> str:
    return str(lo) if lo == hi else f"{lo}-{hi}"


def zeros(lo: int, hi: int) -> str:
    return f"{lo:03}" if lo == hi else f"{lo:03}-{hi:03}"


def dash(lo: int, hi: int) -> str:
    return str(lo) if lo == hi else f"{lo} – {hi}"


def made(maker: str, model: str, modes: Sequence[M], data: bytes | str) -> Made:
    """A chart and its truth."""
    return Made(data.encode() if isinstance(data, str) else data, truth(maker, model, list(modes)))


def steady(data: bytes) -> bytes:
    """A workbook with one time in all its members, so that a second run has the same bytes."""
    kept = io.BytesIO()
    when = b"2026-01-02T00:00:00Z"
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(kept, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            body = re.sub(rb"(<dcterms:modified[^>]*>)[^<]*", rb"\g<1>" + when, old.read(name))
            new.writestr(zipfile.ZipInfo(name, (2026, 1, 2, 0, 0, 0)), body, zipfile.ZIP_DEFLATED)
    return kept.getvalue()


@dataclass(frozen=True)
class Side:
    """A byte of a parameter and its slot in each mode, None where a mode lacks it."""

    name: str
    rows: tuple[tuple[int, int, str], ...]
    slots: tuple[int | None, ...]


def sides(params: Sequence[P], *plans: str) -> list[Side]:
    """The lines of a chart that has its modes side by side, in the order of the parameters."""
    split = [[() if at == "-" else tuple(map(int, at.split("/"))) for at in plan.split()] for plan in plans]
    found: list[Side] = []
    for n, p in enumerate(params):
        mine = [seats[n] for seats in split]
        for byte in range(max(map(len, mine))):
            rows = tuple((r.lo, r.hi, r.text) for r in p.ranges) or ((0, 255, p.text),)
            slots = tuple(s[byte] if byte < len(s) else None for s in mine)
            name = p.fine[byte - 1] if byte else p.label
            found.append(Side(name, ((0, 255, ""),) if byte else rows, slots))
    return found
