"""doubts-open: the record has doubts that nobody has settled."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._text import plural


def check(reading: FixtureReading) -> Sequence[Fault]:
    """One fault for all open doubts: an error above draft, a note in a draft."""
    fixture = reading.fixture
    if not fixture.doubts:
        return ()
    doubts = fixture.open_doubts
    if not doubts:
        return ()
    figure = {
        "open": len(doubts),
        "standing": fixture.standing,
        "pointers": [doubt.pointer for doubt in doubts],
    }
    number = plural(len(doubts), "open doubt")
    if fixture.standing == "draft":
        help_ = "settle each with who decided what and when; then the standing can rise"
        return [Fault("/doubts", f"the draft has {number}", figure, help_, "info")]
    help_ = "settle them with who decided what and when, or set the standing back to draft"
    return [Fault("/standing", f"the record stands as {fixture.standing} with {number}", figure, help_)]


def _example(standing: str) -> dict[str, object]:
    settled = {"by": "A. Recorder", "date": "2026-03-14", "decision": "Two bytes, as the second chart shows."}
    doubt: dict[str, object] = {
        "pointer": "/modes/0/parameters/0",
        "why": "The chart prints one line for two slots.",
    }
    if standing == "settled":
        doubt["settled"] = settled
    return {"standing": "transcribed", "doubts": [doubt]}


RULE: Rule[FixtureReading] = Rule(
    name="doubts-open",
    severity="error",
    summary="The record has doubts that nobody has settled.",
    checks="Doubts without `settled`: an error in a record above draft, for information in a draft.",
    why="Whoever relies on the standing relies on what may have been read wrong.",
    bad=Example("A transcribed record with an open doubt.", _example("open")),
    good=Example("The doubt is settled, and by whom is told.", _example("settled")),
    references=("common practice, no source",),
    check=check,
)
