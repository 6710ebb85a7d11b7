"""Short forms of the fifth charts by second hands: a line a range, and sheets and pages out of rows."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Iterable, Sequence
from html import escape
from typing import Any

from intake.corpus.content import P, R
from intake.corpus.grids import C, Grid, Row, Table
from intake.corpus.open import fresh_kit as k

Cell = str | int | C | None
"""A None is covered by a cell that reaches over it."""


def white(lo: int, hi: int, text: str) -> R:
    """The place of a wheel or list of colors that leaves the light as it is."""
    return k.optional(R(lo, hi, text), does=("open", "nothing"))


def off(lo: int, hi: int, text: str) -> R:
    """Something that is switched off here: several words of the vocabulary say so, and none is due."""
    return k.optional(R(lo, hi, text), does=("nothing", "stop", "closed"), hazard=("blackout",))


def curve(lo: int, hi: int, text: str) -> R:
    return k.optional(R(lo, hi, text), sets=("dimmer-curve",))


KINDS: dict[str, Callable[..., R]] = {
    "plain": R,
    "nothing": k.nothing,
    "open": k.opened,
    "closed": k.closed,
    "stop": k.stop,
    "out": k.out,
    "off": off,
    "white": white,
    "flash": k.flash,
    "pulse": k.pulse,
    "random": k.chance,
    "spin": k.spin,
    "index": k.index,
    "rainbow": k.rainbow,
    "shake": k.shake,
    "runs": k.runs,
    "perhaps": k.maybe_runs,
    "reset": k.reset,
    "fan": k.fan_choice,
    "curve": curve,
}


def ranged(line: str) -> R:
    """``20-129 flash: Slow to fast``; after the kind may stand the part that it moves: ``spin gobo``."""
    head, text = line.split(": ", 1)
    values, _, kind = head.partition(" ")
    lo, _, hi = values.partition("-")
    name, *rest = kind.split() or ["plain"]
    return KINDS[name](int(lo), int(hi or lo), text, *rest)


def p(words: str, label: str, *ranges: str | R, **more: Any) -> P:
    """A parameter with ranges; its words stand in one string, best first."""
    return P(
        tuple(words.split()),
        label,
        ranges=tuple(r if isinstance(r, R) else ranged(r) for r in ranges),
        **more,
    )


def csv_text(rows: Iterable[Sequence[Any]], delimiter: str = ",", newline: str = "\r\n") -> str:
    kept = io.StringIO()
    csv.writer(kept, delimiter=delimiter, lineterminator=newline).writerows(rows)
    return kept.getvalue()


def cell(value: Cell) -> C | None:
    return value if value is None or isinstance(value, C) else C(str(value))


def table(rows: Iterable[Sequence[Cell]]) -> Table:
    """Rows as the writers of sheets take them; they may be of unlike length."""
    return Table(Grid([], [[cell(one) for one in row] for row in rows]))


def beside(first: Sequence[Cell], rows: Sequence[Sequence[Cell]]) -> list[list[Cell]]:
    """Rows with cells before them that reach down over them all."""
    made: list[list[Cell]] = []
    for n, row in enumerate(rows):
        reach: list[Cell] = [C(str(one), rows=len(rows)) for one in first] if n == 0 else [None] * len(first)
        made.append([*reach, *row])
    return made


def web_rows(rows: Iterable[Sequence[Cell]], tag: str = "td") -> str:
    """Rows of a table on a page, a line each."""
    return "\n".join(_web_row([cell(one) for one in row], tag) for row in rows)


def _web_row(row: Row, tag: str) -> str:
    made = []
    for one in row:
        if one is None:
            continue
        reach = f' rowspan="{one.rows}"' if one.rows > 1 else ""
        reach += f' colspan="{one.cols}"' if one.cols > 1 else ""
        made.append(f"<{tag}{reach}>{escape(one.text, quote=False)}</{tag}>")
    return f"<tr>{''.join(made)}</tr>"


def page(language: str, title: str, body: str, style: str = "") -> str:
    """A page of a maker's site."""
    head = f'<meta charset="utf-8"><title>{escape(title)}</title>'
    css = f"<style>{style}</style>" if style else ""
    top = f'<!DOCTYPE html>\n<html lang="{language}">\n<head>{head}{css}</head>'
    return f"{top}\n<body>\n{body}\n</body>\n</html>\n"
