"""What was sent, as steps: from the wire (`sent`), from the light's own changes, or from steps given."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from modebook.measure.errors import MeasureError
from modebook.measure.events import Scene
from modebook.measure.trace import Floats, Trace

HELD_S = 0.2  # a level held for less cannot be read off the light: it is taken to lie between its neighbors
FADE_STEP_S = 0.045  # steps closer than this are packets of one fade, whose times belong together
SURE_S = 2e-4  # a step whose time is known less well is an event of its own
APART_S = 0.4  # steps farther apart are events of their own, which the desk's clock need not bind
SAME_SENT = 0.004  # of full: one step of 8 bits
RAMP_SPARE = 5  # packets more than a fade's span has: it may start and last longer than it seems
LOOSE_STEPS = 6  # a staircase of more is nearly a fade, and its steps come evenly


@dataclass(frozen=True, slots=True)
class Sending:
    """The steps of a measurement, J of them in E events.

    event: [J], which event each belongs to; share: [J], how far along its event's span it comes, 0 to 1;
    start_s: [E], when each event's first step is sent, about; span_s: [E], from its first to its last
    step; free_span: [E], where the span is not known; weights: [J + 1, P], the level before the first
    step and after each as shares of P levels; values: [J + 1], the same in shares of full; doubt_s: [E],
    how well start_s is known; None where the light itself is all there is; slack_s: [E], how far from it any
    time is as good (0: doubt_s is about start_s itself).
    A fade comes as packets of a straight line, at a phase and with heights that nobody knows: tick_s: [J],
    how long after the event's start such a packet comes, 0 for other steps; lead_s: [E], how far along the
    line the first packet is; span_s is then how long the line lasts. A gateway sends the newest packet it
    has: made_s is then the desk's packet time (0: no gateway), phase_s: [E], when one of the desk's packets
    came after the event's start.
    """

    event: NDArray[np.intp]
    share: Floats
    start_s: Floats
    span_s: Floats
    free_span: NDArray[np.bool_]
    weights: Floats
    values: Floats
    doubt_s: Floats | None = None
    slack_s: Floats | None = None
    tick_s: Floats | None = None
    lead_s: Floats | None = None
    made_s: float = 0.0
    phase_s: Floats | None = None

    @property
    def ramps(self) -> NDArray[np.intp]:
        """The events that are fades in packets whose heights are not known."""
        ramp = np.zeros(len(self.start_s), dtype=bool)
        if self.tick_s is not None:
            ramp[self.event[self.tick_s > 0.0]] = True
        return np.flatnonzero(ramp)

    @property
    def timed(self) -> bool:
        """Whether the time of sending is known from something else than the light itself."""
        return self.doubt_s is not None

    def steps_s(self, start_s: Floats, span_s: Floats) -> Floats:
        """When each step is sent, for these starts and spans."""
        times_s = start_s[self.event] + self.share * span_s[self.event]
        return np.asarray(times_s if self.tick_s is None else times_s + self.tick_s)

    def heights(self, span_s: Floats, lead_s: Floats) -> tuple[Floats, Floats]:
        """Weights and values with the packets of fades where a straight fade of these spans has them."""
        if self.tick_s is None:
            return self.weights, self.values
        weights, values = self.weights.copy(), self.values.copy()
        for e in self.ramps:
            rows = np.flatnonzero(self.event == e)
            made = self.tick_s[rows]
            if self.made_s > 0.0 and self.phase_s is not None:
                made = made - np.mod(made - self.phase_s[e], self.made_s)
            done = np.clip((made + lead_s[e]) / max(span_s[e], 1e-6), 0.0, 1.0)
            done[-1] = 1.0
            first, last = rows[0], rows[-1] + 1
            weights[rows + 1] = weights[first] + done[:, None] * (weights[last] - weights[first])
            values[rows + 1] = values[first] + done * (values[last] - values[first])
        return weights, values


def from_changes(scene: Scene) -> Sending:
    """Give each change as one step at an unknown time, about half its width before it is half done."""
    count = len(scene.changes)
    levels = scene.levels
    order = [scene.changes[0].before, *(change.after for change in scene.changes)]
    weights = np.zeros((count + 1, len(levels)))
    weights[np.arange(count + 1), order] = 1.0
    values = (levels - levels[0]) / (levels[-1] - levels[0])
    start_s = np.array([change.half_s - 0.5 * change.width_s for change in scene.changes])
    return Sending(
        np.arange(count),
        np.zeros(count),
        start_s,
        np.zeros(count),
        np.zeros(count, dtype=bool),
        weights,
        values[order],
    )


def with_stairs(sending: Sending, event: int, steps: int, span_s: float) -> Sending:
    """Give the same, with one event's single step taken apart into so many even ones over a free span."""
    at = int(np.flatnonzero(sending.event == event)[0])
    shares = np.arange(1, steps + 1) / steps
    between = sending.weights[at] + shares[:, None] * (sending.weights[at + 1] - sending.weights[at])
    valued = sending.values[at] + shares * (sending.values[at + 1] - sending.values[at])
    span, free = sending.span_s.copy(), sending.free_span.copy()
    start = sending.start_s.copy()
    span[event], free[event] = span_s, True
    tick = sending.tick_s
    return replace(
        sending,
        tick_s=None if tick is None else np.concatenate([tick[:at], np.zeros(steps), tick[at + 1 :]]),
        event=np.concatenate([sending.event[:at], np.full(steps, event), sending.event[at + 1 :]]),
        share=np.concatenate([sending.share[:at], np.linspace(0, 1, steps), sending.share[at + 1 :]]),
        start_s=start,
        span_s=span,
        free_span=free,
        weights=np.concatenate([sending.weights[: at + 1], between, sending.weights[at + 2 :]]),
        values=np.concatenate([sending.values[: at + 1], valued, sending.values[at + 2 :]]),
    )


def with_ramp(
    sending: Sending,
    event: int,
    span_s: float,
    period_s: float,
    lead_s: float,
    made_s: float = 0.0,
    phase_s: float = 0.0,
) -> Sending:
    """Give the same, with one event's single step taken apart into the packets of a straight fade.

    made_s, phase_s: the desk's packet time, and when one came, where a gateway sends at a rate of its own.
    """
    steps = round(span_s / period_s) + RAMP_SPARE
    stairs = with_stairs(sending, event, steps, span_s)
    rows = stairs.event == event
    tick = np.zeros(len(stairs.event)) if stairs.tick_s is None else stairs.tick_s.copy()
    tick[rows] = np.arange(steps) * period_s
    lead = np.zeros(len(sending.start_s)) if sending.lead_s is None else sending.lead_s.copy()
    phase = np.zeros(len(sending.start_s)) if sending.phase_s is None else sending.phase_s.copy()
    lead[event], phase[event] = lead_s, phase_s
    share = np.where(rows, 0.0, stairs.share)
    return replace(stairs, share=share, tick_s=tick, lead_s=lead, made_s=made_s, phase_s=phase)


def part_of(sending: Sending, events: NDArray[np.intp]) -> tuple[Sending, NDArray[np.intp]]:
    """Give some of the changes alone, each a single step between its own levels, as from_changes gives them.

    The levels before and after each stay what they are; where a change left out lies between two, the
    light is taken to jump at a time far from all samples of either. Also gives the place of each event.
    """
    places: list[int] = []
    rows = [int(sending.event.searchsorted(e)) for e in events]
    order = [rows[0]]
    starts: list[float] = []
    for n, row in enumerate(rows):
        if n and not np.array_equal(sending.weights[order[-1]], sending.weights[row]):
            starts.append(0.5 * (float(sending.start_s[events[n - 1]]) + float(sending.start_s[events[n]])))
            order.append(row)
        places.append(len(starts))
        starts.append(float(sending.start_s[events[n]]))
        order.append(row + 1)
    count = len(starts)
    part = Sending(
        np.arange(count),
        np.zeros(count),
        np.array(starts),
        np.zeros(count),
        np.zeros(count, dtype=bool),
        sending.weights[order],
        sending.values[order],
    )
    return part, np.array(places)


def loosened(sending: Sending, start_s: Floats, span_s: Floats) -> Sending:
    """Give the same with every step of a short staircase as an event of its own; itself where none is."""
    counts = np.bincount(sending.event, minlength=len(start_s))
    if not ((counts > 1) & (counts <= LOOSE_STEPS) & sending.free_span).any():
        return sending
    steps_s = sending.steps_s(start_s, span_s)
    whole = counts > LOOSE_STEPS
    event: list[int] = []
    starts: list[float] = []
    spans: list[float] = []
    free: list[bool] = []
    leads: list[float] = []
    phases: list[float] = []
    for j, e in enumerate(sending.event):
        if j == 0 or e != sending.event[j - 1] or not whole[e]:
            starts.append(float(steps_s[j]))
            spans.append(float(span_s[e]) if whole[e] else 0.0)
            free.append(bool(whole[e]))
            leads.append(0.0 if sending.lead_s is None else float(sending.lead_s[e]))
            phases.append(0.0 if sending.phase_s is None else float(sending.phase_s[e]))
        event.append(len(starts) - 1)
    share = np.where(whole[sending.event], sending.share, 0.0)
    return replace(
        sending,
        event=np.array(event),
        share=share,
        start_s=np.array(starts),
        span_s=np.array(spans),
        free_span=np.array(free),
        lead_s=None if sending.lead_s is None else np.array(leads),
        phase_s=None if sending.phase_s is None else np.array(phases),
    )


def from_steps(
    times_s: Floats,
    values: Floats,
    doubt_s: float | Floats,
    until_s: float,
    from_s: float,
    slack_s: Floats | None = None,
) -> Sending:
    """Give steps at known times: times_s [J], rising; values [J + 1] in shares of full; doubt_s [J] or one;
    slack_s [J] or none.

    Levels that are held for long are read off the light; others are taken to lie between them.
    """
    held_s = np.diff(np.concatenate([[from_s], times_s, [until_s]]))
    anchors: list[float] = []
    for value in np.unique(np.round(values / SAME_SENT) * SAME_SENT):
        close = np.abs(values - value) <= SAME_SENT
        if held_s[close].max(initial=0.0) >= HELD_S:
            anchors.append(float(np.mean(values[close])))
    if len(anchors) < 2:
        anchors = [float(values.min()), float(values.max())]
    places = np.array(sorted(anchors))
    weights = np.stack([np.interp(values, places, unit) for unit in np.eye(len(places))], axis=1)
    doubts = np.broadcast_to(np.asarray(doubt_s, dtype=np.float64), times_s.shape)
    gaps_s = np.diff(times_s)
    loose = (gaps_s > FADE_STEP_S) & (np.maximum(doubts[1:], doubts[:-1]) > SURE_S)
    apart = np.concatenate([[True], (gaps_s > APART_S) | loose])
    event = np.cumsum(apart) - 1
    start_s = times_s[apart]
    last = np.array([times_s[event == e][-1] for e in range(len(start_s))])
    span_s = last - start_s
    share = np.where(span_s[event] > 0, (times_s - start_s[event]) / np.maximum(span_s[event], 1e-12), 0.0)
    return Sending(
        event,
        share,
        start_s,
        span_s,
        np.zeros(len(start_s), dtype=bool),
        weights,
        values,
        doubts[apart],
        None if slack_s is None else slack_s[apart],
    )


def from_wire(trace: Trace) -> Sending:
    """Give the steps of the column `sent`: each comes between two samples. Raises MeasureError for none."""
    assert trace.sent is not None
    at = np.flatnonzero(np.abs(np.diff(trace.sent)) > 1e-6)
    if not len(at):
        raise MeasureError(
            trace.path,
            "the column sent never changes",
            remedy="log the level on the wire beside the light, or leave the column out",
        )
    gaps_s = trace.time_s[at + 1] - trace.time_s[at]
    times_s = trace.time_s[at] + 0.5 * gaps_s
    values = np.concatenate([trace.sent[at], trace.sent[at[-1] + 1 : at[-1] + 2]])
    return from_steps(
        times_s,
        values,
        np.maximum(gaps_s, 1e-6) / np.sqrt(12.0),
        float(trace.time_s[-1]),
        float(trace.time_s[0]),
    )
