"""Datasette's CSV on its way out: cells that a spreadsheet would compute become text, row by row."""

from __future__ import annotations

import codecs
import csv
import io
from typing import Any

from modebook.render.csv_guard import guarded

LONGEST_CELL = 100_000_000
"""Characters; the csv module's own limit is less than a document's text."""


class GuardedRows:
    """Takes a CSV in pieces cut anywhere, gives its whole rows with every cell guarded (see csv_guard)."""

    def __init__(self) -> None:
        self._decode = codecs.getincrementaldecoder("utf-8")()
        self._waiting = ""
        csv.field_size_limit(LONGEST_CELL)

    def feed(self, piece: bytes, last: bool) -> bytes:
        """The rows that are complete so far; with `last`, whatever is left."""
        text = self._waiting + self._decode.decode(piece, last)
        cut = len(text) if last else _end_of_rows(text)
        self._waiting = text[cut:]
        if not cut:
            return b""
        out = io.StringIO()
        writer = csv.writer(out, lineterminator="\r\n")
        for row in csv.reader(io.StringIO(text[:cut], newline="")):
            writer.writerow([guarded(cell) for cell in row])
        return out.getvalue().encode()


def _end_of_rows(text: str) -> int:
    """Where the last whole row ends: behind the last line end outside quotes (RFC 4180)."""
    cut = text.rfind("\n") + 1
    while cut and text.count('"', 0, cut) % 2:
        cut = text.rfind("\n", 0, cut - 1) + 1
    return cut


def guarded_csv(application: Any) -> Any:
    """The application with datasette's own CSV guarded; the chart sheet guards itself and reads back."""

    async def wrapped(scope: Any, receive: Any, send: Any) -> None:
        path = scope.get("path", "")
        if scope["type"] != "http" or not path.endswith(".csv") or path.startswith("/fixtures/"):
            await application(scope, receive, send)
            return
        rows: GuardedRows | None = None

        async def told(message: Any) -> None:
            nonlocal rows
            if message["type"] == "http.response.start":
                if message["status"] == 200:
                    rows = GuardedRows()
                    kept = [pair for pair in message["headers"] if pair[0].lower() != b"content-length"]
                    message = {**message, "headers": kept}
            elif rows is not None:
                more = message.get("more_body", False)
                message = {**message, "body": rows.feed(message.get("body", b""), not more)}
            await send(message)

        await application(scope, receive, told)

    return wrapped
