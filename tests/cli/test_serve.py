"""`modebook serve`: read only, on this machine, with ready queries for the three questions."""

from __future__ import annotations

import asyncio
import json
import re
import socket
from collections.abc import Coroutine, Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

import pytest

from modebook.render.site import NAME, site
from modebook.shelf.catalog import Catalog
from modebook.store.build import build
from support.program import CATALOG, ROOT, Program


def waited(work: Coroutine[Any, Any, Any]) -> Any:
    """What a coroutine gives, in a thread of its own: a browser's tests leave a loop running in this one."""
    with ThreadPoolExecutor(1) as other:
        return other.submit(asyncio.run, work).result()


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Any]:
    """The site over the demo catalog."""
    database = tmp_path_factory.mktemp("site") / f"{NAME}.sqlite"
    build(Catalog(CATALOG), database)
    made = site(database)
    waited(made.invoke_startup())
    yield made
    made.get_database(NAME).close()


def get(pages: Any, path: str) -> Any:
    """What the site answers."""
    return waited(pages.client.get(path))


def queries() -> dict[str, Any]:
    """The ready queries of the site's metadata."""
    metadata = json.loads((ROOT / "site" / "metadata.json").read_text(encoding="utf-8"))
    return dict(metadata["databases"][NAME]["queries"])


def test_every_ready_query_answers(pages: Any) -> None:
    """With empty parameters and with plausible ones, none fails."""
    for name, query in queries().items():
        names = set(re.findall(r":(\w+)", query["sql"]))
        told = {"words": "torvane extended", "min_bits": "16", "parameter": "pan"}
        asked = "&".join(f"{each}={told.get(each, '')}" for each in names)
        answer = get(pages, f"/{NAME}/{name}.json?{asked}&_shape=array")
        assert answer.status_code == 200, name
        assert answer.json(), name


def test_the_query_for_remote_smoothing_agrees_with_find(pages: Any, modebook: Program) -> None:
    """16-bit pan and remote smoothing: the same modes as `modebook find`."""
    rows = get(
        pages, f"/{NAME}/who-allows-remote-smoothing-change.json?parameter=pan&min_bits=16&_shape=array"
    ).json()
    found = modebook("find", "--min-bits", "pan=16", "--smoothing-by", "remote", "--drafts", "--json").json[
        "modes"
    ]
    assert {row["mode"] for row in rows} == {mode["id"] for mode in found}


def test_every_table_and_column_of_the_metadata_exists(pages: Any) -> None:
    """Descriptions stay true when tables change; every table that is shown is described."""
    tables = json.loads((ROOT / "site" / "metadata.json").read_text(encoding="utf-8"))["databases"][NAME][
        "tables"
    ]
    database = pages.get_database(NAME)
    names = waited(database.table_names()) + waited(database.view_names())
    hidden = set(waited(database.hidden_table_names()))
    assert {name for name in names if name not in hidden and not name.endswith("_fts")} <= set(tables)
    for name, told in tables.items():
        columns = waited(database.table_columns(name))
        assert set(told.get("columns", {})) <= set(columns), name
        assert set(told.get("units", {})) <= set(columns), name
        assert set(told.get("facets", [])) <= set(columns), name


def test_pages_load_with_their_titles(pages: Any) -> None:
    """Front page, database, a table and a row."""
    for path, title in (("/", "Modebook"), (f"/{NAME}", "Catalog"), (f"/{NAME}/modes", "Modes")):
        answer = get(pages, path)
        assert answer.status_code == 200
        assert title in answer.text


def test_nothing_can_be_written(pages: Any) -> None:
    """Writing SQL is refused."""
    answer = get(pages, f"/{NAME}.json?sql=delete+from+modes")
    assert answer.status_code == 400
    assert get(pages, f"/{NAME}/modes.json?_size=1&_shape=array").json()


def test_a_port_in_use_is_one_line(modebook: Program, tmp_path: Path) -> None:
    """Which port, and what to do."""
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        run = modebook("serve", "--port", port, "--db", tmp_path / "a.sqlite")
    assert run.status == 2
    assert str(port) in run.err
    assert "--port" in run.err
