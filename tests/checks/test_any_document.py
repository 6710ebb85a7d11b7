"""Rules on any document that can be written: none fails, and each finding has a place in it."""

from __future__ import annotations

import json

from hypothesis import HealthCheck, given, settings

from modebook.checks.reading import FixtureReading
from modebook.checks.registry import FIXTURE_RULES, rules_of
from modebook.checks.rules._pointers import points_at_something
from modebook.checks.runner import CRASHED, run_rules
from modebook.documents.fixture import Fixture
from support.documents import Json, fixtures

RULES = rules_of(FIXTURE_RULES)


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(fixtures())
def test_no_rule_fails_on_a_valid_document_and_every_finding_can_be_written(document: Json) -> None:
    fixture = Fixture.model_validate_json(json.dumps(document))
    found = run_rules(FixtureReading(fixture, "a.json", "maker/model"), RULES)
    assert not [finding for finding in found if finding.rule == CRASHED]
    for finding in found:
        json.dumps(dict(finding.figure), allow_nan=False)
        assert points_at_something(fixture, finding.pointer), finding
