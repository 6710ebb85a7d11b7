"""What is not certain in a record, and what someone decided to live with."""

from __future__ import annotations

from pydantic import Field

from modebook.documents.base import Date, Key, Part, Pointer, SlotNumber, Text


class Settled(Part):
    """How a doubt ended: who decided what, and when."""

    by: Text
    date: Date
    decision: Text
    """What was decided, and why."""


class Doubt(Part):
    """Something in the record that may be read wrong. While one is open the standing is draft."""

    pointer: Pointer
    """The place in this document."""
    slots: list[SlotNumber] = Field(default_factory=list)
    """The slots it is about, counted as the chart counts them."""
    place: Text | None = None
    """Where in the source: page, table, row."""
    printed: str | None = None
    """What the source prints."""
    read: str | None = None
    """What was made of it."""
    why: Text
    """Why it is doubtful."""
    settled: Settled | None = None
    """Absent while it is open."""


class Acceptance(Part):
    """A finding that someone decided to live with. One that no longer fires is itself a finding."""

    rule: Key
    """The rule whose finding is accepted."""
    pointer: Pointer
    """Where it fires."""
    reason: Text
    """Why it is lived with."""
    by: Text | None = None
    date: Date | None = None
