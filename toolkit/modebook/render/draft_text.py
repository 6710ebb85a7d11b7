"""A draft for people: which modes were read, how many parameters, and every doubt with its place."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from modebook.documents.fixture import Fixture
from modebook.documents.layout import all_parameters
from modebook.render.doubt_text import doubt_text
from modebook.render.findings_text import sentence
from modebook.render.pointer_words import mode_number
from modebook.render.terminal import counted, paint, printed, table, wrapped
from modebook.shelf.errors import printable

MOST_DOUBTS = 20
"""Doubts that are told one by one; who has more is better off with the report."""


def draft_text(fixture: Fixture, source: str, notes: Sequence[str] = (), *, doubts: bool = True) -> str:
    """What was read, mode by mode, then what is doubtful; `doubts` off only counts them."""
    parameters = sum(1 for mode in fixture.modes for _ in all_parameters(mode))
    waiting = [index for index, doubt in enumerate(fixture.doubts) if doubt.settled is None]
    head = (
        f"{printable(source)}: {printable(f'{fixture.maker} {fixture.model}')}, "
        f"{counted(len(fixture.modes), 'mode')}, {counted(parameters, 'parameter')}, "
        f"{counted(len(waiting), 'open doubt') if waiting else 'no open doubt'}"
    )
    out = [paint(head, "bold"), "", _modes(fixture, waiting)]
    if fixture.settings:
        out.append(_settings(fixture))
    for note in notes:
        out.append(wrapped(sentence(printable(note))))
    if waiting and doubts:
        out += [paint(f"Doubts ({len(waiting)})", "bold")]
        for number, index in enumerate(waiting[:MOST_DOUBTS], start=1):
            out.append(doubt_text(fixture, index, f"{number:>3}"))
        if len(waiting) > MOST_DOUBTS:
            out.append(f"     and {len(waiting) - MOST_DOUBTS} more; --report FILE.html shows them all.")
        out.append("")
    return "\n".join(out).rstrip() + "\n"


def _modes(fixture: Fixture, doubts: Sequence[int]) -> str:
    open_ = Counter(mode_number(fixture.doubts[index].pointer) for index in doubts)
    rows = []
    for index, mode in enumerate(fixture.modes):
        found = [parameter for parameter, _ in all_parameters(mode)]
        ranges = sum(len(parameter.ranges) for parameter in found)
        rows.append(
            (
                printable(mode.name + (f" ({mode.given})" if mode.given else "")),
                "" if mode.number is None else str(mode.number),
                str(mode.footprint),
                str(len(found)),
                str(sum(len(parameter.slots) > 1 for parameter in found)),
                str(ranges),
                str(open_[index]) if open_[index] else "-",
                printable(mode.place or ""),
            )
        )
    return printed(
        table(
            [
                ("mode", "left"),
                ("no.", "right"),
                ("slots", "right"),
                ("parameters", "right"),
                ("fine", "right"),
                ("ranges", "right"),
                ("doubts", "right"),
                ("place", "left"),
            ],
            rows,
        )
    )


def _settings(fixture: Fixture) -> str:
    told = []
    for setting in fixture.settings:
        choices = ", ".join(choice.label or choice.key for choice in setting.choices)
        told.append(f"{setting.setting} ({choices or 'none'})")
    return wrapped(printable(f"Settings read: {'; '.join(told)}.")) + "\n"
