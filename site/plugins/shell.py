"""Errors as one clear line, and text that obeys nothing: words are shown, whatever signs they hold."""

from __future__ import annotations

from typing import Any

from datasette import Response, hookimpl
from datasette.plugins import pm
from datasette.utils.asgi import BadRequest

from modebook.render.pages.csv_stream import guarded_csv
from modebook.render.pages.problem import body, logged, told_of
from modebook.render.pages.shown import shown
from modebook.render.site import NAME


@hookimpl
def startup() -> None:
    """Take out datasette's own handler, which prints every wrong address as a traceback."""
    stock = pm.get_plugin("datasette.handle_exception")
    if stock is not None:
        pm.unregister(stock)


@hookimpl
def prepare_jinja2_environment(env: Any) -> None:
    """All text that templates put out loses its power over the line that it stands in."""
    env.finalize = lambda value: shown(value) if type(value) is str else value


@hookimpl(tryfirst=True)
def handle_exception(datasette: Any, request: Any, exception: Exception) -> Any:
    """The error's page, or its JSON."""

    async def drawn() -> Response:
        status, message = told_of(exception, request.path.startswith(f"/{NAME}"))
        logged(request.path, status, exception)
        told = body(status, message)
        if request.path.endswith(".json"):
            return Response.json(told, status=status)
        return Response.html(
            await datasette.render_template("error.html", told, request=request), status=status
        )

    return drawn()


@hookimpl
def filters_from_request(request: Any, database: str, table: str, datasette: Any) -> Any:
    """A filter on a column that the table lacks is refused: datasette would leave it out without a word."""

    async def checked() -> None:
        columns = await datasette.get_database(database).table_columns(table)
        for name in request.args:
            if not name.startswith("_") and name not in columns and name.partition("__")[0] not in columns:
                raise BadRequest(f"{table} has no column {name[:60]!r}; it has {', '.join(columns)}.")

    return checked


@hookimpl
def asgi_wrapper() -> Any:
    """Tables as CSV that no spreadsheet computes."""
    return guarded_csv
