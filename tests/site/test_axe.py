"""No page has an accessibility fault that axe-core finds, in the light and in the dark scheme."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from support.site import AXE, KINDS, Served

RUN = """async () => (await axe.run(document, {resultTypes: ["violations"]})).violations
  .flatMap(v => v.nodes.map(n => v.id + ": " + n.target.join(" ") + " | " + n.failureSummary))"""


@pytest.fixture(scope="module", params=["light", "dark"])
def tab(browser: Any, request: pytest.FixtureRequest) -> Iterator[Any]:
    """A page in one of the schemes, into which axe can be put."""
    context = browser.new_context(
        viewport={"width": 1280, "height": 900}, color_scheme=request.param, bypass_csp=True
    )
    page = context.new_page()
    page.set_default_timeout(60_000)
    yield page
    context.close()


@pytest.mark.parametrize("kind", KINDS)
def test_axe_finds_nothing(tab: Any, site: Served, kind: str) -> None:
    """Every kind of page, datasette's own among them."""
    tab.goto(site(KINDS[kind]))
    tab.add_script_tag(path=str(AXE))
    assert tab.evaluate(RUN) == []


def test_axe_sees_a_fault(tab: Any, site: Served) -> None:
    """A picture without words, put into a page, is found: the check does look."""
    tab.goto(site("/words"))
    tab.evaluate("document.querySelector('main').append(document.createElement('img'))")
    tab.add_script_tag(path=str(AXE))
    assert any(told.startswith("image-alt") for told in tab.evaluate(RUN))
