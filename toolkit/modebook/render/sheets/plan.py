"""The printed plan: exceptions and what the gaffer must decide first, then each setup with its boxes."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

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
from modebook.render.sheets.page import page
from modebook.render.terminal import counted
from modebook.shots.change import Change, PowerCut, PrepLine, SetupChanges, Standing
from modebook.shots.day import Day
from modebook.shots.differing import Differing
from modebook.shots.exceptions import unusual
from modebook.shots.plan import PlannedSetup


def plan_page(day: Day, name: str, differing: Sequence[Differing] | None = None) -> str:
    """The page of a plan; `name` is the rig's."""
    plan = day.plan
    pairs = list(zip(plan.setups, day.changes.setups, strict=True))[day.first :]
    setups, before = [], tuple[Standing, ...]()
    for one, changes in pairs:
        setups.append(_setup(one, changes, before))
        before = changes.stands
    lead = [sentence(note) for note in plan.notes]
    if differing is not None:
        lead += [
            sentence(f"Otherwise than planned before: {one.setup}, {units_words(one.units)}, {_move(one)}")
            for one in differing
        ] or ["Under this desk and camera every setting stays as it was planned."]
    asked = questions(change for _, one in pairs for change in (*one.checks, *one.changes))
    taken = ways_words(day.total_seconds_by_way)
    cues = sum(1 for one, _ in pairs for _ in one.setup.cues)
    closing = (
        "A model of the fixtures does not end where the plan says: " + "; ".join(day.disagreements)
        if day.disagreements
        else "Done in order on a model of each fixture, these changes end every setup as planned."
    )
    return page(
        "plan.html",
        f"{name}: settings setup by setup",
        f"{counted(len(pairs), 'setup')}, {counted(cues, 'cue')}. All changes take: {taken or 'nothing'}.",
        words=SAFETY,
        lead=lead,
        exceptions=[
            {
                "setup": one.setup,
                "units": units_words(one.units),
                "setting": one.setting,
                "choice": one.choice,
                "usual": one.usual,
            }
            for one in unusual(plan, day.first)
        ],
        conflicts=[
            {
                "setup": one.setup,
                "units": units_words(one.units),
                "why": sentence(one.why),
                "cures": [sentence(cure) for cure in one.cures],
            }
            for one in conflicts_from(day)
        ],
        faults=[sentence(f"row {one.row}, {one.column}: {one.why}") for one in plan.faults],
        asked=[sentence(f"{about} ({units_words(units)})") for about, units in asked.items()],
        prep=[
            {
                "units": units_words(one.units),
                "fixture": one.fixture,
                "setting": one.setting_label,
                "choice": one.choice_label,
                "road": one.road,
                "doubts": one.doubts,
            }
            for one in day.changes.prep
            if one.by is not None
        ],
        look=_look(day.changes.prep),
        setups=setups,
        granted=[sentence(f"{units_words(units)}: {said}") for said, units in granted(plan.setups).items()],
        closing=closing,
    )


def cut_page(cut: PowerCut, name: str) -> str:
    """The page of what a power cut leaves to do."""
    setup = {
        "name": f"After a power cut in setup {cut.setup}",
        "about": f"{counted(cut.stored, 'setting')} of units are stored and stay",
        "warnings": (),
        "faults": (),
        "checks": _changes(cut.check),
        "changes": _changes(cut.again),
        "takes": ways_words(cut.seconds_by_way),
        "stands": _stands(cut.stands),
        "same": "",
        "settings": [],
        "unjudged": (),
    }
    return page(
        "plan.html",
        f"{name}: after a power cut",
        words=SAFETY,
        lead=[],
        exceptions=[],
        conflicts=[],
        faults=[],
        asked=[],
        prep=[],
        look=[],
        setups=[setup],
        granted=[],
        closing="What stands comes back by itself as long as the desk sends it.",
    )


def _look(prep: Iterable[PrepLine]) -> list[tuple[str, list[dict[str, str]]]]:
    """What is only looked at, by what is known of it."""
    found: dict[str, list[dict[str, str]]] = {}
    for one in prep:
        if one.by is None:
            line = {
                "units": units_words(one.units),
                "fixture": one.fixture,
                "setting": one.setting_label,
                "choice": one.choice_label,
            }
            found.setdefault(sentence(one.road).rstrip("."), []).append(line)
    return list(found.items())


def _move(one: Differing) -> str:
    return f"{one.setting}: {one.before} → {one.after}"


def _setup(one: PlannedSetup, changes: SetupChanges, before: Sequence[Standing]) -> dict[str, Any]:
    setup = one.setup
    about = [
        f"day {setup.day}" if setup.day else "",
        f"scene {setup.scene}" if setup.scene else "",
        f"shots {', '.join(shot.name for shot in setup.shots)}",
    ]
    same = [stand for stand in changes.stands if stand in before]
    return {
        "name": setup.name,
        "about": "; ".join(piece for piece in about if piece),
        "warnings": one.warnings,
        "faults": changes.faults,
        "checks": _changes(changes.checks),
        "changes": _changes(changes.changes),
        "takes": ways_words(changes.seconds_by_way),
        "stands": _stands([stand for stand in changes.stands if stand not in before]),
        "same": "; ".join(f"{units_words(s.units)} {s.setting_label} {s.choice_label}" for s in same),
        "settings": [
            {
                "units": units_words(units),
                "setting": taken.setting,
                "choice": taken.taken.label,
                "failed": taken.taken.violations > 0,
                "figures": candidate_figures(taken.taken),
                "why": sentence(taken.why),
                "others": turned_down_words(taken),
            }
            for units, taken in drawn_together(one.settings)
        ],
        "unjudged": [sentence(words) for words in one.unjudged],
    }


def _changes(changes: Iterable[Change]) -> list[dict[str, Any]]:
    return [
        {
            "by": BY_WORDS[one.by],
            "later": one.step > 0,
            "units": units_words(one.units),
            "head": head_words(one),
            "steps": [(kind, sentence(words)) for kind, words in step_words(one)],
            "takes": seconds_words(one.seconds),
        }
        for one in changes
    ]


def _stands(stands: Iterable[Standing]) -> list[dict[str, str]]:
    return [
        {
            "units": units_words(one.units),
            "head": f"{one.setting_label} {one.choice_label}",
            "words": standing_words(one),
        }
        for one in stands
    ]
