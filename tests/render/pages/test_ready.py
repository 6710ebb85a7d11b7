"""Answers of tables are kept whole, by address and host, and nothing is kept that is not complete."""

from __future__ import annotations

import asyncio
from typing import Any

import pytest

from modebook.render.pages.ready import LONGEST_BYTES, MOST_BYTES, Answers, kept_ready


class Counting:
    """An application that answers with how often it was asked, in two pieces."""

    def __init__(
        self, status: int = 200, headers: tuple[tuple[bytes, bytes], ...] = (), text: str = ""
    ) -> None:
        self.asked, self.status, self.headers, self.text = 0, status, list(headers), text.encode()

    async def __call__(self, scope: Any, receive: Any, send: Any) -> None:
        self.asked += 1
        await send({"type": "http.response.start", "status": self.status, "headers": self.headers})
        await send({"type": "http.response.body", "body": str(self.asked).encode(), "more_body": True})
        await send({"type": "http.response.body", "body": self.text})


def get(application: Any, path: str, query: str = "", host: str = "a", **more: Any) -> bytes:
    """The body that comes back."""
    headers = [(b"host", host.encode()), *more.pop("headers", [])]
    scope = {
        "type": "http",
        "method": "GET",
        "path": path,
        "query_string": query.encode(),
        "headers": headers,
    }
    sent: list[Any] = []

    async def send(message: Any) -> None:
        sent.append(message)

    asyncio.run(application({**scope, **more}, None, send))
    assert sent[0]["type"] == "http.response.start"
    return b"".join(message["body"] for message in sent[1:])


def keeping(inner: Counting) -> Any:
    """The application with answers below /t kept."""
    return kept_ready(inner, Answers("/t"))


def test_the_same_address_is_answered_once() -> None:
    """Whole, and apart from other queries and hosts: some links name the host."""
    inner = Counting(text=" of it")
    site = keeping(inner)
    assert [get(site, "/t/x") for _ in range(3)] == [b"1 of it"] * 3
    assert get(site, "/t/x", "a=1") == b"2 of it"
    assert get(site, "/t/x", host="b") == b"3 of it"
    assert get(site, "/t/x") == b"1 of it"


@pytest.mark.parametrize(
    "told",
    [
        {"path": "/else"},
        {"path": "/there"},
        {"path": "/t/x.csv"},
        {"path": "/t/x", "method": "POST"},
        {"path": "/t/x", "headers": [(b"cookie", b"a=b")]},
        {"path": "/t/x", "headers": [(b"authorization", b"x")]},
    ],
)
def test_what_is_not_a_matter_of_the_address_is_asked_anew(told: dict[str, Any]) -> None:
    """Other pages, streams, posts, and whoever shows who he is."""
    site = keeping(Counting())
    assert [get(site, **told) for _ in range(2)] == [b"1", b"2"]


@pytest.mark.parametrize(
    "inner",
    [
        Counting(status=404),
        Counting(status=500),
        Counting(headers=((b"Set-Cookie", b"a=b"),)),
        Counting(text='<p class="cut-short">'),
        Counting(text='{"facets_timed_out": ["a"]}'),
        Counting(text="x" * (LONGEST_BYTES + 1)),
    ],
)
def test_no_refusal_and_nothing_cut_short_is_kept(inner: Counting) -> None:
    """Nor what sets a cookie, nor what is too long."""
    site = keeping(inner)
    get(site, "/t/x")
    get(site, "/t/x")
    assert inner.asked == 2


def test_the_oldest_go_when_there_are_too_many() -> None:
    """What is kept stays below its bound; what was asked for lately stays."""
    inner = Counting(text="x" * (LONGEST_BYTES - 10))
    site = keeping(inner)
    count = MOST_BYTES // LONGEST_BYTES + 2
    for number in range(count):
        get(site, f"/t/{number}")
        get(site, "/t/0")
    assert inner.asked == count
    get(site, "/t/1")
    assert inner.asked == count + 1
