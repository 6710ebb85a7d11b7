"""Who lets smoothing be changed, and how: a count for each rig, then the units."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from itertools import groupby

from modebook.render.terminal import paint, printed, table, width
from modebook.rig.grouping import unit_ranges
from modebook.rig.remote import Answer, RigRemote, UnitRemote

_TITLES: dict[Answer, str] = {
    "slot": "by a slot of the mode they are patched in",
    "rdm": "only over RDM",
    "hand": "only by hand, at the fixture",
    "none": "no smoothing to change, says the source",
    "unknown": "unknown",
}
_ANSWERS: dict[str, tuple[Answer, ...]] = {
    "remote": ("slot", "rdm"),
    "slot": ("slot",),
    "rdm": ("rdm",),
    "hand": ("hand",),
    "none": ("none",),
    "unknown": ("unknown",),
}


def remote_text(rigs: Sequence[RigRemote], smoothing_by: str) -> str:
    """Counts, and the units that `smoothing_by` asks for (remote, slot, rdm, hand, none, unknown)."""
    out = [paint("Units whose smoothing can be changed", "bold"), counts(rigs)]
    for rig in rigs:
        out.append(paint(rig.rig, "bold"))
        for answer in _ANSWERS[smoothing_by]:
            out += units_told(rig, answer)
        out.append("")
    return "\n".join(out).rstrip() + "\n"


def counts(rigs: Sequence[RigRemote]) -> str:
    """One line a rig."""
    columns = ["units", "by slot", "only RDM", "it reaches", "only hand", "none", "unknown"]
    rows = []
    for rig in rigs:
        reaches = rig.rdm_reaches
        rows.append(
            (
                rig.rig,
                str(len(rig.units)),
                str(len(rig.of("slot"))),
                str(len(rig.of("rdm"))),
                f"{reaches['yes']} of {sum(reaches.values())}",
                str(len(rig.of("hand"))),
                str(len(rig.of("none"))),
                str(len(rig.of("unknown"))),
            )
        )
    return printed(table([("rig", "left"), *((title, "right") for title in columns)], rows))


def units_told(rig: RigRemote, answer: Answer) -> list[str]:
    """The units with one answer, by fixture and mode."""
    units = rig.of(answer)
    if not units:
        return [f"  {_TITLES[answer]}: none of its units"]
    out = [f"  {_TITLES[answer]} ({len(units)})"]
    for name, group in groupby(sorted(units, key=_model), key=_model):
        same = list(group)
        words = f"{name}: {unit_ranges(unit.row.unit.number for unit in same)}"
        if answer == "rdm":
            words += _reached(same)
        out.append(
            textwrap.fill(
                words,
                width=width(),
                initial_indent="    ",
                subsequent_indent="      ",
                break_on_hyphens=False,
            )
        )
    return out


def _model(unit: UnitRemote) -> str:
    row = unit.row
    if row.fixture is None:
        return f"{row.unit.fixture} (no record)"
    fixture = row.fixture.fixture
    mode = row.mode.mode.name if row.mode else f"{row.unit.mode} (no such mode)"
    return f"{fixture.maker} {fixture.model}, {mode}"


def _reached(units: list[UnitRemote]) -> str:
    told = []
    for reach, words in (
        ("yes", "RDM reaches {}"),
        ("no", "RDM does not reach {}"),
        ("unknown", "whether RDM reaches {} is not known"),
    ):
        some = [unit.row.unit.number for unit in units if unit.rdm_reaches == reach]
        if some:
            told.append(words.format("them" if len(some) == len(units) else unit_ranges(some)))
    return f" ({'; '.join(told)})"
