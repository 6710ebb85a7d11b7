"""What an error says on a page or in JSON: its status and one clear line, never a traceback."""

from __future__ import annotations

import logging
import sqlite3
from typing import Any

from modebook.render.pages.reply import PageError

OURS = "The program failed on this page: the fault is ours, and its log says more."

log = logging.getLogger("modebook.site")


def told_of(exception: Exception, tables: bool) -> tuple[int, str]:
    """An error's status and its line.

    tables: whether the address is one of datasette's pages of tables, where an odd parameter may bring about
    any error of SQL or of values (400); on a page of ours that is a fault of the program (500).
    """
    from datasette.utils.asgi import Base400
    from datasette.views.base import DatasetteError

    if isinstance(exception, PageError):
        return exception.status, exception.message
    if isinstance(exception, Base400):
        told = str(exception.args[0]) if exception.args else ""
        return exception.status, "There is no such page." if told in ("", "404") else told
    if isinstance(exception, DatasetteError):
        status = 400 if exception.status == 500 else exception.status
        if exception.message_is_html:
            return status, exception.title or "This is no SQL that can be answered in time."
        return status, str(exception.message)
    if isinstance(exception, sqlite3.OperationalError) and "interrupted" in str(exception):
        return 400, "The question took too long: ask for less."
    if tables and isinstance(exception, sqlite3.Error | ValueError | OverflowError):
        return 400, "An address with such parameters cannot be answered: take one away and try again."
    return 500, OURS


def logged(path: str, status: int, exception: Exception) -> None:
    """Write down what is the program's fault."""
    if status >= 500:
        log.error("%s could not be answered", path[:200], exc_info=exception)


def body(status: int, message: str) -> dict[str, Any]:
    """What a script, or the page's template, is told."""
    return {"ok": False, "error": message, "status": status, "title": None}
