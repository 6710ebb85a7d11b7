"""How far apart units run, and which choices would bring them together: for the rule on mixed smoothing."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from modebook.documents.responding import reached
from modebook.documents.settings import Choice, Setting
from modebook.rig.grouping import unit_ranges
from modebook.rig.in_effect import Delay, delay_of, in_effect, line_rate_hz
from modebook.rig.reading import PatchedRow, RigReading

_BY = {
    "slot": "by a slot",
    "rdm": "over RDM",
    "menu": "at the menu",
    "app": "with the app",
    "page": "on its network page",
}


@dataclass(frozen=True, slots=True)
class Apart:
    """How far the units of a group run apart, in the family and direction in which it is most."""

    family: str
    direction: str
    """`rising` or `falling`."""
    difference_s: float
    steps: tuple[tuple[float, tuple[PatchedRow, ...]], ...]
    """Delay in s and the units that have it, by fixture, the quickest first."""
    unknown: tuple[PatchedRow, ...]

    @property
    def quick(self) -> list[PatchedRow]:
        """The units with the least delay, in the order of the file."""
        return _at(self.steps, self.steps[0][0])

    @property
    def slow(self) -> list[PatchedRow]:
        """The units with the greatest delay, in the order of the file."""
        return _at(self.steps, self.steps[-1][0])


def _at(steps: Sequence[tuple[float, tuple[PatchedRow, ...]]], delay_s: float) -> list[PatchedRow]:
    rows = [row for at_s, some in steps if abs(at_s - delay_s) < 1e-9 for row in some]
    return sorted(rows, key=lambda row: row.unit.row)


def worst_apart(
    rows: Sequence[PatchedRow],
    delays: Mapping[int, Mapping[str, Delay | None]],
    families: Sequence[str],
) -> Apart | None:
    """The family and direction in which units run furthest apart; None where no delay is known.

    delays: of each row, by its id, the delay of each family that its mode has. Of families alike the one
    with more units of unknown delay is taken, else the first.
    """
    worst: Apart | None = None
    for family in families:
        having = [row for row in rows if family in delays[id(row)]]
        known = [(row, delay) for row in having if (delay := delays[id(row)][family]) is not None]
        if not known or len(having) < 2:
            continue
        unknown = tuple(row for row in having if delays[id(row)][family] is None)
        for direction in ("rising", "falling"):
            of_row = [(d.rise_s if direction == "rising" else d.fall_s, row) for row, d in known]
            difference_s = max(at for at, _ in of_row) - min(at for at, _ in of_row)
            if worst is not None and (difference_s, len(unknown)) <= (
                worst.difference_s + 1e-9,
                len(worst.unknown),
            ):
                continue
            worst = Apart(family, direction, difference_s, _steps(of_row), unknown)
    return worst


def _steps(of_row: Sequence[tuple[float, PatchedRow]]) -> tuple[tuple[float, tuple[PatchedRow, ...]], ...]:
    found: dict[tuple[float, str], list[PatchedRow]] = {}
    for at_s, row in of_row:
        found.setdefault((round(at_s, 9), row.identity or ""), []).append(row)
    return tuple((key[0], tuple(some)) for key, some in sorted(found.items(), key=lambda item: item[0]))


@dataclass(frozen=True, slots=True)
class _Option:
    """A choice that units of one delay could have, and its delay."""

    delay_s: float
    setting: Setting | None
    choice: Choice | None
    by: str


def cure(reading: RigReading, apart: Apart, frame_s: float) -> tuple[str, list[dict[str, object]] | None]:
    """The fewest units to set otherwise so that all known ones keep within a frame; and it for JSON.

    Only choices that some way leads to count, and only where one smoothing acts on the family.
    """
    options = [_options(reading, apart, at_s, rows) for at_s, rows in apart.steps]
    best: tuple[int, float, list[_Option]] | None = None
    for start_s in sorted({option.delay_s for some in options for option in some}):
        within = [
            [o for o in some if start_s - 1e-9 <= o.delay_s <= start_s + frame_s + 1e-9] for some in options
        ]
        if not all(within):
            continue
        # What a unit has now stands first among its options: it is kept where it will do. Of the others the
        # longest is taken: it helps a fade where it can without lagging.
        chosen = [some[0] for some in within]
        moved = sum(
            len(rows) for option, (_, rows) in zip(chosen, apart.steps, strict=True) if option.setting
        )
        if best is None or moved < best[0]:
            best = (moved, start_s, chosen)
    if best is None:
        lead = f"{1000 * apart.difference_s:.0f} ms"
        slow = unit_ranges(row.unit.number for row in apart.slow)
        return f"no choices bring them within a frame: let cues of {slow} lead by {lead}", None
    told: list[str] = []
    changes: list[dict[str, object]] = []
    for option, (_, rows) in zip(best[2], apart.steps, strict=True):
        if option.setting is None or option.choice is None:
            continue
        units = [row.unit.number for row in rows]
        told.append(
            f"{unit_ranges(units)} to {option.setting.key} {option.choice.key} {_BY[option.by]} "
            f"({1000 * option.delay_s:.0f} ms)"
        )
        changes.append(
            {
                "units": units,
                "setting": option.setting.key,
                "choice": option.choice.key,
                "by": option.by,
                "delay_ms": 1000 * option.delay_s,
            }
        )
    return f"set {'; '.join(told)}: no more slots", changes


def _options(reading: RigReading, apart: Apart, now_s: float, rows: Sequence[PatchedRow]) -> list[_Option]:
    """What units of one fixture and delay have now, then what they could have: the most smoothing first."""
    found = [_Option(now_s, None, None, "")]
    acting = [
        one.setting
        for one in in_effect(rows[0])
        if not one.setting.acts_on or apart.family in one.setting.acts_on
    ]
    mode = rows[0].mode
    if len(acting) != 1 or mode is None:
        return found
    more: list[_Option] = []
    for choice in acting[0].choices:
        delay = delay_of(choice, line_rate_hz(reading, rows[0]))
        ways = {by for by in reached(acting[0], choice, mode.mode) if by in _BY}
        for row in rows:
            ways &= {by for by in reached(acting[0], choice, (row.mode or mode).mode) if by in _BY}
            address = row.unit.address
            if address is None or reading.link(address.universe).rdm != "yes":
                ways.discard("rdm")
        if delay is None or not ways:
            continue
        at_s = delay.rise_s if apart.direction == "rising" else delay.fall_s
        more.append(_Option(at_s, acting[0], choice, next(by for by in _BY if by in ways)))
    return found + sorted(more, key=lambda option: -option.delay_s)
