"""Every threshold in one place: its value, unit, severity and source; a rig may override it."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from modebook.documents.base import Key, Part, Text

Severity = Literal["error", "warning", "info"]


class Threshold(Part):
    """A figure that a check compares with, or assumes."""

    key: Key
    """The name that rules and rigs refer to."""
    what: Text
    """What it is compared with."""
    value: float
    """The figure."""
    unit: Text
    """The unit of the figure."""
    severity: Severity | None = None
    """How bad it is to be beyond it; absent for an assumption."""
    source: Text
    """A standard, or 'common practice, no source'."""


class Policy(Part):
    """A policy document: all thresholds by key."""

    schema_: Annotated[str | None, Field(alias="$schema")] = None
    """The schema that an editor checks this file with."""
    name: Text
    """The name of this policy."""
    thresholds: list[Threshold]
    """Every figure, once."""

    @model_validator(mode="after")
    def _keys_once(self) -> Self:
        keys = [threshold.key for threshold in self.thresholds]
        twice = sorted({key for key in keys if keys.count(key) > 1})
        if twice:
            raise ValueError(f"two thresholds have the key {twice[0]!r}")
        return self

    def __getitem__(self, key: str) -> Threshold:
        for threshold in self.thresholds:
            if threshold.key == key:
                return threshold
        raise KeyError(key)

    def overridden(self, overrides: dict[str, Override]) -> Policy:
        """A policy with some figures or severities changed. Raises KeyError for a key that it lacks."""
        for key in overrides:
            self[key]
        changed: list[Threshold] = []
        for threshold in self.thresholds:
            change = overrides.get(threshold.key)
            if change is not None:
                threshold = threshold.model_copy(
                    update={
                        "value": threshold.value if change.value is None else change.value,
                        "severity": change.severity or threshold.severity,
                        "source": change.source or f"overridden; {threshold.source}",
                    }
                )
            changed.append(threshold)
        return self.model_copy(update={"thresholds": changed})


class Override(Part):
    """A rig's own word on a threshold."""

    value: float | None = None
    """The figure that holds instead."""
    severity: Severity | None = None
    """The severity that holds instead."""
    source: Text | None = None
    """Who decided it, and why."""


@cache
def house_policy() -> Policy:
    """The policy that holds where nobody says otherwise: policy.json beside this file."""
    return Policy.model_validate_json(Path(__file__).with_name("policy.json").read_bytes())
