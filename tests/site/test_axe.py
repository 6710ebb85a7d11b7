"""No page has an accessibility fault that axe-core finds, in the light and in the dark scheme."""

from __future__ import annotations

from typing import Any

import pytest

from support.site import AXE, KINDS, Served

RUN = """async () => (await axe.run(document, {resultTypes: ["violations"]})).violations
  .flatMap(v => v.nodes.map(n => v.id + ": " + n.target.join(" ") + " | " + n.failureSummary))"""


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("kind", KINDS)
def test_axe_finds_nothing(browser: Any, site: Served, kind: str, scheme: str) -> None:
    """Every kind of page, datasette's own among them."""
    context = browser.new_context(viewport={"width": 1280, "height": 900}, color_scheme=scheme, bypass_csp=True)
    page = context.new_page()
    try:
        page.goto(site(KINDS[kind]))
        page.add_script_tag(path=str(AXE))
        assert page.evaluate(RUN) == []
    finally:
        context.close()
