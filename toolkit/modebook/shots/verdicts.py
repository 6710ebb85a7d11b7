"""Whether a choice gives a cue what it asks for, by the policy's figures, and in words."""

from __future__ import annotations

from dataclasses import dataclass, replace

from modebook.documents.policy import Policy
from modebook.documents.shots import Cue
from modebook.shots.judging import NEAR, Case, Figures


@dataclass(frozen=True, slots=True)
class Verdict:
    """One cue under one choice."""

    cue: Cue
    ok: bool
    judged: bool
    """False where the engine cannot say; then `ok` is True and `why` says what is not known."""
    why: str
    figures: Figures | None = None


def verdict(policy: Policy, cue: Cue, case: Case, figures: Figures | None, frame_s: float) -> Verdict:
    """What a choice makes of a cue. frame_s: of the camera that sees it.

    smooth, unseen: the stepping is at most the policy's for that (see also as_smooth_as_can_be). snap,
    pixels: the setting adds at most the policy's frames. match is judged between units (see ties). What is
    not of intensity has no stepping that could be judged.
    """
    if cue.intent == "any":
        return Verdict(cue, True, False, "any look will do")
    if figures is None or case.fade is None:
        return Verdict(cue, True, False, case.why or "not judged")
    if cue.intent in ("snap", "pixels"):
        limit_s = policy["shot-snap-late"].value * frame_s
        ok = figures.worst_added_s <= limit_s * NEAR
        told = f"adds {_ms(figures.added_s)} to the {'snap' if cue.intent == 'snap' else 'pixels'}"
        return Verdict(cue, ok, True, f"{told}; {1000 * limit_s:.1f} ms is the most", figures)
    if cue.intent in ("smooth", "unseen"):
        if not case.judges_stepping:
            why = f"stepping of {cue.parameter} is not judged: JND is for intensity"
            return Verdict(cue, True, False, why, figures)
        smooth = policy["shot-stepping-smooth"].value
        wanted = policy["shot-stepping-unseen"].value if cue.intent == "unseen" else smooth
        ok = figures.worst_stepping_jnd <= wanted * NEAR
        why = f"steps {_jnd(figures.stepping_jnd)} JND; {wanted:g} is the most"
        return Verdict(cue, ok, True, why, figures)
    return Verdict(cue, True, True, f"runs {_ms(figures.delay_s)} behind", figures)


def as_smooth_as_can_be(policy: Policy, one: Verdict) -> Verdict:
    """The verdict of an unseen cue under the longest choice that the units have.

    Where it steps more than the policy has it for unseen, it will do up to the figure for smooth.
    """
    if one.ok or one.cue.intent != "unseen" or one.figures is None:
        return one
    if one.figures.worst_stepping_jnd > policy["shot-stepping-smooth"].value * NEAR:
        return one
    wanted = policy["shot-stepping-unseen"].value
    told = f"steps {_jnd(one.figures.stepping_jnd)} JND: above {wanted:g}, but as smooth as it can be"
    return replace(one, ok=True, why=told)


def _ms(span_s: tuple[float, float]) -> str:
    low, high = (f"{1000 * value:.0f}" for value in span_s)
    return f"{low} ms" if low == high else f"{low} to {high} ms"


def _jnd(span: tuple[float, float]) -> str:
    low, high = (f"{value:.2g}" for value in span)
    return low if low == high else f"{low} to {high}"
