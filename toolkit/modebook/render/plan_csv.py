"""A plan's change list as CSV: one line a byte, a PID or a menu entry and unit, in the order of doing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from modebook.render.csv_guard import Cell, csv_text
from modebook.render.plan_words import BY_WORDS
from modebook.shots.change import Change, PowerCut, Standing
from modebook.shots.day import Day

TITLES = (
    "Day",
    "Setup",
    "Order",
    "Task",
    "Units",
    "Fixture",
    "Setting",
    "From",
    "To",
    "How",
    "Universe",
    "Address",
    "Value",
    "Hold (s)",
    "UID",
    "PID",
    "Data",
    "Path",
    "Position",
    "Reach",
    "Seconds",
    "Cautions",
    "To be tried",
)


def plan_csv(day: Day) -> str:
    """The prep sheet, then every setup's changes and what stands in it."""
    return csv_text(TITLES, _rows(day))


def cut_csv(cut: PowerCut) -> str:
    """What a power cut leaves to do."""
    rows = [
        *_changes("", cut.setup, cut.again, "again"),
        *_changes("", cut.setup, cut.check, "look"),
        *_stands("", cut.setup, cut.stands),
    ]
    return csv_text(TITLES, rows)


def _rows(day: Day) -> Iterator[tuple[Cell, ...]]:
    for one in day.changes.prep:
        yield (
            "",
            "before it goes out",
            "",
            "look" if one.by is None else "set",
            ", ".join(one.units),
            one.fixture,
            one.setting_label,
            one.from_,
            one.choice_label,
            one.road,
            *("",) * 10,
            one.seconds,
            "",
            "; ".join(one.doubts),
        )
    for setup in day.changes.setups[day.first :]:
        yield from _changes(setup.day, setup.setup, setup.checks, "look")
        yield from _changes(setup.day, setup.setup, setup.changes, "set")
        yield from _stands(setup.day, setup.setup, setup.stands)


def _changes(day: str, setup: str, changes: Iterable[Change], task: str) -> Iterator[tuple[Cell, ...]]:
    for order, one in enumerate(changes, 1):
        about = (
            ", ".join(one.units),
            one.fixture,
            one.setting_label,
            one.from_label,
            one.to_label,
        )
        tail = (one.seconds, "; ".join(one.warnings), "; ".join(one.doubts))
        if one.by == "slot":
            steps = [
                ("first", one.needs_bytes, ""),
                (task, one.bytes, "" if one.hold_s is None else one.hold_s),
                ("then", one.then_bytes, ""),
            ]
            for word, bytes_, hold in steps:
                for byte in bytes_:
                    at = (byte.universe, byte.address, byte.value, hold)
                    yield (
                        day, setup, order, word, *about, "by slot", *at, "", "", "", "", one.position,
                        one.reach, *tail,
                    )  # fmt: skip
        elif one.by == "rdm":
            for place, unit in enumerate(one.units):
                uid = one.uids[place] if one.uids else ""
                yield (
                    day, setup, order, task, unit, *about[1:], "over RDM", "", "", "", "", uid, one.pid,
                    one.data, "", one.position, one.reach, *tail,
                )  # fmt: skip
        else:
            yield (
                day, setup, order, task, *about, BY_WORDS[one.by], "", "", "", "", "", "", "",
                " > ".join(one.path), one.position, one.reach, *tail,
            )  # fmt: skip


def _stands(day: str, setup: str, stands: Iterable[Standing]) -> Iterator[tuple[Cell, ...]]:
    for one in stands:
        for byte in one.bytes:
            yield (
                day, setup, "", "stands in every cue", ", ".join(one.units), one.fixture, one.setting_label,
                "", one.choice_label, "by slot", byte.universe, byte.address, byte.value, "", "", "", "", "",
                "", "", "", "", one.why,
            )  # fmt: skip
