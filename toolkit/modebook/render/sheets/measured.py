"""A measurement as one page to keep with the record."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from modebook.render.measure_text import headline
from modebook.render.sheets.page import page
from modebook.shelf.writing import write_whole

if TYPE_CHECKING:
    from modebook.measure.answer import Answer
    from modebook.measure.judgement import Judgement


def write_report(answers: Sequence[Answer], judgement: Judgement, path: Path) -> None:
    """Write the page into a file. Raises ShelfError where it cannot be written."""
    write_whole(path, measured_page(answers, judgement).encode())


def measured_page(answers: Sequence[Answer], judgement: Judgement) -> str:
    """The page as HTML, with its plot inside where matplotlib is there; the same answer, the same page."""
    from importlib.util import find_spec

    plot = ""
    if find_spec("matplotlib") is not None:
        from base64 import b64encode

        from modebook.render.measure_plot import picture

        plot = b64encode(picture(answers, judgement, "svg")).decode()
    return page(
        "measured.html",
        "Measured smoothing",
        headline(answers, judgement),
        why=judgement.why,
        help=judgement.help,
        files=[_file(answer) for answer in answers],
        plot=plot,
    )


def _file(answer: Answer) -> dict[str, object]:
    rate = answer.refresh_hz
    return {
        "name": Path(answer.trace.path).name,
        "sha256": answer.trace.sha256 or "-",
        "fps": f"{answer.trace.fps:.3f}" if answer.trace.fps else "-",
        "refresh": f"{rate:g}" if rate else "not known",
        "delay": f"{1000 * answer.delay_s:.1f} ms" if answer.delay_s is not None else "not seen",
        "events": list(answer.events),
        "notes": list(answer.notes),
        "models": [
            (
                method,
                f"{answer.fits[method].length_s * rate:.2f}" if rate and method != "none" else "-",
                f"{1000 * answer.fits[method].length_s:.1f}",
                f"{answer.worse[method]:.1f}",
            )
            for method in sorted(answer.worse, key=lambda name: answer.worse[name])
        ],
    }
