"""Every address of the site is tried by the tests that look at all kinds of pages."""

from __future__ import annotations

import re

from modebook.render.pages.routes import ROUTES
from support.site import KINDS

FILES = ("search.json", "fade.json", "document.json", "chart.csv")
"""Answers that are no pages: other tests ask them."""


def test_every_page_is_among_the_kinds() -> None:
    """A page that is added without an address here fails this test."""
    tried = [address.partition("?")[0] for address in KINDS.values()]
    for pattern, _ in ROUTES:
        plain = pattern.replace("\\", "").rstrip("$")
        if plain.endswith(FILES):
            continue
        assert any(re.search(f"^{pattern}", path) for path in tried), pattern
