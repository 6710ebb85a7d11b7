"""What a terminal gets: colors where they are wanted, tables and lines in the width that it has."""

from __future__ import annotations

import os
import shutil
import sys
from collections.abc import Sequence
from typing import TYPE_CHECKING

from modebook.render.plain_table import Justify, Rows, plain_table

if TYPE_CHECKING:
    from rich.console import Console

__all__ = (
    "Justify",
    "Rows",
    "console",
    "counted",
    "paint",
    "printed",
    "styled",
    "table",
    "wants_color",
    "width",
    "wrapped",
)

_CODES = {"bold": "1", "dim": "2", "red": "31", "green": "32", "yellow": "33", "cyan": "36"}


def wants_color() -> bool:
    """Whether standard output is a terminal and nobody asked for plain text (NO_COLOR)."""
    return sys.stdout.isatty() and "NO_COLOR" not in os.environ and os.environ.get("TERM") != "dumb"


def width() -> int:
    """Columns to fill: the terminal's, 80 to 120; 100 where output is no terminal and COLUMNS is not set."""
    return max(60, min(120, shutil.get_terminal_size((100, 24)).columns))


def paint(words: str, style: str) -> str:
    """Words in a style such as ``bold red``, where the terminal shows styles; else as they are."""
    if not wants_color():
        return words
    codes = ";".join(_CODES[name] for name in style.split())
    return f"\x1b[{codes}m{words}\x1b[0m"


def wrapped(words: str, indent: str = "", after: str | None = None) -> str:
    """Words in the terminal's width; `after`: the indent of the lines after the first, where it differs."""
    import textwrap

    return textwrap.fill(
        words,
        width=width(),
        initial_indent=indent,
        subsequent_indent=indent if after is None else after,
        break_on_hyphens=False,
    )


def counted(number: int, word: str) -> str:
    """A number with its word in the singular or plural: ``1 unit``, ``2 units``."""
    return f"{number} {word}{'s' * (number != 1)}"


def console() -> Console:
    """A console for tables, in the width and colors told above; brackets in words are only signs."""
    from rich.console import Console

    return Console(
        width=width(),
        no_color=not wants_color(),
        highlight=False,
        soft_wrap=False,
        markup=False,
        emoji=False,
    )


def table(columns: Sequence[tuple[str, Justify]], rows: Sequence[Sequence[str]]) -> Rows:
    """A quiet table: titles, one rule, rows; numbers stand to the right."""
    return Rows(columns, rows)


def printed(made: Rows) -> str:
    """A table as text, without white space at the ends of lines."""
    plain = None if wants_color() else plain_table(made, width())
    return styled(made) if plain is None else plain


def styled(made: Rows) -> str:
    """As printed, for any words in any width: cells are folded, titles bold where styles are shown."""
    from rich import box
    from rich.table import Table

    drawn = Table(
        box=box.SIMPLE_HEAD, padding=(0, 1, 0, 0), pad_edge=False, show_edge=False, header_style="bold"
    )
    for title, justify in made.columns:
        drawn.add_column(title, justify=justify, overflow="fold")
    for row in made.rows:
        drawn.add_row(*row)
    at = console()
    with at.capture() as capture:
        at.print(drawn)
    return "\n".join(line.rstrip() for line in capture.get().splitlines()) + "\n"
