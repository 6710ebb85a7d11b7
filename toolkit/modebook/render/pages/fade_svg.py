"""Draws one fade as SVG for a page: sent, light, frames, stepping; shapes carry it, not color."""

from __future__ import annotations

import math
from collections.abc import Iterable
from html import escape
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from modebook.documents.cases import Case
    from modebook.response.traces import Trace

WIDTH, TOP, LEVELS, GAP, STEPS, FOOT = 560, 12, 190, 22, 84, 34
LEFT, RIGHT = 44, 8
HEIGHT = TOP + LEVELS + GAP + STEPS + FOOT
COLUMNS = WIDTH - LEFT - RIGHT
MOST_MARKS = 130
"""Frames beyond which their shutter times are drawn as a line through their middles."""


def fade_svg(case: Case, told: Trace, title: str, ends: tuple[float, float], top_jnd: float) -> str:
    """One case's picture; `ends` (s) and `top_jnd` of its scales are the same for all beside it."""
    from_s, to_s = ends
    top = max(case.fade.from_percent, case.fade.to_percent, 1.0) / 100.0
    frame = _Frame(from_s, to_s, top, max(top_jnd, 2.0))
    snap = case.fade.seconds_s == 0
    height = HEIGHT if not snap else TOP + LEVELS + FOOT
    parts = [
        f'<svg class="fade-plot" viewBox="0 0 {WIDTH} {height}" role="img" aria-label="{escape(title)}">',
        *_grid(frame, snap),
        f'<path class="sent" d="{_stairs(frame, case, told)}"/>',
    ]
    if not snap:
        parts.append(f'<path class="even" d="{_line(frame, told.light_s, told.ideal)}"/>')
    parts.append(f'<path class="light" d="{_line(frame, told.light_s, told.light)}"/>')
    if case.fade.camera is not None:
        parts += _frames(frame, case.fade.camera.open_s, told)
    shown = told.lost & (told.heard_s <= to_s) & (told.heard_s >= from_s)
    for at_s, level in zip(told.heard_s[shown], told.held[shown], strict=True):
        x, y = frame.x(float(at_s)), frame.y(float(level))
        parts.append(f'<path class="lost" d="M{x - 3:.1f} {y - 3:.1f}l6 6m0 -6l-6 6"/>')
    if not snap:
        parts += _stepping(frame, told)
    parts.append("</svg>")
    return "".join(parts)


class _Frame:
    """Where a time, a level and a stepping lie in the picture."""

    def __init__(self, from_s: float, to_s: float, top: float, top_jnd: float) -> None:
        self.from_s, self.to_s, self.top, self.top_jnd = from_s, to_s, top, top_jnd

    def x(self, at_s: float) -> float:
        return LEFT + COLUMNS * (at_s - self.from_s) / (self.to_s - self.from_s)

    def y(self, level: float) -> float:
        return TOP + LEVELS * (1.0 - level / self.top)

    def y_jnd(self, jnd: float) -> float:
        """Straight up to 1 JND, by powers of ten above, so that faint and gross stepping both show."""
        span = 1.0 + math.log10(max(self.top_jnd, 1.0))
        share = jnd if jnd <= 1.0 else 1.0 + math.log10(jnd)
        return TOP + LEVELS + GAP + STEPS * (1.0 - min(share / span, 1.0))


def _grid(frame: _Frame, snap: bool) -> Iterable[str]:
    for step in range(5):
        level = frame.top * step / 4
        y = frame.y(level)
        yield f'<path class="grid" d="M{LEFT} {y:.1f}H{WIDTH - RIGHT}"/>'
        yield f'<text class="tick end" x="{LEFT - 5}" y="{y + 4:.1f}">{100 * level:.3g}</text>'
    yield f'<text class="tick end" x="{LEFT - 5}" y="{TOP + LEVELS / 8 + 4:.1f}">%</text>'
    bottom = TOP + LEVELS + (0 if snap else GAP + STEPS)
    step_s = _even_step(frame.to_s - frame.from_s)
    at_s = math.ceil(frame.from_s / step_s) * step_s
    while at_s <= frame.to_s:
        x = frame.x(at_s)
        yield f'<path class="grid" d="M{x:.1f} {TOP}V{bottom}"/>'
        yield f'<text class="tick middle" x="{x:.1f}" y="{bottom + 15}">{round(at_s, 6):g}</text>'
        at_s += step_s
    yield (
        f'<text class="tick end" x="{WIDTH - RIGHT}" y="{bottom + 29}">'
        "seconds after the cue's first packet</text>"
    )


def _even_step(span_s: float) -> float:
    rough = span_s / 6
    power = 10.0 ** math.floor(math.log10(rough))
    return next(power * each for each in (1, 2, 5, 10) if power * each >= rough)


def _stairs(frame: _Frame, case: Case, told: Trace) -> str:
    shown = told.heard_s <= frame.to_s
    times = np.concatenate([[frame.from_s], told.heard_s[shown], [frame.to_s]])
    levels = np.concatenate([[case.fade.from_percent / 100.0], told.held[shown], told.held[shown][-1:]])
    doubled_s, doubled = np.repeat(times, 2)[1:], np.repeat(levels, 2)[:-1]
    return _line(frame, doubled_s, doubled)


def _line(frame: _Frame, times_s: NDArray[np.float64], levels: NDArray[np.float64]) -> str:
    """A path through points, thinned to the first, least, greatest and last of each column of the picture."""
    column = np.floor((times_s - frame.from_s) / (frame.to_s - frame.from_s) * COLUMNS).astype(np.int64)
    if len(times_s) > 3 * COLUMNS:
        order = np.lexsort((levels, column))
        first = np.flatnonzero(np.r_[True, np.diff(column[order]) > 0])
        last = np.r_[first[1:], len(order)] - 1
        ends = np.flatnonzero(np.r_[True, np.diff(column) > 0])
        keep = np.unique(np.concatenate([order[first], order[last], ends, [len(times_s) - 1]]))
        times_s, levels = times_s[keep], levels[keep]
    points = [
        f"{frame.x(float(t)):.1f} {frame.y(float(v)):.1f}" for t, v in zip(times_s, levels, strict=True)
    ]
    kept = [point for place, point in enumerate(points) if place == 0 or point != points[place - 1]]
    return "M" + "L".join(kept)


def _frames(frame: _Frame, open_s: float, told: Trace) -> list[str]:
    shown = (told.samples_s >= frame.from_s) & (told.samples_s + open_s <= frame.to_s)
    starts_s, levels = told.samples_s[shown], told.sampled[shown]
    if len(starts_s) > MOST_MARKS:
        return [f'<path class="frames" d="{_line(frame, starts_s + open_s / 2, levels)}"/>']
    marks = []
    for at_s, level in zip(starts_s, levels, strict=True):
        x, y = frame.x(float(at_s)), frame.y(float(level))
        marks.append(f"M{x:.1f} {y:.1f}H{frame.x(float(at_s) + open_s):.1f}")
    path = "".join(marks)
    centers = [
        (frame.x(float(t) + open_s / 2), frame.y(float(v))) for t, v in zip(starts_s, levels, strict=True)
    ]
    dots = "".join(f'<circle class="frame-dot" cx="{x:.1f}" cy="{y:.1f}" r="2.4"/>' for x, y in centers)
    return [f'<path class="frames" d="{path}"/>', dots]


def _stepping(frame: _Frame, told: Trace) -> Iterable[str]:
    from modebook.response.seen import THRESHOLD_JND

    base = TOP + LEVELS + GAP + STEPS
    ticks = [0.0, 1.0, *(10.0**power for power in range(1, 5) if 10.0**power <= frame.top_jnd)]
    for jnd in ticks:
        y = frame.y_jnd(jnd)
        yield f'<text class="tick end" x="{LEFT - 5}" y="{y + 4:.1f}">{jnd:g}</text>'
    yield f'<text class="tick" x="{LEFT + 3}" y="{TOP + LEVELS + GAP - 7}">'
    yield "stepping, JND: above the dashed line it begins to be seen (estimate)</text>"
    at_s = told.samples_s[1:]
    inside = (at_s <= frame.to_s) & (at_s >= frame.from_s)
    columns: dict[int, float] = {}
    for t, jnd in zip(at_s[inside], told.stepping_jnd[inside], strict=True):
        x = round(frame.x(float(t)))
        columns[x] = max(columns.get(x, 0.0), float(jnd))
    bars = "".join(f"M{x} {base}V{frame.y_jnd(jnd):.1f}" for x, jnd in columns.items() if jnd > 1e-3)
    yield f'<path class="axis" d="M{LEFT} {base}H{WIDTH - RIGHT}"/>'
    if bars:
        yield f'<path class="stepping" d="{bars}"/>'
    y = frame.y_jnd(THRESHOLD_JND)
    yield f'<path class="threshold" d="M{LEFT} {y:.1f}H{WIDTH - RIGHT}"/>'
