"""Words about a record: its standing, how far it can be trusted."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

Standing = Literal["draft", "transcribed", "second-read", "proved"]

STANDINGS: Mapping[str, str] = MappingProxyType(
    {
        "draft": "Read by a program or in haste, or with open doubts: not to be relied on.",
        "transcribed": "One person read the source and wrote it down whole; no doubt is open.",
        "second-read": "A second person read the same source independently, and the two readings agree.",
        "proved": "Tried on a real fixture, and it did what the record says.",
    }
)
"""From the least trusted to the most."""
