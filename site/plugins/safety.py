"""Headers that every answer carries; datasette's tool pages, of which a catalog has no use, are shut."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from typing import Any

from datasette import hookimpl

HEADERS = {
    "content-security-policy": (
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; "
        "form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
    ),
    "x-content-type-options": "nosniff",
    "x-frame-options": "DENY",
    "referrer-policy": "no-referrer",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), geolocation=(), microphone=()",
}
"""No inline script or style, no other host, no frame around a page; a page may set its own policy."""

CLOSED = (
    "/-/allow-debug",
    "/-/auth-token",
    "/-/create-token",
    "/-/databases",
    "/-/logout",
    "/-/messages",
    "/-/patterns",
    "/-/permissions",
    "/-/threads",
)
"""Tools for people who write datasette's plugins, and what tells of the machine's folders."""
NOWHERE = "/-/not-here"

App = Callable[..., Awaitable[None]]


@hookimpl
def asgi_wrapper() -> Callable[[App], App]:
    """Put the headers on every answer."""
    return _wrapped


def _wrapped(app: App) -> App:
    async def safe(scope: dict[str, Any], receive: Any, send: Any) -> None:
        if scope["type"] != "http":
            await app(scope, receive, send)
            return
        if scope["path"].rstrip("/").startswith(CLOSED):
            scope = {**scope, "path": NOWHERE, "raw_path": NOWHERE.encode()}

        async def with_headers(message: dict[str, Any]) -> None:
            if message["type"] == "http.response.start":
                told = {bytes(name).lower() for name, _ in message["headers"]}
                more = [(n.encode(), v.encode()) for n, v in HEADERS.items() if n.encode() not in told]
                message = {**message, "headers": [*message["headers"], *more]}
            await send(message)

        await app(scope, receive, with_headers)

    return safe
