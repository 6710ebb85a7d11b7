"""Modes that a search found, as a table."""

from __future__ import annotations

from modebook.render.terminal import printed, table
from modebook.store.search import Found


def found_text(found: Found) -> str:
    """One line a mode, and how many there are."""
    if not found.modes:
        return "No mode answers that. Fewer words or conditions find more; drafts need --drafts.\n"
    rows = [
        (
            f"{mode.maker} {mode.model}",
            f"{mode.mode}{f' ({mode.given})' if mode.given else ''}",
            "" if mode.number is None else str(mode.number),
            str(mode.footprint),
            ", ".join(mode.smoothing_by),
            mode.standing,
        )
        for mode in found.modes
    ]
    made = table(
        [
            ("fixture", "left"),
            ("mode", "left"),
            ("no.", "right"),
            ("slots", "right"),
            ("smoothing by", "left"),
            ("standing", "left"),
        ],
        rows,
    )
    more = found.total - len(found.modes)
    told = f"{found.total} mode{'s' * (found.total != 1)}"
    return printed(made) + "\n" + (f"{told}; {more} more with --limit 0.\n" if more else f"{told}.\n")
