"""Pages of tables that were sent once stand ready."""

from __future__ import annotations

from typing import Any

from datasette import hookimpl

from modebook.render.pages.ready import Answers, kept_ready
from modebook.render.site import NAME


@hookimpl(trylast=True)
def asgi_wrapper() -> Any:
    """Keep datasette's own answers."""
    return lambda application: kept_ready(application, Answers(f"/{NAME}"))
