"""Cures of a fade that is seen, each with the figure that the engine found for it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from modebook.documents.cases import Case
from modebook.response.cures import Cure, cures
from modebook.response.fade import Fade
from modebook.response.seen import MARGIN_FACTOR, THRESHOLD_JND


def cure_lines(cases: Sequence[Case], answers: Sequence[Mapping[str, Any]]) -> list[str]:
    """Sentences for the first case of known length that is seen, or may be; none where no case is."""
    for case, answer in zip(cases, answers, strict=True):
        if case.known and (answer["seen"] or answer["undecided"]):
            found = cures(case.fade, THRESHOLD_JND if answer["seen"] else THRESHOLD_JND / MARGIN_FACTOR)
            before = f"{case.label}: " if len(cases) > 1 else ""
            works = [before + _told(cure, case.fade) for cure in found if cure.works]
            fails = [_named(cure, case.fade) for cure in found if not cure.works]
            if fails:
                best = min(
                    (cure for cure in found if not cure.works), key=lambda cure: cure.worst_stepping_jnd
                )
                works.append(
                    f"{before}not enough by itself: {', '.join(fails)} "
                    f"(the best of these leaves {best.worst_stepping_jnd:.2g} JND)"
                )
            return works
    return []


def _told(cure: Cure, fade: Fade) -> str:
    told = f"{_named(cure, fade)}: the worst stepping is then {cure.worst_stepping_jnd:.2g} JND"
    if cure.adds_s > 0:
        told += f"; a snap would be {1000 * cure.adds_s:.0f} ms later with it"
    return told


def _named(cure: Cure, fade: Fade) -> str:
    if cure.kind == "bits":
        return f"{cure.bits} bits in place of {fade.bits}"
    if cure.kind == "smoothing":
        return f"smoothing over {cure.packets:g} packet{'s' * (cure.packets != 1)}"
    if cure.kind == "bits and smoothing":
        return f"{cure.bits} bits and smoothing over {cure.packets:g} packet{'s' * (cure.packets != 1)}"
    if cure.kind == "slower":
        return f"a fade of {cure.seconds_s:.3g} s in place of {fade.seconds_s:g} s"
    return f"{cure.refresh_hz:.4g} packets a second in place of {fade.link.refresh_hz:g}"
