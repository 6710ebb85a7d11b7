"""Titles for the modes whose slots stand side by side in running lines."""

from __future__ import annotations

from modebook.intake.chart_rows import ChartRow
from modebook.intake.grid import Line
from modebook.intake.headings import read_mode_head
from modebook.intake.title_lines import modes_in_titles, named_columns


def loose_modes(lines: list[Line], rows: list[ChartRow]) -> list[str]:
    """A title for each mode whose slots stand in running lines; where there is but one, none."""
    columns = max((len(row.slots) for row in rows), default=1)
    if columns < 2:
        return [""]
    named = named_columns(lines)
    if named is not None and len(named.modes) == columns:
        return named.modes
    titles = next((found for line in lines if (found := modes_in_titles(" ".join(line.text.split())))), [])
    titles = [title if read_mode_head(title) else "" for title in titles]
    return titles if len(titles) == columns else [""] * columns
