"""A fade or snap answered in words: seen or not, late or not, by how much, and what would cure it."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from modebook.documents.cases import Case
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
from modebook.render.terminal import paint, printed, table, width, wrapped


def fade_text(cases: Sequence[Case], answers: Sequence[Answer], title: str = "") -> str:
    """The answer for one case, or a comparison of several; then cures, and what was taken for granted."""
    fade = cases[0].fade
    snap = fade.seconds_s == 0
    out = [paint(title, "bold")] if title else []
    out += [wrapped(question(fade, one=len(cases) == 1)), ""]
    if len(cases) == 1:
        told = snap_sentences(answers[0], paint) if snap else fade_sentences(fade, answers[0], paint)
        out += [wrapped(line) for line in told]
    else:
        out.append(_snap_table(cases, answers) if snap else _fade_table(cases, answers))
        out += [wrapped(line) for line in verdict(cases, answers, snap)]
    lines = [] if snap else cure_lines(cases, answers)
    if lines:
        out += ["", paint("What would cure it (computed)", "bold"), *(_item(line) for line in lines)]
    out += ["", paint("Taken for granted", "bold")]
    said: dict[str, None] = {}
    for answer in answers:
        said.update(dict.fromkeys(answer["assumptions"]))
    out += [_item(sentence) for sentence in said]
    return "\n".join(out) + "\n"


def _fade_table(cases: Sequence[Case], answers: Sequence[Answer]) -> str:
    rows = []
    for case, answer in zip(cases, answers, strict=True):
        rows.append(
            (
                case.label,
                seen_words(answer),
                figure(answer["worst_stepping_jnd"], ".2g"),
                figure(answer["largest_step_percent"], ".3g"),
                figure(answer["distinct_values"], "d"),
                f"{figure(answer['repeated_packets'], 'd')} of {figure(answer['packets_sent'], 'd')}",
                figure(answer["settles_s"], ".2f"),
                milliseconds(answer["added_s"]),
            )
        )
    columns = ["seen?", "stepping JND", "largest step %", "values", "repeats", "done s", "added"]
    return printed(table([("", "left"), *((title, "right") for title in columns)], rows))


def _snap_table(cases: Sequence[Case], answers: Sequence[Answer]) -> str:
    columns = ["starts", "half done", "done", "added"]
    camera = cases[0].fade.camera is not None
    rows = []
    for case, answer in zip(cases, answers, strict=True):
        row = [
            case.label,
            *(milliseconds(answer[key]) for key in ("starts_s", "half_s", "settles_s", "added_s")),
        ]
        if camera:
            row.append(figure(answer["frames_partly_exposed_most"], "d"))
        rows.append(row)
    titles = [*columns, "frames in part"] if camera else columns
    return printed(table([("", "left"), *((title, "right") for title in titles)], rows))


def _item(words: str) -> str:
    sentence = words[:1].upper() + words[1:] + ("" if words.endswith(".") else ".")
    return textwrap.fill(
        sentence, width=width(), initial_indent="- ", subsequent_indent="  ", break_on_hyphens=False
    )
