"""A change in words, for terminal, page and CSV: what comes first, what is sent or done, what follows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any, Literal

from modebook.rig.grouping import unit_ranges
from modebook.shots.change import Change, Standing, bytes_words
from modebook.shots.plan import Candidate, PlannedSetup, Taken
from modebook.shots.walking import natural

Kind = Literal["first", "do", "then", "caution", "ask"]

SAFETY = (
    "Check every value on the fixture before a take, with people clear of moving fixtures and the floor "
    "warned first: a wrong or neighboring value can make a fixture move, reset, flash or go dark. Nobody on "
    "a ladder relies on that light. Mind the strobe, laser and ultraviolet warnings on the setups that have "
    "them. Local safety rules and qualified persons come first."
)
BY_WORDS: Mapping[str, str] = {"slot": "by slot", "rdm": "over RDM", "hand": "by hand"}


def seconds_words(seconds: float) -> str:
    """A time that a person can use: seconds below two minutes, else minutes."""
    return f"{seconds:.0f} s" if seconds < 120 else f"{seconds / 60:.0f} min"


def ways_words(by_way: Mapping[Any, float]) -> str:
    """What each way takes: ``by slot 5 s, over RDM 16 s``; empty where nothing takes any time."""
    told = [f"{BY_WORDS[by]} {seconds_words(value)}" for by, value in by_way.items() if value]
    return ", ".join(told)


def head_words(change: Change) -> str:
    """From what to what; a choice that only begins to be sent comes from nowhere."""
    if change.from_ == change.to:
        stands = change.by == "slot" and change.then.startswith("keep sending")
        return f"{change.setting_label}: {change.to_label}{' (to be sent from now on)' if stands else ''}"
    return f"{change.setting_label}: {change.from_label} → {change.to_label}"


def step_words(change: Change) -> Iterator[tuple[Kind, str]]:
    """The lines of a change in the order in which a person needs them: cautions first."""
    for warning in change.warnings:
        yield "caution", warning
    if change.needs:
        sent = f" ({bytes_words(change.needs_bytes)})" if change.needs_bytes else ""
        yield "first", f"{'; '.join(change.needs)}{sent}"
    if change.by == "slot":
        hold = "" if change.hold_s is None else f", hold {change.hold_s:g} s"
        yield "do", f"{bytes_words(change.bytes)}, in zero time{hold}"
        if change.then_bytes:
            yield "then", f"{bytes_words(change.then_bytes)} ({change.then})"
        elif change.then:
            # What it returns to one day is told when that day comes.
            yield "then", change.then.split("; no longer wanted", 1)[0]
    elif change.by == "rdm":
        uids = ", ".join(uid for uid in change.uids if uid)
        yield "do", f"PID {change.pid}, data {change.data}{f', to {uids}' if uids else ''}"
    else:
        where = f" at {change.position}" if change.position else ""
        reach = f" ({change.reach})" if change.reach else ""
        yield "do", f"{' > '.join(change.path)}{where}{reach}"
    for doubt in change.doubts:
        yield "ask", doubt


def granted(setups: Iterable[PlannedSetup]) -> dict[str, list[str]]:
    """What was taken for granted, each sentence once, with the units that it is about."""
    found: dict[str, dict[str, None]] = {}
    for one in setups:
        for taken in one.settings:
            for assumed in taken.assumed:
                found.setdefault(assumed, {}).update(dict.fromkeys(taken.units))
    return {assumed: list(units) for assumed, units in found.items()}


def standing_words(one: Standing) -> str:
    """What must stand, and what happens when it stops."""
    tail = f"; without it {one.returns.removeprefix('then ')}" if one.returns else ""
    return f"{bytes_words(one.bytes)}: {one.why}{tail}"


def questions(changes: Iterable[Change]) -> dict[str, list[str]]:
    """What is to be tried on a fixture: each question once, with the units that it is about."""
    found: dict[str, dict[str, None]] = {}
    for change in changes:
        for doubt in change.doubts:
            about = f"{change.fixture}, {change.setting_label} {BY_WORDS[change.by]}: {doubt}"
            found.setdefault(about, {}).update(dict.fromkeys(change.units))
    return {about: sorted(units, key=natural) for about, units in found.items()}


def candidate_figures(one: Candidate) -> str:
    """The figures of one choice: ``2 packets, 0.31 JND, 12 ms late``."""
    told = []
    if one.length_packets is not None:
        told.append(f"{one.length_packets:.3g} packets")
    if one.worst_stepping_jnd is not None:
        told.append(f"{one.worst_stepping_jnd:.2g} JND")
    if one.snap_added_ms is not None:
        told.append(f"{one.snap_added_ms:.0f} ms on a snap")
    if one.difference_percent is not None:
        told.append(f"{one.difference_percent:.2g} % between frames")
    return ", ".join(told) or "nothing to judge"


def drawn_together(settings: Iterable[Taken]) -> Iterator[tuple[tuple[str, ...], Taken]]:
    """Settings that read the same, with all their units, in the order of the first."""
    found: dict[tuple[str, ...], tuple[list[str], Taken]] = {}
    for one in settings:
        key = (one.setting, one.taken.label, candidate_figures(one.taken), one.why, turned_down_words(one))
        found.setdefault(key, ([], one))[0].extend(one.units)
    for units, one in found.values():
        yield tuple(units), one


def turned_down_words(taken: Taken) -> str:
    """The choices turned down with their figures, and those that no way reaches."""
    told = [
        f"{one.label} ({candidate_figures(one)}{'; fails ' + str(one.violations) if one.violations else ''})"
        for one in taken.candidates
        if one.choice != taken.choice
    ]
    told += [f"{key} (no way reaches it)" for key in taken.unreached]
    return "; ".join(told)


def units_words(units: Iterable[str]) -> str:
    """Units for people: ``101-108, 12A``."""
    return unit_ranges(units)
