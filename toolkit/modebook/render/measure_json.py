"""A measurement as one JSON object."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from modebook.measure.answer import Answer
    from modebook.measure.judgement import Judgement


def measure_json(answers: Sequence[Answer], judgement: Judgement) -> dict[str, object]:
    """The answer of one file or of repeats together; figures that the data do not hold are null."""
    first = answers[0]
    rate = first.refresh_hz
    length_ms = None
    if judgement.length_packets is not None and rate is not None:
        length_ms = 1000.0 * judgement.length_packets / rate
    elif len(answers) == 1 and first.length_s is not None:
        length_ms = 1000.0 * first.length_s
    delays = [answer.delay_s for answer in answers if answer.delay_s is not None]
    why = judgement.why + "".join(f"; {line}" for line in judgement.help)
    return {
        "can_tell": judgement.can_tell,
        "method": judgement.method,
        "length_packets": judgement.length_packets,
        "length_ms": length_ms,
        "interval_packets": None if judgement.interval_packets is None else list(judgement.interval_packets),
        "delay_ms": 1000.0 * sum(delays) / len(delays) if delays else None,
        "refresh_hz": rate,
        "camera_fps": first.trace.fps,
        "events": sum(len(answer.events) for answer in answers),
        "why": why,
    }
