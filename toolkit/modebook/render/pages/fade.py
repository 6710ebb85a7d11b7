"""The fade page: the answer in words, a table, a picture of each case, the grays that its patches play."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np

from modebook.render.fade_cures import cure_lines
from modebook.render.fade_words import (
    Answer,
    fade_sentences,
    figure,
    milliseconds,
    question,
    seen_words,
    snap_sentences,
    verdict,
)
from modebook.render.pages.fade_question import FadeQuestion, cases_of

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from modebook.documents.cases import Case
    from modebook.documents.fixture import Fixture
    from modebook.response.fade import Fade
    from modebook.response.traces import Trace

PLAY_HZ = 60.0
"""How finely a patch's light is told: once for each picture of a usual screen."""
MOST_PLAYED = 3600
"""Grays of one patch; a longer fade is told more coarsely."""
FLASH_HZ = 3.0
"""WCAG 2.2, success criterion 2.3.1: nothing may flash more often than this in a second."""


@dataclass(frozen=True, slots=True)
class Column:
    """One case as the page shows it."""

    label: str
    verdict: str
    """`seen`, `not seen`, `perhaps`, `depends`; empty for a snap."""
    figures: tuple[tuple[str, str], ...]
    """Titles and figures of its row in the table."""
    svg: str
    """The picture; empty where the length is unknown, for there is no one light to draw."""
    play: dict[str, Any] | None
    reached_by: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class FadePage:
    """All that the page draws, as text and figures that need no more computing."""

    asked: str
    sentences: tuple[str, ...]
    columns: tuple[Column, ...]
    cures: tuple[str, ...]
    assumptions: tuple[str, ...]
    left_out: str
    answers: tuple[Answer, ...]

    def to_json(self) -> dict[str, Any]:
        """The endpoint: asked, sentences, cases (label, verdict, figures, svg, play, answer), cures."""
        return {
            "asked": self.asked,
            "sentences": list(self.sentences),
            "cases": [
                {
                    "label": column.label,
                    "verdict": column.verdict,
                    "figures": [list(pair) for pair in column.figures],
                    "reached_by": list(column.reached_by),
                    "svg": column.svg,
                    "play": column.play,
                    "answer": {key: value for key, value in answer.items() if key != "assumptions"},
                }
                for column, answer in zip(self.columns, self.answers, strict=True)
            ],
            "cures": list(self.cures),
            "assumptions": list(self.assumptions),
            "left_out": self.left_out,
        }


def fade_page(asked: FadeQuestion, record: Fixture | None, with_cures: bool = False) -> FadePage:
    """Answer the page's question. Cures take longer than a hand on a slider waits: only where asked for.

    Raises CaseError for what the record lacks, ResponseError for rates that cannot be.
    """
    from modebook.response.traces import trace

    cases, left = cases_of(asked, record)
    answers = [case.answered() for case in cases]
    traces = [trace(case.fade) if case.known else None for case in cases]
    fade = cases[0].fade
    snap = fade.seconds_s == 0
    top_jnd = max((1.2 * float(told.stepping_jnd.max(initial=0.0)) for told in traces if told), default=2.0)
    known = [told for told in traces if told]
    ends = (
        min((float(told.light_s[0]) for told in known), default=0.0),
        max((float(told.light_s[-1]) for told in known), default=1.0),
    )
    columns = tuple(
        _column(case, answer, told, snap, ends, top_jnd)
        for case, answer, told in zip(cases, answers, traces, strict=True)
    )
    if len(cases) > 1:
        sentences = verdict(cases, answers, snap)
    else:
        sentences = snap_sentences(answers[0]) if snap else fade_sentences(fade, answers[0])
    said = dict.fromkeys(sentence for answer in answers for sentence in answer["assumptions"])
    return FadePage(
        asked=question(fade, one=len(cases) == 1),
        sentences=tuple(sentences),
        columns=columns,
        cures=tuple(cure_lines(cases, answers)) if with_cures and not snap else (),
        assumptions=tuple(said),
        left_out=left,
        answers=tuple(answers),
    )


def _column(
    case: Case, answer: Answer, told: Trace | None, snap: bool, ends: tuple[float, float], top_jnd: float
) -> Column:
    word = "" if snap else seen_words(answer)
    figures = _snap_figures(answer) if snap else _fade_figures(answer)
    picture, play = "", None
    if told is not None:
        from modebook.render.pages.fade_svg import fade_svg

        title = f"{case.label}: {word or 'snap'}, packets as sent, light and frames over time"
        picture = fade_svg(case, told, title, ends, top_jnd)
        play = _play(case.fade, told)
    return Column(case.label, word, figures, picture, play, case.reached_by)


def _fade_figures(answer: Answer) -> tuple[tuple[str, str], ...]:
    return (
        ("worst stepping, JND", figure(answer["worst_stepping_jnd"], ".2g")),
        ("largest step, %", figure(answer["largest_step_percent"], ".3g")),
        ("values", figure(answer["distinct_values"], "d")),
        (
            "packets that repeat",
            f"{figure(answer['repeated_packets'], 'd')} of {figure(answer['packets_sent'], 'd')}",
        ),
        ("done after, s", figure(answer["settles_s"], ".2f")),
        ("smoothing adds", milliseconds(answer["added_s"])),
    )


def _snap_figures(answer: Answer) -> tuple[tuple[str, str], ...]:
    frames = answer["frames_partly_exposed_most"]
    told = [
        ("starts within", milliseconds(answer["starts_s"])),
        ("half done within", milliseconds(answer["half_s"])),
        ("done within", milliseconds(answer["settles_s"])),
        ("smoothing adds", milliseconds(answer["added_s"])),
    ]
    return (*told, ("frames in part", figure(frames, "d"))) if frames is not None else tuple(told)


def _play(fade: Fade, told: Trace) -> dict[str, Any]:
    """The grays of a patch, 0 to 255 in sRGB: of the light, step_s apart; of the frames, frame_s apart."""
    from_s, to_s = float(told.light_s[0]), float(told.light_s[-1])
    count = int(min(MOST_PLAYED, max(2, (to_s - from_s) * PLAY_HZ)))
    at_s = np.linspace(from_s, to_s, count)
    played: dict[str, Any] = {
        "from_s": round(from_s, 4),
        "step_s": round((to_s - from_s) / (count - 1), 6),
        "light": _grays(fade, np.interp(at_s, told.light_s, told.light)),
        "frames": None,
    }
    if fade.camera is not None:
        shown = told.samples_s <= to_s
        played["frames"] = _grays(fade, told.sampled[shown])
        played["first_frame_s"] = round(float(told.samples_s[0]), 4)
        played["frame_s"] = round(fade.camera.frame_s, 6)
    return played


def _grays(fade: Fade, light: NDArray[np.float64]) -> list[float]:
    """Light as a screen's gray, other light included; IEC 61966-2-1 (sRGB), from memory."""
    linear = fade.viewing.fill + (1.0 - fade.viewing.fill) * np.clip(light, 0.0, 1.0)
    coded = np.where(linear <= 0.0031308, 12.92 * linear, 1.055 * np.power(linear, 1 / 2.4) - 0.055)
    return [round(float(each), 1) for each in 255.0 * coded]
