"""A plot as a file: the endings that can be drawn, one quiet style, and bytes that do not change."""

from __future__ import annotations

import io
from pathlib import Path
from typing import Any

from modebook.render.extras import needs
from modebook.shelf.errors import ShelfError

FORMATS = (".svg", ".png", ".pdf")
STYLE: dict[Any, Any] = {
    "font.size": 9,
    "svg.hashsalt": "modebook",
    "axes.spines.top": False,
    "axes.spines.right": False,
    "axes.grid": True,
    "axes.axisbelow": True,
    "grid.color": "0.9",
    "svg.fonttype": "path",
}
_STILL: dict[str, dict[str, None]] = {
    "svg": {"Date": None},
    "pdf": {"CreationDate": None},
    "png": {"Software": None},
}


def drawable(path: Path) -> str:
    """The form that a file's ending asks for. Raises ShelfError for another, or without the extra `plot`."""
    if path.suffix.lower() not in FORMATS:
        raise ShelfError(
            path, "not a kind of picture that can be drawn", remedy=f"end it in {', '.join(FORMATS)}"
        )
    needs("matplotlib", "plot", "draw a plot")
    return path.suffix.lower()[1:]


def without_screen() -> Any:
    """matplotlib's pyplot, drawing into memory."""
    import matplotlib as mpl

    mpl.use("Agg")
    import matplotlib.pyplot as plt

    return plt


def as_bytes(figure: Any, form: str) -> bytes:
    """A figure as a file, closed afterward; the same figure gives the same bytes."""
    out = io.BytesIO()
    figure.savefig(out, format=form, dpi=130, metadata=_STILL[form])
    without_screen().close(figure)
    return out.getvalue()
