"""The rows that come with the program: words, E1.20's labels and types, rules, thresholds."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from modebook.checks.bulk import INVALID
from modebook.checks.rule import Rule
from modebook.checks.runner import CRASHED
from modebook.documents.policy import Policy
from modebook.store.values import Row, Rows
from modebook.words.e120 import SLOT_LABELS, SLOT_TYPES
from modebook.words.parameters import PARAMETERS


def vocabulary_rows(rules: Mapping[str, Rule[Any]], policy: Policy, about: Mapping[str, str]) -> Rows:
    """The rows of the tables that no document changes."""
    ours = [
        (INVALID, "error", "A document cannot be taken in.", "", ""),
        (CRASHED, "error", "A rule failed on a document, which is a fault of the program.", "", ""),
    ]
    told: dict[str, Row] = {row[0]: row for row in ours}
    for rule in rules.values():
        told[rule.name] = (rule.name, rule.severity, rule.summary, rule.checks, rule.why)
    return {
        "about": sorted(about.items()),
        "slot_labels": [(k.number, k.name, k.family, k.meaning) for k in SLOT_LABELS.values()],
        "slot_types": [(k.number, k.name, k.meaning) for k in SLOT_TYPES.values()],
        "words": [
            (
                word.key,
                word.name,
                word.family,
                word.slot_label,
                word.slot_type,
                word.quantity,
                word.unit,
                int(word.continuous),
                word.about,
            )
            for word in PARAMETERS.values()
        ],
        "rules": [told[name] for name in sorted(told)],
        "thresholds": [(t.key, t.what, t.value, t.unit, t.severity, t.source) for t in policy.thresholds],
    }
