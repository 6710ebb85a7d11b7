"""The catalog's pages: datasette over the built file, read only."""

from __future__ import annotations

import json
import os
import shutil
import socket
import tempfile
import threading
from collections.abc import Callable
from pathlib import Path
from typing import Any

from modebook.shelf.catalog import data_folder
from modebook.shelf.errors import ShelfError, reason_of

NAME = "modebook"
"""What the database is called in addresses, whatever its file is called."""

SETTINGS: dict[str, Any] = {
    "default_page_size": 100,
    "max_returned_rows": 1000,
    "sql_time_limit_ms": 2000,
    "facet_time_limit_ms": 1000,
    "suggest_facets": False,
    "allow_download": True,
    "num_sql_threads": 2,
}

VISIT_S = 30.0
"""How long one page may take that is asked for ahead of readers."""


def site(database: Path) -> Any:
    """The datasette application over a database that nothing writes to any more; its ``app()`` is ASGI."""
    from datasette.app import Datasette

    folder = data_folder("site")
    templates, plugins, static = (folder / name for name in ("templates", "plugins", "static"))
    return Datasette(
        files=[],
        immutables=[str(database)],
        metadata=json.loads((folder / "metadata.json").read_text(encoding="utf-8")),
        settings=SETTINGS,
        template_dir=str(templates) if templates.is_dir() else None,
        plugins_dir=str(plugins) if plugins.is_dir() else None,
        static_mounts=[("static", str(static))] if static.is_dir() else [],
    )


def run_site(database: Path, host: str, port: int, tell: Callable[[str], None]) -> None:
    """Serve until stopped. `tell` gets the address. Raises ShelfError where the port cannot be had."""
    import asyncio

    import uvicorn

    listening = _listen(host, port)
    at_port = listening.getsockname()[1]
    with tempfile.TemporaryDirectory(prefix="modebook-") as folder:
        served = _own_copy(database, Path(folder))
        pages = site(served)
        asyncio.run(_first(pages))
        address = f"http://{f'[{host}]' if ':' in host else host}:{at_port}"
        tell(f"{address}/ (stop with Ctrl-C)")
        threading.Thread(target=_visit_tables, args=(address, served), daemon=True).start()
        config = uvicorn.Config(pages.app(), log_level="warning", lifespan="on")
        try:
            uvicorn.Server(config).run(sockets=[listening])
        finally:
            listening.close()


async def _first(pages: Any) -> None:
    """Load what pages need before anyone waits for it: the first reader is served like any other."""
    await pages.invoke_startup()
    for path in ("/", "/find?q=a", "/fade", f"/{NAME}"):
        await pages.client.get(path)


def _visit_tables(address: str, database: Path) -> None:
    """Ask for each table's page, while nobody may be asking: it counts all rows, and is kept.

    Twice, as what was cut short the first time is not kept; the others answer at once.
    """
    import sqlite3
    from contextlib import closing, suppress
    from urllib.parse import quote
    from urllib.request import urlopen

    with closing(sqlite3.connect(f"{database.as_uri()}?mode=ro&immutable=1", uri=True)) as connection:
        names = [row[0] for row in connection.execute(_TABLES)]
    for path in 2 * ["", *(f"/{quote(name)}" for name in names)]:
        with suppress(OSError):  # a page that fails here tells the reader who asks for it
            urlopen(f"{address}/{NAME}{path}", timeout=VISIT_S).read()


_TABLES = """
SELECT name FROM sqlite_master WHERE type IN ('table', 'view') AND name NOT LIKE '%search%'
AND name NOT LIKE '%fts%' AND name NOT LIKE 'sqlite%' ORDER BY type, name"""


def _own_copy(database: Path, folder: Path) -> Path:
    """The database under the pages' name: a link to the very file, or a copy where links cannot be made.

    A later build moves a new file into place and leaves this one as it is, so it may be served as immutable.
    """
    served = folder / f"{NAME}.sqlite"
    try:
        os.link(database, served)
    except OSError:
        shutil.copyfile(database, served)
    return served


def _listen(host: str, port: int) -> socket.socket:
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    # Named as TCP, or asyncio leaves Nagle's delay on, and each page waits 40 ms for an acknowledgment.
    listening = socket.socket(family, socket.SOCK_STREAM, socket.IPPROTO_TCP)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind((host, port))
        listening.listen(128)  # before the address is told, so that nobody who reads it is refused
    except OSError as error:
        listening.close()
        raise ShelfError(
            f"{host} port {port}",
            f"cannot listen there: {reason_of(error)}",
            remedy="stop the other program, or choose another --port (0 takes a free one)",
        ) from error
    return listening
