"""Fixture, compare, rule and rig pages say what records, rules and audits say."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from typing import Any

import pytest

from modebook.render.pages.compare_page import compared
from modebook.render.pages.fixture_downloads import chart_sheet, document, printed
from modebook.render.pages.fixture_page import fixture
from modebook.render.pages.plan_page import plan_page
from modebook.render.pages.reference_pages import api, figures, words
from modebook.render.pages.reply import PageError, Raw
from modebook.render.pages.rig_page import NOWHERE, rig
from modebook.render.pages.rule_page import known_rules, rule, rules
from modebook.rig.audit import audit
from modebook.rig.open_rig import open_rig
from modebook.rig.remote import remote
from modebook.shelf.catalog import Catalog
from modebook.store.build import build
from modebook.words.parameters import PARAMETERS
from support.program import CATALOG

GLAWM = {"maker": "zandroveil", "model": "glawm-200"}


@pytest.fixture(scope="module")
def database(tmp_path_factory: pytest.TempPathFactory) -> Iterator[sqlite3.Connection]:
    """The demo catalog's."""
    path = tmp_path_factory.mktemp("records") / "modebook.sqlite"
    build(Catalog(CATALOG), path)
    connection = sqlite3.connect(path)
    yield connection
    connection.close()


def page_of(answer: Any) -> Any:
    """What a template sees."""
    return answer.page


def test_every_fixture_has_a_page_and_its_downloads(database: sqlite3.Connection) -> None:
    """Each mode is a column; a mode that is asked for is the only chart."""
    for (identity,) in database.execute("SELECT id FROM fixtures").fetchall():
        maker, _, model = identity.partition("/")
        place = {"maker": maker, "model": model}
        page = page_of(fixture(database, place, {}))
        (modes,) = database.execute("SELECT count(*) FROM modes WHERE fixture = ?", (identity,)).fetchone()
        assert len(page.columns) == modes
        assert len(page.charts) + page.left_out == modes
        one = page_of(fixture(database, place, {"mode": [page.columns[-1].link.words]}))
        assert [chart.name for chart in one.charts] == [page.columns[-1].link.words]
        for download in (document, chart_sheet, printed):
            answer = download(database, place, {})
            assert isinstance(answer, Raw)
            assert answer.body


def test_the_document_comes_as_the_catalog_has_it(database: sqlite3.Connection) -> None:
    """Byte for byte."""
    answer = document(database, GLAWM, {})
    assert answer.body == (CATALOG / "fixtures" / "zandroveil" / "glawm-200.json").read_bytes()


def test_a_fixtures_findings_are_those_of_the_checks(database: sqlite3.Connection) -> None:
    """As many as the database has, worst first, each with its rule's page."""
    page = page_of(fixture(database, {"maker": "botchmere", "model": "faulty-on-purpose-1"}, {}))
    (count,) = database.execute(
        "SELECT count(*) FROM findings WHERE fixture = 'botchmere/faulty-on-purpose-1'"
    ).fetchone()
    assert len(page.findings) == count > 3
    order = [("error", "warning", "info").index(one.severity) for one in page.findings]
    assert order == sorted(order)


@pytest.mark.parametrize("place", [{"maker": "no", "model": "such"}, {"maker": "..", "model": "patch"}])
def test_a_fixture_that_is_not_there_is_a_404(database: sqlite3.Connection, place: dict[str, str]) -> None:
    """Also where a name looks like a path."""
    with pytest.raises(PageError) as refused:
        fixture(database, place, {})
    assert refused.value.status == 404


def test_a_mode_that_is_not_there_is_a_400_with_those_there_are(database: sqlite3.Connection) -> None:
    """So that the address can be put right."""
    with pytest.raises(PageError, match="CCT 8") as refused:
        fixture(database, GLAWM, {"mode": ["Nothing"]})
    assert refused.value.status == 400


def test_a_fixture_differs_from_itself_in_nothing(database: sqlite3.Connection) -> None:
    """And from another in something; two modes of one are compared by naming the second alone."""
    same = page_of(compared(database, {}, {"a": ["zandroveil/glawm-200"], "b": ["zandroveil/glawm-200"]}))
    assert same.groups == ()
    other = page_of(compared(database, {}, {"a": ["zandroveil/glawm-200"], "b": ["zandroveil/glawm-60"]}))
    assert other.count > 0
    told = {"a": ["zandroveil/glawm-200"], "mode_a": ["XY 16"], "mode_b": ["XY 8"]}
    modes = page_of(compared(database, {}, told))
    rows = [row for _, some in modes.groups for row in some]
    assert any("16 bits" in a and "8 bits" in b for _, a, b in rows)


def test_every_rule_is_explained_on_its_page(database: sqlite3.Connection) -> None:
    """And the list leads to each."""
    listed = page_of(rules(database, {}, {}))
    assert {line.link.words for line in listed.lines if line.link.href} == set(known_rules())
    for name, known in known_rules().items():
        page = page_of(rule(database, {"rule": name}, {}))
        assert page.summary == known.summary
        assert page.bad[1]
        assert page.good[1]
        assert page.references
    with pytest.raises(PageError) as refused:
        rule(database, {"rule": "no-such-rule"}, {})
    assert refused.value.status == 404


def test_words_figures_and_examples_are_complete(database: sqlite3.Connection) -> None:
    """Every parameter of the vocabulary, every threshold with its source."""
    shown = [line.word for _, lines in page_of(words(database, {}, {})).families for line in lines]
    assert sorted(shown) == sorted(PARAMETERS)
    assert all(one.source for one in page_of(figures(database, {}, {})).thresholds)
    assert page_of(api(database, {}, {})).examples


def test_a_rigs_page_has_its_units_and_the_audits_findings(database: sqlite3.Connection) -> None:
    """As the catalog's own files give them, without the catalog at hand."""
    reading = open_rig("ossilby-pier", Catalog(CATALOG))
    page = page_of(rig(database, {"rig": "ossilby-pier"}, {}))
    assert page.total == page.shown == len(remote(reading).units)
    assert sorted(one.rule.words for one in page.findings) == sorted(
        one.rule for one in audit(reading).findings
    )
    assert [one.number for one in page.universes] == [one.number for one in reading.universes]


def test_filters_leave_the_units_that_answer(database: sqlite3.Connection) -> None:
    """By position; the parts of all positions come to the whole; two filters hold together."""
    whole = page_of(rig(database, {"rig": "ossilby-pier"}, {}))
    counts = [
        page_of(rig(database, {"rig": "ossilby-pier"}, {"position": [one]})).shown for one in whole.positions
    ]
    assert sum(counts) == whole.total
    assert whole.positions[-1] == NOWHERE
    some = page_of(rig(database, {"rig": "ossilby-pier"}, {"position": ["Truss 1"], "group": ["back"]}))
    assert {(one.line.position, one.line.group) for one in some.units if one.shown} == {("Truss 1", "back")}
    none = page_of(rig(database, {"rig": "ossilby-pier"}, {"group": ["no such"]}))
    assert none.shown == 0
    assert not any(unit.shown for unit in none.units)


def test_a_rig_that_is_not_there_is_a_404(database: sqlite3.Connection) -> None:
    """As any odd address."""
    with pytest.raises(PageError) as refused:
        rig(database, {"rig": "nowhere"}, {})
    assert refused.value.status == 404


def test_a_plans_boxes_can_be_told_apart() -> None:
    """Each line to tick has a key of its own, the same whenever the same plan is drawn."""
    from modebook.shots.day import day_of
    from modebook.shots.planning import plan
    from modebook.shots.reading import shots_from_text

    reading = open_rig("ossilby-pier", Catalog(CATALOG))
    shots = shots_from_text(
        "setup,cue,units,from,to,seconds,intent\n"
        "1 slow,dusk,101-104,40,0,8,unseen\n"
        "2 fast,switch,101-104,100,0,0,snap\n",
        reading,
    )
    day = day_of(reading, plan(reading, shots, keep=False))
    page = plan_page("ossilby-pier", day)
    assert [one.name for one in page.setups] == ["1 slow", "2 fast"]
    keys = [one.key for setup in page.setups for one in (*setup.changes, *setup.checks)]
    keys += [line[0] for line in page.prep]
    assert keys
    assert len(keys) == len(set(keys))
    again = plan_page("ossilby-pier", day)
    assert [one.key for setup in again.setups for one in setup.changes] == [
        one.key for setup in page.setups for one in setup.changes
    ]
