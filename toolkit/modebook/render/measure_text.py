"""A measurement for people: the answer first, then what else was tried, then what was taken for granted."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from modebook.render.terminal import counted, paint, printed, table

if TYPE_CHECKING:
    from modebook.measure.answer import Answer
    from modebook.measure.judgement import Judgement


def headline(answers: Sequence[Answer], judgement: Judgement) -> str:
    """The answer in one line."""
    rate = answers[0].refresh_hz
    if judgement.can_tell and judgement.method == "none":
        most = judgement.interval_packets[1] if judgement.interval_packets else None
        return "Off: it does not smooth" + (
            "." if most is None else f" (for {most:.2f} packets at most, 95 %)."
        )
    length, interval = judgement.length_packets, judgement.interval_packets
    told = ""
    if length is not None and interval is not None and rate:
        told = (
            f"{length:.2f} packets ({interval[0]:.2f} to {interval[1]:.2f}, 95 %), "
            f"{1000 * length / rate:.0f} ms at {rate:g} packets a second"
        )
    if judgement.can_tell:
        return f"{judgement.method}, {told}"
    if told:
        return f"Cannot tell the method. Length: {told}"
    return "Cannot tell."


def measure_text(answers: Sequence[Answer], judgement: Judgement) -> str:
    """The answer, why, what would do, the models with how much worse they explain, the notes."""
    lines = [paint(headline(answers, judgement), "bold"), f"Why: {judgement.why}."]
    lines += [f"To do: {line}." for line in judgement.help]
    for answer in answers:
        names = list(dict.fromkeys(answer.events))
        events = ", ".join(f"{answer.events.count(name)} {name}" for name in names)
        lines += ["", f"{answer.trace.path}: {counted(len(answer.events), 'event')} ({events})"]
        rate = answer.refresh_hz
        rows = []
        for method in sorted(answer.worse, key=lambda name: answer.worse[name]):
            fitted = answer.fits[method]
            length = f"{fitted.length_s * rate:.2f}" if rate and method != "none" else "-"
            rows.append((method, length, f"{1000 * fitted.length_s:.1f}", f"{answer.worse[method]:.1f}"))
        made = table((("Model", "left"), ("packets", "right"), ("ms", "right"), ("worse by", "right")), rows)
        lines.append(printed(made).rstrip("\n"))
        if answer.delay_s is not None:
            lines.append(f"Delay before it begins: {1000 * answer.delay_s:.1f} ms after the time of sending.")
        lines += [f"Note: {note}." for note in answer.notes]
    lines += [
        "",
        "'Worse by' counts deviance in units of what the best leaves: a model is out beyond what 'would do'.",
    ]
    return "\n".join(lines) + "\n"
