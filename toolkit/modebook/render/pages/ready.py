"""Keeps datasette's own answers whole: the file never changes, so the same address has the same answer."""

from __future__ import annotations

from collections import OrderedDict
from dataclasses import dataclass
from typing import Any

MOST_BYTES = 16_000_000
"""Of bodies kept; the one that was asked for longest ago goes first."""
LONGEST_BYTES = 500_000
"""A longer body is not kept."""
CUT_SHORT = (b'class="cut-short"', b'"facets_timed_out": ["')
"""What a body says whose counts were broken off: another try may have more luck, so it is not kept."""


@dataclass(frozen=True, slots=True)
class Answer:
    """What was sent."""

    start: dict[str, Any]
    body: bytes


class Answers:
    """The answers below one path, by host, path and query: some links name the host that was asked."""

    def __init__(self, below: str) -> None:
        self.below = below
        self._size = 0
        self._kept: OrderedDict[tuple[bytes, ...], Answer] = OrderedDict()

    def covers(self, scope: dict[str, Any]) -> bool:
        """Whether the answer is a matter of the address alone: no tables as CSV, which are streams."""
        path = scope.get("path", "")
        own = path == self.below or path.startswith((f"{self.below}/", f"{self.below}."))
        asked = scope["type"] == "http" and scope["method"] == "GET" and own and not path.endswith(".csv")
        return asked and not any(name in (b"cookie", b"authorization") for name, _ in scope["headers"])

    def get(self, scope: dict[str, Any]) -> Answer | None:
        """The answer that was kept."""
        found = self._kept.get(_key(scope))
        if found is not None:
            self._kept.move_to_end(_key(scope))
        return found

    def keep(self, scope: dict[str, Any], answer: Answer) -> None:
        """Keep an answer of status 200 that is complete and sets nothing in the browser."""
        told = {bytes(name).lower() for name, _ in answer.start["headers"]}
        if answer.start["status"] != 200 or b"set-cookie" in told or len(answer.body) > LONGEST_BYTES:
            return
        if any(mark in answer.body for mark in CUT_SHORT) or _key(scope) in self._kept:
            return
        self._kept[_key(scope)] = answer
        self._size += len(answer.body)
        while self._size > MOST_BYTES:
            self._size -= len(self._kept.popitem(last=False)[1].body)


def _key(scope: dict[str, Any]) -> tuple[bytes, ...]:
    hosts = [value for name, value in scope["headers"] if name == b"host"]
    return (scope.get("raw_path") or scope["path"].encode(), scope["query_string"], *hosts)


def kept_ready(application: Any, answers: Answers) -> Any:
    """The application, with what `answers` covers sent from there where it was sent before."""

    async def wrapped(scope: Any, receive: Any, send: Any) -> None:
        if scope["type"] != "http" or not answers.covers(scope):
            await application(scope, receive, send)
            return
        known = answers.get(scope)
        if known is not None:
            await send(known.start)
            await send({"type": "http.response.body", "body": known.body})
            return
        start: dict[str, Any] = {}
        body = bytearray()

        async def told(message: Any) -> None:
            if message["type"] == "http.response.start":
                start.update(message)
            elif len(body) <= LONGEST_BYTES:
                body.extend(message.get("body", b""))
            await send(message)
            if message["type"] == "http.response.body" and not message.get("more_body", False):
                answers.keep(scope, Answer(dict(start), bytes(body)))

        await application(scope, receive, told)

    return wrapped
