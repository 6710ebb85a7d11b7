"""Addresses of the site's pages, made in one place, and words with counts."""

from __future__ import annotations

from dataclasses import dataclass
from urllib.parse import quote, urlencode


@dataclass(frozen=True, slots=True)
class Link:
    """Words that lead somewhere."""

    words: str
    href: str


def fixture_href(identity: str, mode: str = "", address: int | None = None) -> str:
    """A fixture's page by its ``maker/model``; with a mode, that mode's chart."""
    asked = {"mode": mode, "address": "" if address is None else str(address)}
    return "/fixtures/" + quote(identity) + _query(asked)


def find_href(**asked: str) -> str:
    """The list of modes that answer."""
    return "/find" + _query(asked)


def rig_href(rig: str) -> str:
    """A rig's page by its name in the catalog."""
    return "/rigs/" + quote(rig, safe="")


def rule_href(rule: str) -> str:
    """A rule's page."""
    return "/rules/" + quote(rule, safe="")


def fade_href(**asked: str) -> str:
    """The fade page with a question filled in."""
    return "/fade" + _query(asked)


def compare_href(**asked: str) -> str:
    """The compare page."""
    return "/compare" + _query(asked)


def counted(count: int, word: str) -> str:
    """``1 mode``, ``1,204 modes``."""
    return f"{count:,} {word}{'s' * (count != 1)}"


def _query(asked: dict[str, str]) -> str:
    told = urlencode({key: value for key, value in asked.items() if value})
    return f"?{told}" if told else ""
