"""What was sent, where the light need not tell it: from the wire, or from a lamp without smoothing."""

from __future__ import annotations

import numpy as np

from modebook.measure.clipping import clipped_top, with_top
from modebook.measure.events import Change, Scene, recognise
from modebook.measure.fades import Fade, fade_of, with_fades
from modebook.measure.fit import Known
from modebook.measure.flicker import Flicker, without_flicker
from modebook.measure.prepare import samples_of
from modebook.measure.reference import Step, Steps, from_reference
from modebook.measure.sending import LOOSE_STEPS, Sending, from_changes, from_wire
from modebook.measure.staircases import in_steps, narrow_fits, wide_changes
from modebook.measure.trace import Trace

CLIPPED_MOST = 0.01  # of a reference's frames
STEP_DOUBT = 0.15  # of a frame: when a step came that few frames show


def _is_clipped(trace: Trace) -> bool:
    return trace.clipped is not None and bool(trace.clipped.mean() > CLIPPED_MOST)


def known_sending(
    trace: Trace, open_s: float, period_s: float, made_s: float, notes: list[str]
) -> Sending | None:
    """Give the steps that the wire or a reference lamp shows; None where neither does.

    open_s: the exposure; period_s, made_s: a packet's time on the fixture's line, and on the desk's where a
    gateway has another. notes: what a person should know is added to it.
    """
    if trace.sent is not None:
        return from_wire(trace)
    reference = trace.reference_trace
    if reference is None:
        return None
    clipped = _is_clipped(reference)
    cleaned, scene, _ = cleaned_of(reference)
    top = clipped_top(cleaned, scene)
    known = Known(period_s, open_s, trace.step_s, top=None if top is None else top.about, made_s=made_s)
    if top is not None:
        scene = with_top(scene, cleaned, top.level)
    wide = wide_changes(scene, trace.step_s)
    if clipped and (len(wide) or (len(scene.levels) > 2 and (top is None or not top.halved))):
        notes.append("the reference light is clipped, so that its levels are not known: it was not used")
        return None
    layout: Sending | None = None
    fades: list[Fade] = []
    if len(wide):
        samples, plain = samples_of(cleaned, scene), from_changes(scene)
        one, places = narrow_fits(["none"], samples, scene, plain, known, wide, cleaned, open_s)["none"]
        layout = in_steps("none", samples, scene, plain, known, wide, one, places, open_s)[0].sending

    def fitted(change: Change) -> Steps | None:
        """The steps of a staircase as the fit of several steps without smoothing finds them."""
        if layout is None:
            return None
        times_s = layout.steps_s(layout.start_s, layout.span_s)
        within = (times_s > change.from_s - 0.1) & (times_s < change.to_s + 0.05)
        fade = np.isin(layout.event, layout.ramps)
        ramp = bool((fade & within).any())
        # All packets of a fade belong to it, however long it is.
        inside = np.flatnonzero(np.isin(layout.event, layout.event[fade & within]) if ramp else within)
        if len(inside) < 2 or (len(inside) > LOOSE_STEPS and not ramp):
            return None
        low, high = float(scene.levels[0]), float(scene.levels[-1])
        values = layout.heights(layout.span_s, np.zeros(0) if layout.lead_s is None else layout.lead_s)[1]
        if ramp:
            fades.append(fade_of(layout, int(layout.event[inside[0]])))
        else:
            inside = inside[np.abs(values[inside + 1] - values[inside]) > 1e-6]
        heights = low + (high - low) * values[inside + 1]
        doubt_s = max(STEP_DOUBT * trace.step_s, (trace.step_s - open_s) / float(np.sqrt(12.0)))
        return [
            Step(float(at), float(height), doubt_s)
            for at, height in zip(times_s[inside], heights, strict=True)
        ]

    return with_fades(from_reference(cleaned, scene, open_s, period_s, fitted), fades, period_s, made_s)


def cleaned_of(trace: Trace) -> tuple[Trace, Scene, Flicker | None]:
    """Give the trace without mains flicker, what happens in it, and the flicker taken out."""
    scene = recognise(trace)
    cleaned, flicker = without_flicker(trace, scene.steady, scene.flat)
    if flicker is None:
        return trace, scene, None
    scene = recognise(cleaned)
    cleaned, flicker = without_flicker(trace, scene.steady, scene.flat)
    return cleaned, recognise(cleaned), flicker
