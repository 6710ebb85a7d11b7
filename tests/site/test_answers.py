"""What the site answers with no browser: statuses, headers, nothing inline, odd addresses and parameters."""

from __future__ import annotations

import json
import re
import urllib.error
import urllib.request
from typing import Any, NamedTuple

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from support.site import KINDS, Served


class Answer(NamedTuple):
    """A status, headers by small names, and the body."""

    status: int
    headers: dict[str, str]
    text: str


def get(url: str) -> Answer:
    """What is answered, errors too."""
    try:
        with urllib.request.urlopen(url, timeout=30) as found:
            return Answer(
                found.status, {k.lower(): v for k, v in found.headers.items()}, found.read().decode()
            )
    except urllib.error.HTTPError as error:
        return Answer(error.code, {k.lower(): v for k, v in error.headers.items()}, error.read().decode())


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_of_page_answers(site: Served, kind: str) -> None:
    """With 200, or with the status that its name says."""
    expected = {"not-there": 404, "not-so": 400}.get(kind, 200)
    assert get(site(KINDS[kind])).status == expected


@pytest.mark.parametrize("kind", KINDS)
def test_nothing_is_inline_and_nothing_comes_from_elsewhere(site: Served, kind: str) -> None:
    """No script or style in a page, no handler in a tag, no part from another host; headers forbid all."""
    answer = get(site(KINDS[kind]))
    text = answer.text
    policy = answer.headers["content-security-policy"]
    assert "default-src 'none'" in policy
    assert "frame-ancestors 'none'" in policy
    assert "unsafe" not in policy
    assert answer.headers["referrer-policy"] == "no-referrer"
    assert answer.headers["x-content-type-options"] == "nosniff"
    assert answer.headers["x-frame-options"] == "DENY"
    assert not re.search(r"<script(?![^>]*\ssrc=)[^>]*>", text)
    assert not re.search(r"<[^>]*\son[a-z]+\s*=\s*[\"']", text)
    assert not re.search(r"(?:src|srcset|<link[^>]*href)=\"(?:https?:)?//", text)
    if kind != "print":
        assert "<style" not in text
        assert not re.search(r"<[^>]*\sstyle\s*=", text)


@pytest.mark.parametrize("kind", KINDS)
def test_a_page_weighs_less_than_300_kb(site: Served, kind: str) -> None:
    """The page itself, without what is shared by all."""
    assert len(get(site(KINDS[kind])).text.encode()) < 300_000


ODD_PATHS = (
    "/nothing",
    "/fixtures",
    "/fixtures/pelluwick",
    "/fixtures/pelluwick/torvane-40/x",
    "/fixtures/%2e%2e/%2e%2e",
    "/fixtures/..%2f..%2fetc/passwd",
    "/fixtures/pelluwick/torvane-40%00",
    "/rules/nothing",
    "/rigs/nothing",
    "/rigs/ossilby-pier/x",
    "/modebook/nothing",
    "/modebook/modes/nothing",
    "/static/nothing.js",
    "/static/../metadata.json",
    "/static/%2e%2e/metadata.json",
    "/-/patterns",
    "/-/messages",
    "/-/allow-debug",
    "/-/permissions",
    "/nosuchdatabase/x",
    "/" + "a" * 3000,
)


@pytest.mark.parametrize("path", ODD_PATHS)
def test_an_odd_address_is_not_there(site: Served, path: str) -> None:
    """404, as a page with the site's own head, and without a traceback."""
    answer = get(site(path))
    assert answer.status == 404
    assert "Traceback" not in answer.text
    assert "content-security-policy" in answer.headers


ODD_PARAMETERS = (
    "/?x=1",
    "/find?smoothing_by=x",
    "/find?bits=pan",
    "/find?nothing=1",
    "/find?footprint=-1",
    "/find?footprint=99999999999999999999",
    "/find?category=%3Cscript%3E",
    "/find?page=0",
    "/fixtures/pelluwick/torvane-40?address=0",
    "/fixtures/pelluwick/torvane-40?address=513",
    "/fixtures/pelluwick/torvane-40?address=1e2",
    "/fixtures/pelluwick/torvane-40?mode=nothing",
    "/fixtures/pelluwick/torvane-40?x=1",
    "/low?rule=slot-gap",
    "/rules?x=1",
    "/words?x=1",
    "/-/search.json?limit=x",
    "/-/search.json?smoothing_by=x",
    "/-/fade.json?bits=7",
    "/-/fade.json?seconds=nan",
    "/-/fade.json?seconds=-1",
    "/modebook/modes?_size=x",
    "/modebook/modes?_sort=nothing",
    "/modebook/modes?nothing__gt=1",
    "/modebook.json?sql=delete+from+modes",
    "/modebook.json?sql=select+nothing",
    "/modebook.json?sql=pragma+user_version=3",
    "/modebook.json?sql=attach+database+'x'+as+y",
)


@pytest.mark.parametrize("path", ODD_PARAMETERS)
def test_an_odd_parameter_is_a_clear_400(site: Served, path: str) -> None:
    """One line, short, without a traceback; JSON where JSON was asked for."""
    answer = get(site(path))
    assert answer.status == 400
    assert "Traceback" not in answer.text
    if ".json" in path:
        told = json.loads(answer.text)
        assert told["ok"] is False
        assert 5 < len(told["error"]) < 1000


def test_sql_that_never_ends_is_broken_off(site: Served) -> None:
    """The time limit holds: a question without an end is a 400."""
    endless = "with recursive n(i) as (select 1 union all select i+1 from n) select count(*) from n"
    answer = get(site("/modebook.json?sql=" + endless.replace("+", "%2B").replace(" ", "+")))
    assert answer.status == 400


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    path=st.sampled_from(
        ["/find", "/-/search.json", "/fixtures/pelluwick/torvane-40", "/compare", "/fade", "/modebook/modes"]
    ),
    name=st.sampled_from(
        ["q", "mode", "address", "a", "bits", "seconds", "_sort", "_size", "_facet", "_where", "page"]
    ),
    value=st.text(max_size=40),
)
def test_whatever_stands_in_a_parameter_there_is_no_failure(
    site: Served, path: str, name: str, value: str
) -> None:
    """Any text: the answer is a page, a 400 or a 404."""
    from urllib.parse import quote

    answer = get(site(f"{path}?{name}={quote(value.encode('utf-8', 'surrogatepass'))}"))
    assert answer.status in (200, 302, 400, 404)


def test_search_and_sql_count_the_same(site: Served) -> None:
    """16-bit pan and remote smoothing: the list's count against SQL of the tables."""
    told = json.loads(get(site("/-/search.json?smoothing_by=remote&parameter=pan&bits=16&limit=500")).text)
    sql = """select count(*) from modes where remote and standing <> 'draft' and exists (
        select 1 from parameters where parameters.mode = modes.id and word = 'pan' and bits >= 16)"""
    from urllib.parse import quote_plus

    rows: Any = json.loads(get(site(f"/modebook.json?sql={quote_plus(sql)}&_shape=arrays")).text)
    assert told["total"] == rows["rows"][0][0] > 0


def test_the_server_tells_nothing_of_the_machine(site: Served) -> None:
    """No path of this machine in what datasette tells about itself."""
    for path in (
        "/-/metadata.json",
        "/-/databases.json",
        "/-/plugins.json",
        "/-/settings.json",
        "/-/versions.json",
    ):
        answer = get(site(path))
        assert "/tmp/" not in answer.text, path
        assert "/home/" not in answer.text, path
        assert str(site.database.parent) not in answer.text, path
