"""The policy: every threshold as documented, and a rig's own word on them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import settings as calm
from pydantic import ValidationError

from modebook.documents.policy import Override, Policy, house_policy
from support.documents import Json, policies

CALM = calm(deadline=None, max_examples=40)
PRACTICE = "common practice, no source"

DOCUMENTED = [
    ("chromaticity-step", 0.0011, "delta u'v'", "error", "CIE TN 001:2014"),
    ("chromaticity-decimals", 0.0001, "1", "warning", PRACTICE),
    ("color-temperature-step", 0.0011, "delta u'v'", "warning", "CIE TN 001:2014"),
    ("white-from", 2700, "K", None, PRACTICE),
    ("white-to", 6500, "K", None, PRACTICE),
    ("pan-tilt-step", 0.1, "deg", "error", PRACTICE),
    ("hue-step", 1, "deg", "error", PRACTICE),
    ("zoom-step", 0.5, "deg", "warning", PRACTICE),
    ("index-step", 1, "deg", "warning", PRACTICE),
    ("dimmer-step", 3, "JND", "warning", f"NEMA PS3.14; the 3 is {PRACTICE}"),
    ("dimmer-from", 1, "%", None, PRACTICE),
    ("dimmer-white", 100, "cd/m2", None, PRACTICE),
    ("factory-smoothing", 2, "packets", "warning", PRACTICE),
]
"""The table of thresholds in the design: figure, unit, severity, source."""


@pytest.mark.parametrize(("key", "value", "unit", "severity", "source"), DOCUMENTED)
def test_the_house_policy_is_the_documented_table(
    key: str, value: float, unit: str, severity: str | None, source: str
) -> None:
    """Each figure stands once, with its unit, severity and source."""
    found = house_policy()[key]
    assert (found.value, found.unit, found.severity, found.source) == (value, unit, severity, source)


def test_every_figure_has_a_source_or_says_that_it_has_none() -> None:
    """Beyond the table only assumptions stand, which nobody can be beyond."""
    documented = {key for key, *_ in DOCUMENTED}
    for threshold in house_policy().thresholds:
        assert threshold.source == PRACTICE or threshold.source.startswith(("CIE", "NEMA"))
        assert threshold.key in documented or threshold.severity is None


def test_a_rig_overrides_what_it_names() -> None:
    """A value, a severity, or both; what is not named stays, and the source says that it was changed."""
    policy = house_policy()
    changed = policy.overridden(
        {"hue-step": Override(value=2), "zoom-step": Override(severity="error", source="the gaffer")}
    )
    hue, zoom = changed["hue-step"], changed["zoom-step"]
    assert (hue.value, hue.severity, hue.source) == (2, "error", f"overridden; {PRACTICE}")
    assert (zoom.value, zoom.severity, zoom.source) == (0.5, "error", "the gaffer")
    assert policy["hue-step"].value == 1
    rest = [one for one in changed.thresholds if one.key not in {"hue-step", "zoom-step"}]
    assert rest == [one for one in policy.thresholds if one.key not in {"hue-step", "zoom-step"}]


def test_a_value_of_zero_is_an_override() -> None:
    """Zero is a figure, not an absence."""
    assert house_policy().overridden({"hue-step": Override(value=0)})["hue-step"].value == 0


def test_a_threshold_that_does_not_exist_is_told() -> None:
    """A misspelled key would otherwise change nothing, unseen."""
    with pytest.raises(KeyError, match="hue-stop"):
        house_policy().overridden({"hue-stop": Override(value=2)})
    with pytest.raises(KeyError, match="hue-stop"):
        house_policy()["hue-stop"]


def test_a_threshold_stands_once() -> None:
    """Two figures under one key would leave the rule to chance."""
    one = {"key": "a", "what": "x", "value": 1, "unit": "1", "source": PRACTICE}
    with pytest.raises(ValidationError, match="two thresholds have the key 'a'"):
        Policy.model_validate({"name": "x", "thresholds": [one, one]})


@CALM
@given(policies())
def test_overriding_by_what_stands_there_changes_only_the_source(told: Json) -> None:
    """The same value and severity again leave every figure as it was."""
    policy = Policy.model_validate(told)
    same = policy.overridden(
        {one.key: Override(value=one.value, severity=one.severity) for one in policy.thresholds}
    )
    assert [(one.key, one.value, one.severity) for one in same.thresholds] == [
        (one.key, one.value, one.severity) for one in policy.thresholds
    ]
