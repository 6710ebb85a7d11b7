"""All addresses of the site beside datasette's own: the pattern of each, and what makes its page."""

from __future__ import annotations

from modebook.render.pages import (
    compare_page,
    fade_routes,
    find_page,
    fixture_downloads,
    fixture_page,
    front_page,
    low_page,
    plan_page,
    reference_pages,
    rig_page,
    rule_page,
    search_reply,
)
from modebook.render.pages.reply import Maker

_NAME = r"[^/]+"

ROUTES: tuple[tuple[str, Maker], ...] = (
    (r"/$", front_page.front),
    (r"/-/search\.json$", search_reply.search),
    (r"/-/fade\.json$", fade_routes.fade_json),
    (r"/fade$", fade_routes.fade),
    (r"/find$", find_page.found),
    (r"/low$", low_page.low),
    (rf"/fixtures/(?P<maker>{_NAME})/(?P<model>{_NAME})$", fixture_page.fixture),
    (rf"/fixtures/(?P<maker>{_NAME})/(?P<model>{_NAME})/document\.json$", fixture_downloads.document),
    (rf"/fixtures/(?P<maker>{_NAME})/(?P<model>{_NAME})/chart\.csv$", fixture_downloads.chart_sheet),
    (rf"/fixtures/(?P<maker>{_NAME})/(?P<model>{_NAME})/print$", fixture_downloads.printed),
    (r"/compare$", compare_page.compared),
    (r"/rigs$", rig_page.rigs),
    (rf"/rigs/(?P<rig>{_NAME})$", rig_page.rig),
    (rf"/rigs/(?P<rig>{_NAME})/plan$", plan_page.plan),
    (r"/rules$", rule_page.rules),
    (rf"/rules/(?P<rule>{_NAME})$", rule_page.rule),
    (r"/words$", reference_pages.words),
    (r"/figures$", reference_pages.figures),
    (r"/api$", reference_pages.api),
)
"""In the order in which they are tried."""
