"""From a request to a page: assembles in a reading thread, draws the template, tells errors in one line."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from dataclasses import fields
from typing import TYPE_CHECKING, Any
from urllib.parse import parse_qs

from modebook.render.pages.asking import Asked
from modebook.render.pages.failing import not_so

if TYPE_CHECKING:
    from datasette import Response

    from modebook.render.pages.records import Records

DATABASE = "modebook"
"""What the database is called in addresses."""

TIME_LIMIT_MS = 2000
"""SQL of a page that takes longer is broken off."""

Make = Callable[[sqlite3.Connection, "Records", Asked], Any]
"""Assembles a page: a read-only connection, the documents, what the address asks; gives a dataclass."""


def asked_of(request: Any) -> Asked:
    """The parameters of a request. Raises PageError (400) for a query that is no text."""
    try:
        return parse_qs(
            request.query_string, keep_blank_values=True, errors="strict", max_num_fields=100
        )
    except ValueError as error:
        raise not_so("the address has too many parameters, or signs that are no UTF-8") from error


async def made(datasette: Any, request: Any, make: Make) -> Any:
    """What `make` assembles, in a thread that reads the database, with the time limit on its SQL."""
    from datasette.utils import sqlite_timelimit

    asked = asked_of(request)
    records = datasette.modebook_records

    def work(connection: sqlite3.Connection) -> Any:
        with sqlite_timelimit(connection, TIME_LIMIT_MS):
            return make(connection, records, asked)

    return await datasette.get_database(DATABASE).execute_fn(work)


async def page(datasette: Any, request: Any, template: str, make: Make) -> Response:
    """The response of a page: the fields of what `make` gives are the template's names."""
    from datasette import Response

    told = await made(datasette, request, make)
    context = {field.name: getattr(told, field.name) for field in fields(told)}
    return Response.html(await datasette.render_template(template, context, request=request))


async def answer(datasette: Any, request: Any, make: Make) -> Response:
    """The JSON response of an endpoint: what `make` gives is a mapping."""
    from datasette import Response

    from modebook.render.jsons import to_json

    told = await made(datasette, request, make)
    return Response(to_json(told), content_type="application/json; charset=utf-8")
