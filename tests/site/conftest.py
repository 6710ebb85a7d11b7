"""One server and one browser for all tests of the site; without a browser they skip and say so."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from support.program import CATALOG
from support.site import OFFLINE, Served, Watched, browser_path, serve


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """The demo catalog, served."""
    yield from serve(CATALOG, tmp_path_factory.mktemp("site") / "modebook.sqlite")


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    """Chromium, offline but for 127.0.0.1."""
    path = browser_path()
    if path is None:
        pytest.skip(
            "NO BROWSER FOUND: install chromium, or name one in $CHROMIUM; nothing of the site was tried"
        )
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=path, args=OFFLINE)
        yield started
        started.close()


@pytest.fixture
def watched(browser: Any, site: Served) -> Iterator[Watched]:
    """A fresh page of 1280 px that must end without a word of complaint."""
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    page = context.new_page()
    page.set_default_timeout(15_000)
    complaints: list[str] = []
    page.on(
        "console", lambda said: complaints.append(said.text) if said.type in ("error", "warning") else None
    )
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.on(
        "request",
        lambda asked: complaints.append(f"asked {asked.url}") if not asked.url.startswith(site.url) else None,
    )
    yield Watched(page, complaints)
    context.close()
    assert complaints == []


@pytest.fixture
def page(watched: Watched) -> Any:
    """The same, for tests that need only the page."""
    return watched.page
