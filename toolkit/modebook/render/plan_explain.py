"""Why a unit is set as it is: the candidates' table, cue by cue, the roads; as text, JSON and a page."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from modebook.documents.shots import Cue
from modebook.render.findings_text import sentence
from modebook.render.plan_json import setting_json
from modebook.render.plan_words import BY_WORDS, SAFETY, seconds_words
from modebook.render.terminal import paint, printed, table, wrapped
from modebook.shots.explaining import Explained
from modebook.shots.plan import Candidate
from modebook.shots.route import Route
from modebook.shots.verdicts import Verdict

COLUMNS = ("choice", "packets", "stepping JND", "on a snap ms", "between frames %", "fails", "cheapest road")


def explain_json(found: Sequence[Explained]) -> dict[str, Any]:
    """All candidates with their verdicts, cue by cue, and the roads to each."""
    return {
        "settings": [
            {
                "setup": one.setup,
                "unit": one.unit,
                **setting_json(one.taken),
                "candidates": [_candidate(one, each) for each in one.taken.candidates],
            }
            for one in found
        ]
    }


def explain_text(found: Sequence[Explained]) -> str:
    """The tables as text."""
    out: list[str] = []
    for one in found:
        taken = one.taken
        out.append(
            paint(f"{one.setup}, unit {one.unit}: {taken.setting} at {taken.taken.label}", "bold")
            + paint(f"  {taken.fixture}, {taken.mode}", "dim")
        )
        out.append(wrapped(sentence(taken.why)))
        columns = [("", "left"), *((title, "right") for title in COLUMNS[1:-1]), (COLUMNS[-1], "left")]
        out.append(printed(table(columns, rows(one))))  # type: ignore[arg-type]
        for cue, lines in by_cue(one):
            out.append(f"  {cue}")
            out += [wrapped(f"{choice}: {why}", "    ", "      ") for choice, why in lines]
        for key, roads in one.roads.items():
            told = "; ".join(road_words(road) for road in roads) or "no way reaches it"
            out.append(wrapped(f"to {key}: {told}", "  ", "    "))
        out += [wrapped(f"Taken for granted: {sentence(said)}", "  ", "    ") for said in taken.assumed]
        out.append("")
    return "\n".join(out).rstrip() + "\n"


def explain_page(found: Sequence[Explained], name: str) -> str:
    """A page with the tables, and the fade of each cue drawn under each choice."""
    from modebook.render.fade_plot import picture
    from modebook.render.sheets.listing import Section, listing

    sections: list[Section] = []
    for one in found:
        taken = one.taken
        sections.append(
            Section(
                f"{taken.setting} at {taken.taken.label}",
                COLUMNS,
                rows(one),
                f"unit {one.unit}, {taken.fixture}, {taken.mode}",
                (sentence(taken.why), *(f"Taken for granted: {sentence(said)}" for said in taken.assumed)),
            )
        )
        for cue, lines in by_cue(one):
            sections.append(Section(cue, ("choice", "what it does"), lines))
        for cue_, cases in one.fades:
            known = [case for case in cases if case.known][:4]
            if known:
                sections.append(Section(f"{_cue(cue_)}, drawn", svg=_scaled(picture(known, "", "svg"))))
        roads = [(key, road_words(road)) for key, some in one.roads.items() for road in some]
        sections.append(Section("Roads", ("choice", "how, cost, time, keeping"), roads))
    return listing(f"{name}: why", f"setup {found[0].setup}, unit {found[0].unit}", sections, (), SAFETY)


def _scaled(drawn: bytes) -> str:
    """A drawing as part of a page: as wide as there is room, without the head of a file of its own."""
    svg = drawn.decode()
    head, rest = svg[svg.index("<svg") :].split(">", 1)
    head = re.sub(r'\s(width|height)="[^"]*"', "", head)
    return f'{head} style="width: 100%; height: auto">{rest}'


def rows(one: Explained) -> list[tuple[str, ...]]:
    """A line a candidate, below COLUMNS; the taken one is marked."""
    told: list[tuple[str, ...]] = []
    for each in one.taken.candidates:
        roads = one.roads.get(each.choice, ())
        told.append(
            (
                f"{'> ' if each is one.taken.taken else '  '}{each.label}",
                _figure(each.length_packets, ".3g"),
                _figure(each.worst_stepping_jnd, ".2g"),
                _figure(each.snap_added_ms, ".0f"),
                _figure(each.difference_percent, ".2g"),
                str(each.violations),
                road_words(roads[0]) if roads else "none",
            )
        )
    return told


def by_cue(one: Explained) -> list[tuple[str, list[tuple[str, str]]]]:
    """Each cue with what every choice makes of it."""
    found: dict[int, tuple[str, list[tuple[str, str]]]] = {}
    for each in one.taken.candidates:
        for verdict in each.verdicts:
            mark = "" if verdict.ok else "FAILS: "
            found.setdefault(verdict.cue.row, (_cue(verdict.cue), []))[1].append(
                (each.label, f"{mark}{verdict.why}")
            )
    return list(found.values())


def road_words(road: Route) -> str:
    """A road in a line: ``by slot, cost 1, 5 s, kept until power off``."""
    kept = "whether it is kept is not written" if road.kept == "unknown" else f"kept: {road.kept}"
    return f"{BY_WORDS[road.by]}, cost {road.cost:g}, {seconds_words(road.seconds)}, {kept}"


def _cue(cue: Cue) -> str:
    time = "at once" if cue.is_snap else f"in {cue.seconds_s:g} s"
    return (
        f"cue {cue.name!r} (row {cue.row}): {cue.parameter} {cue.from_percent:g} to {cue.to_percent:g} % "
        f"{time}, {cue.intent}"
    )


def _candidate(one: Explained, each: Candidate) -> dict[str, Any]:
    return {
        "choice": each.choice,
        "label": each.label,
        "length_packets": each.length_packets,
        "worst_stepping_jnd": each.worst_stepping_jnd,
        "snap_added_ms": each.snap_added_ms,
        "difference_percent": each.difference_percent,
        "fails": each.violations,
        "measured": each.measured,
        "cues": [_verdict(verdict) for verdict in each.verdicts],
        "roads": [
            {"by": road.by, "cost": road.cost, "seconds": road.seconds, "kept": road.kept}
            for road in one.roads.get(each.choice, ())
        ],
    }


def _verdict(verdict: Verdict) -> dict[str, Any]:
    figures = verdict.figures
    return {
        "row": verdict.cue.row,
        "cue": verdict.cue.name,
        "intent": verdict.cue.intent,
        "ok": verdict.ok,
        "judged": verdict.judged,
        "why": verdict.why,
        "stepping_jnd": list(figures.stepping_jnd) if figures else None,
        "added_ms": [1000 * value for value in figures.added_s] if figures else None,
        "delay_ms": [1000 * value for value in figures.delay_s] if figures else None,
    }


def _figure(value: float | None, form: str) -> str:
    return "-" if value is None else format(value, form)
