"""The site's own addresses: each is read, answered in the package, and drawn by a template."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from typing import Any
from urllib.parse import unquote

from datasette import Response, hookimpl

from modebook.render.pages.reply import Drawn, Maker, PageError
from modebook.render.pages.routes import ROUTES
from modebook.render.site import NAME


@hookimpl
def register_routes() -> list[tuple[str, Callable[..., Awaitable[Response]]]]:
    """The addresses, which datasette tries before its own."""
    return [(f"^{pattern}", _view(make)) for pattern, make in ROUTES]


def _view(make: Maker) -> Callable[..., Awaitable[Response]]:
    async def view(datasette: Any, request: Any) -> Response:
        place = {name: unquote(value) for name, value in request.url_vars.items()}
        query = {name: request.args.getlist(name) for name in request.args}
        try:
            answer = await datasette.get_database(NAME).execute_fn(lambda found: make(found, place, query))
        except PageError as error:
            told = {"ok": False, "error": error.message, "status": error.status, "title": None}
            if request.path.endswith(".json"):
                return Response.json(told, status=error.status)
            body = await datasette.render_template("error.html", told, request=request)
            return Response.html(body, status=error.status)
        if isinstance(answer, Drawn):
            context = {"page": answer.page, "path": request.path}
            return Response.html(await datasette.render_template(answer.template, context, request=request))
        return Response(answer.body, content_type=answer.content_type, headers=dict(answer.headers))

    return view
