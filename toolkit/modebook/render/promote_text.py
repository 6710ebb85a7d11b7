"""Why a record's standing is not raised, for people: one reason a line, then what to type next."""

from __future__ import annotations

import shlex
import textwrap
from collections.abc import Sequence

from modebook.documents.fixture import Fixture
from modebook.render.findings_text import sentence
from modebook.render.pointer_words import in_words
from modebook.render.terminal import width
from modebook.shelf.errors import printable

MOST = 12
"""Reasons that are told; the first doubts stand for the rest."""


def refused_text(fixture: Fixture, file: str, to: str, reasons: Sequence[str]) -> str:
    """The reasons, and what to do about them."""
    out = [f"{printable(file)} is not raised to {to}:"]
    words = {one.pointer: in_words(fixture, one.pointer) for one in fixture.open_doubts}
    for reason in reasons[:MOST]:
        for pointer, place in words.items():
            reason = reason.replace(f"open at {pointer}: ", f"open at {place}: ")
        out.append(
            textwrap.fill(
                sentence(printable(reason)),
                width=width(),
                initial_indent="- ",
                subsequent_indent="  ",
                break_on_hyphens=False,
                break_long_words=False,
            )
        )
    if len(reasons) > MOST:
        out.append(f"  and {len(reasons) - MOST} more.")
    if fixture.open_doubts:
        out.append(f"Next, settle the doubts: modebook draft {shlex.quote(file)} --interactive")
    return "\n".join(out) + "\n"
