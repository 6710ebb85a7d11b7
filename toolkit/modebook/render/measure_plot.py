"""Draws a measurement: trace and fit around each change, what is left below; no color needed."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from modebook.render.measure_text import headline
from modebook.render.plot_file import STYLE, as_bytes, drawable, without_screen
from modebook.shelf.writing import write_whole

if TYPE_CHECKING:
    from modebook.measure.answer import Answer
    from modebook.measure.judgement import Judgement

MOST = 4
"""Repeats below each other, beyond which a drawing cannot be read."""


def draw(answers: Sequence[Answer], judgement: Judgement, path: Path) -> None:
    """Draw a measurement into `path` (.svg, .png, .pdf). Raises ShelfError for another ending."""
    form = drawable(path)
    write_whole(path, picture(answers, judgement, form))


def picture(answers: Sequence[Answer], judgement: Judgement, form: str) -> bytes:
    """The drawing as bytes; the same answer gives the same bytes."""
    plt = without_screen()

    shown = answers[:MOST]
    with plt.rc_context(STYLE):
        figure, axes = plt.subplots(
            2 * len(shown),
            1,
            figsize=(9.0, 4.2 * len(shown)),
            squeeze=False,
            height_ratios=(3, 1) * len(shown),
            layout="constrained",
        )
        for n, answer in enumerate(shown):
            _one(axes[2 * n][0], axes[2 * n + 1][0], answer)
        figure.suptitle(headline(answers, judgement))
        return as_bytes(figure, form)


def _one(upper: Any, lower: Any, answer: Answer) -> None:
    import numpy as np

    best = answer.best
    span = float(np.ptp(answer.level)) or 1.0
    least = float(answer.level.min())
    # Between the changes nothing is fitted: the line breaks there.
    gaps = np.flatnonzero(np.diff(answer.at_s) > 4.0 * float(np.median(np.diff(answer.at_s)))) + 1
    at_s = np.insert(answer.at_s, gaps, np.nan)
    fitted = np.insert(100 * (best.modeled - least) / span, gaps, np.nan)
    upper.plot(
        answer.at_s, 100 * (answer.level - least) / span, "o", markersize=2, color="0.55", label="recorded"
    )
    upper.plot(at_s, fitted, color="black", linewidth=1.0, label=f"fit: {best.method}")
    upper.set_ylabel("percent of full")
    upper.legend(frameon=False, loc="upper right")
    upper.set_title(Path(answer.trace.path).name, fontsize=10)
    lower.plot(answer.at_s, 100 * (answer.level - best.modeled) / span, "o", markersize=1.5, color="0.3")
    lower.axhline(0.0, color="black", linewidth=0.6)
    lower.set_ylabel("left, %")
    lower.set_xlabel("seconds")
