"""The site under test: served by the program's own command, an address of every kind of page, a browser."""

from __future__ import annotations

import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from modebook.shelf.catalog import Catalog
from modebook.store.build import build
from support.program import ROOT

AXE = ROOT / "tests" / "site" / "vendor" / "axe.min.js"
WAIT_S = 60.0
OFFLINE = [
    "--no-sandbox",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-default-apps",
    "--disable-sync",
    "--no-first-run",
    "--no-pings",
    "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
]


@dataclass(frozen=True)
class Served:
    """A site that is being served."""

    url: str
    database: Path

    def __call__(self, path: str) -> str:
        """The whole address of a page."""
        return self.url + path


def free_port() -> int:
    """A port that nobody listens at."""
    with socket.socket() as found:
        found.bind(("127.0.0.1", 0))
        return int(found.getsockname()[1])


def serve(catalog: Path, database: Path) -> Iterator[Served]:
    """Serve a catalog on 127.0.0.1, by the program's own command, until the tests are done."""
    build(Catalog(catalog), database)
    port = free_port()
    command = [sys.executable, "-c", "from modebook.cli.app import main; main()", "serve"]
    command += ["--catalog", str(catalog), "--db", str(database), "--port", str(port)]
    with (database.parent / "serve.log").open("w") as log:
        server = subprocess.Popen(command, cwd=ROOT, stdout=log, stderr=log)
        try:
            _until_it_answers(f"http://127.0.0.1:{port}/api", server, database.parent / "serve.log")
            yield Served(f"http://127.0.0.1:{port}", database)
        finally:
            server.terminate()
            server.wait(timeout=20)


def _until_it_answers(url: str, server: subprocess.Popen[bytes], log: Path) -> None:
    end = time.monotonic() + WAIT_S
    while time.monotonic() < end:
        if server.poll() is not None:
            break
        try:
            urllib.request.urlopen(url, timeout=5).read()
            return
        except urllib.error.HTTPError as error:
            pytest.fail(f"the site answers {error.code} at {url}:\n{log.read_text()[-3000:]}")
        except OSError:
            time.sleep(0.1)
    pytest.fail(f"the site does not answer:\n{log.read_text()[-3000:]}")


def browser_path() -> str | None:
    """Where Chromium is: $CHROMIUM, or where Debian puts it."""
    told = os.environ.get("CHROMIUM")
    found = told or shutil.which("chromium") or shutil.which("chromium-browser")
    return found if found and Path(found).exists() else None


@dataclass
class Watched:
    """A page whose complaints are kept: what its console said, and what it asked of other hosts."""

    page: Any
    complaints: list[str]


FIXTURE = "/fixtures/pelluwick/torvane-40"

KINDS = {
    "front": "/",
    "find": "/find?smoothing_by=remote&parameter=pan&bits=16",
    "low": "/low",
    "fixture": FIXTURE,
    "fixture-mode": f"{FIXTURE}?mode=Extended&address=101",
    "fixture-cells": "/fixtures/hoddlefen/strimble-72",
    "fixture-draft": "/fixtures/botchmere/faulty-on-purpose-1",
    "print": f"{FIXTURE}/print",
    "compare": "/compare?a=pelluwick/torvane-40&b=pelluwick/torvane-12",
    "compare-empty": "/compare",
    "rigs": "/rigs",
    "rig": "/rigs/ossilby-pier",
    "plan": "/rigs/ossilby-pier/plan",
    "fade": "/fade",
    "fade-fixture": "/fade?fixture=pelluwick/torvane-40",
    "rules": "/rules",
    "rule": "/rules/coarse-angle",
    "words": "/words",
    "figures": "/figures",
    "api": "/api",
    "tables": "/modebook",
    "table": "/modebook/modes",
    "table-filtered": "/modebook/ranges?hazard__notblank=1&_facet=hazard",
    "view": "/modebook/remote_smoothing",
    "row": "/modebook/fixtures/pelluwick~2Ftorvane-40",
    "query": "/modebook/who-allows-remote-smoothing-change?parameter=pan&min_bits=16",
    "sql": "/modebook?sql=select+*+from+modes+limit+3",
    "not-there": "/fixtures/nobody/nothing",
    "not-so": f"{FIXTURE}?address=900",
}
"""Name and address. A test asks that every route of the site is among them."""
