"""A plan for the terminal: what the gaffer must decide, the prep, then each setup with its changes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from modebook.render.findings_text import sentence
from modebook.render.plan_json import conflicts_from
from modebook.render.plan_words import (
    BY_WORDS,
    SAFETY,
    candidate_figures,
    drawn_together,
    granted,
    head_words,
    questions,
    seconds_words,
    standing_words,
    step_words,
    turned_down_words,
    units_words,
    ways_words,
)
from modebook.render.terminal import counted, paint, printed, table, wrapped
from modebook.shots.change import Change, PowerCut, PrepLine, SetupChanges, Standing
from modebook.shots.day import Day
from modebook.shots.differing import Differing
from modebook.shots.plan import PlannedSetup

_MARKS = {"first": "first: ", "do": "", "then": "then: ", "caution": "! ", "ask": "? "}


def plan_text(day: Day, differing: Sequence[Differing] | None = None) -> str:
    """The plan as text."""
    plan = day.plan
    setups = plan.setups[day.first :]
    cues = sum(1 for one in setups for _ in one.setup.cues)
    out = [paint(f"{plan.rig}: {counted(len(setups), 'setup')}, {counted(cues, 'cue')}", "bold")]
    taken = ways_words(day.total_seconds_by_way)
    out.append(wrapped(f"All changes take: {taken or 'nothing to change'}. Slots go at once for all units."))
    out += [wrapped(sentence(note)) for note in plan.notes]
    out += ["", wrapped(SAFETY), ""]
    if plan.faults:
        out.append(paint(f"Rows that could not be taken as they are ({len(plan.faults)})", "bold red"))
        out += [_item(f"row {one.row}, {one.column}: {one.why}") for one in plan.faults]
        out.append("")
    out += _differing(differing)
    conflicts = conflicts_from(day)
    if conflicts:
        out.append(paint(f"For the gaffer ({len(conflicts)})", "bold red"))
        for conflict in conflicts:
            out.append(wrapped(f"{conflict.setup}: {units_words(conflict.units)}", "  "))
            out.append(wrapped(sentence(conflict.why), "    "))
            out += [wrapped(f"→ {cure}", "    ", "      ") for cure in conflict.cures]
        out.append("")
    out += _prep(day.changes.prep)
    before: tuple[Standing, ...] = ()
    for one, changes in list(zip(plan.setups, day.changes.setups, strict=True))[day.first :]:
        out += [*_setup(one, changes, before), ""]
        before = changes.stands
    taken_for = granted(setups)
    if taken_for:
        out.append(paint("Taken for granted", "bold"))
        out += [_item(f"{units_words(units)}: {assumed}") for assumed, units in taken_for.items()]
        out.append("")
    asked = questions(
        change for one in day.changes.setups[day.first :] for change in (*one.changes, *one.checks)
    )
    if asked:
        out.append(paint("To be tried on the fixture first", "bold"))
        out += [_item(f"{about} ({units_words(units)})") for about, units in asked.items()]
        out.append("")
    if day.disagreements:
        out.append(paint("A model of the fixtures does not end where the plan says", "bold red"))
        out += [_item(one) for one in day.disagreements]
    else:
        told = "Done in order on a model of each fixture, these changes end every setup as planned."
        out.append(wrapped(told))
    return "\n".join(out).rstrip() + "\n"


def cut_text(cut: PowerCut, rig: str) -> str:
    """What a power cut leaves to do."""
    out = [paint(f"{rig}: after a power cut in setup {cut.setup}", "bold"), "", wrapped(SAFETY), ""]
    takes = ways_words(cut.seconds_by_way)
    out.append(paint(f"Again{f' ({takes})' if takes else ''}", "bold"))
    out += list(_changes(cut.again)) or ["  nothing"]
    out += ["", paint("Nobody has written whether it is kept: look, and set it again if it is gone", "bold")]
    out += list(_changes(cut.check)) or ["  nothing"]
    out += ["", paint("Comes back by itself as long as the desk sends it", "bold")]
    out += list(_stands(cut.stands)) or ["  nothing"]
    out += ["", f"{counted(cut.stored, 'setting')} of units are stored and stay."]
    return "\n".join(out) + "\n"


def _differing(found: Sequence[Differing] | None) -> Iterator[str]:
    if found is None:
        return
    yield paint("What changes against the rig's own desk and camera", "bold")
    for one in found:
        yield _item(f"{one.setup}: {units_words(one.units)}: {one.setting} {one.before} → {one.after}")
    if not found:
        yield "  nothing: every setting stays"
    yield ""


def _prep(lines: Sequence[PrepLine]) -> Iterator[str]:
    if not lines:
        return
    todo = [one for one in lines if one.by is not None]
    look = [one for one in lines if one.by is None]
    yield paint("Before it goes out to the set", "bold")
    if todo:
        rows = [
            (
                units_words(one.units),
                one.setting_label,
                one.choice_label,
                f"{one.road}{' (?)' if one.doubts else ''}",
            )
            for one in todo
        ]
        yield printed(table([("units", "left"), ("setting", "left"), ("to", "left"), ("how", "left")], rows))
    for words in dict.fromkeys(one.road for one in look):
        told = "; ".join(
            f"{units_words(one.units)} {one.setting_label} {one.choice_label}"
            for one in look
            if one.road == words
        )
        yield _item(f"{words}: {told}")
    asked: dict[str, list[str]] = {}
    for one in todo:
        for doubt in one.doubts:
            asked.setdefault(doubt, []).extend(one.units)
    for doubt, units in asked.items():
        yield _item(f"(?) {units_words(units)}: {doubt}")
    yield ""


def _setup(one: PlannedSetup, changes: SetupChanges, before: Sequence[Standing]) -> Iterator[str]:
    setup = one.setup
    about = [
        f"day {setup.day}" if setup.day else "",
        f"scene {setup.scene}" if setup.scene else "",
        f"shots {', '.join(shot.name for shot in setup.shots)}",
    ]
    yield paint(f"{setup.name}", "bold") + paint(f"  {'; '.join(piece for piece in about if piece)}", "dim")
    for warning in one.warnings:
        yield wrapped(f"! {sentence(warning)}", "  ", "    ")
    for fault in changes.faults:
        yield wrapped(paint(f"cannot be done: {fault}", "red"), "  ", "    ")
    if changes.checks:
        yield "  After the night, look whether these have been kept"
        yield from _changes(changes.checks)
    takes = ways_words(changes.seconds_by_way)
    yield f"  Change before it{f' ({takes})' if takes else ': nothing'}"
    yield from _changes(changes.changes)
    if changes.stands:
        yield "  Stands in every cue"
        yield from _stands([stand for stand in changes.stands if stand not in before])
        same = [stand for stand in changes.stands if stand in before]
        if same:
            told = "; ".join(f"{units_words(s.units)} {s.setting_label} {s.choice_label}" for s in same)
            yield wrapped(f"as in the setup before: {told}", "    ", "        ")
    for units, taken in drawn_together(one.settings):
        failed = taken.taken.violations > 0
        head = f"{units_words(units)}  {taken.setting}: {paint(taken.taken.label, 'bold')}"
        yield wrapped(
            f"{head} ({candidate_figures(taken.taken)}){paint(' !', 'red') if failed else ''}", "  "
        )
        yield wrapped(sentence(taken.why), "    ")
        others = turned_down_words(taken)
        if others:
            yield wrapped(f"Turned down: {others}.", "    ")
    for words in one.unjudged:
        yield wrapped(f"Not judged: {sentence(words)}", "  ", "    ")


def _changes(changes: Iterable[Change]) -> Iterator[str]:
    for change in changes:
        after = f"{change.step + 1}. " if change.step else ""
        what = f"[ ] {after}{BY_WORDS[change.by]}  {units_words(change.units)}  {head_words(change)}"
        yield wrapped(f"{what} ({seconds_words(change.seconds)})", "    ", "        ")
        for kind, words in step_words(change):
            yield wrapped(f"{_MARKS[kind]}{words}", "        ", "          ")


def _stands(stands: Iterable[Standing]) -> Iterator[str]:
    for one in stands:
        yield wrapped(
            f"{units_words(one.units)}  {one.setting_label} {one.choice_label}: {standing_words(one)}",
            "    ",
            "        ",
        )


def _item(words: str) -> str:
    return wrapped(f"- {sentence(words)}", "  ", "    ")
