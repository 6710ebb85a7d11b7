"""stale-acceptance: an acceptance covers no finding any more."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from modebook.checks.acceptance import covers
from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading
from modebook.checks.registry import FIXTURE_RULES, rules_of
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._text import perhaps
from modebook.documents.doubts import Acceptance

_NAME = "stale-acceptance"


def check(reading: FixtureReading) -> Sequence[Fault]:
    """The acceptances that cover nothing; the rules they name are run once more on this document."""
    accepted = reading.fixture.accepted
    if not accepted:
        return ()
    rules = rules_of(FIXTURE_RULES)
    fired: dict[str, list[str] | None] = {}
    found: list[Fault] = []
    for index, acceptance in enumerate(accepted):
        place = f"/accepted/{index}"
        if acceptance.rule not in rules:
            found.append(
                Fault(
                    f"{place}/rule",
                    f"the acceptance names {acceptance.rule}, which is no rule",
                    {"rule": acceptance.rule, "pointer": acceptance.pointer},
                    perhaps(acceptance.rule, rules),
                )
            )
            continue
        if acceptance.rule not in fired:
            fired[acceptance.rule] = _pointers(acceptance.rule, rules, reading)
        pointers = fired[acceptance.rule]
        if pointers is not None and not any(covers(acceptance, acceptance.rule, at) for at in pointers):
            found.append(_stale(acceptance, place))
    return found


def _pointers(name: str, rules: Mapping[str, Rule[Any]], reading: FixtureReading) -> list[str] | None:
    """Where a rule fires in the document; None where the rule itself fails, which its own run reports."""
    if name == _NAME:
        return []  # that an acceptance is stale cannot be accepted in turn
    try:
        return [fault.pointer for fault in rules[name].check(reading)]
    except Exception:  # noqa: BLE001 - the runner turns the same failure of the same rule into a finding
        return None


def _stale(acceptance: Acceptance, place: str) -> Fault:
    where = acceptance.pointer or "the document"
    return Fault(
        place,
        f"the acceptance of {acceptance.rule} at {where} covers no finding",
        {"rule": acceptance.rule, "pointer": acceptance.pointer},
        "take it out: the fault that it accepted is gone",
    )


def _example(slots: list[int]) -> dict[str, object]:
    return {
        "modes": [{"parameters": [{"parameter": "dimmer", "slots": slots}]}],
        "accepted": [
            {
                "rule": "coarse-dimmer",
                "pointer": "/modes/0/parameters/0",
                "reason": "Used for work light only.",
            }
        ],
    }


RULE: Rule[FixtureReading] = Rule(
    name=_NAME,
    severity="error",
    summary="An acceptance covers no finding any more.",
    checks=(
        "Every entry of `accepted`: that its rule exists, and that the rule still fires at its pointer or "
        "below it. The rule's findings are worked out anew, also when it is not among those asked for."
    ),
    why=(
        "An acceptance that outlives its fault would silently cover the next one at the same place, which "
        "nobody has decided to live with."
    ),
    bad=Example("The dimmer has 16 bits by now, and nothing is coarse.", _example([1, 2])),
    good=Example("The dimmer of 8 bits is still there.", _example([1])),
    references=("common practice, no source",),
    check=check,
)
