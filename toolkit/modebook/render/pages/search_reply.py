"""The answer to a search as one types, and to scripts: modes that hold every word, as JSON."""

from __future__ import annotations

import sqlite3

from modebook.render.pages.find_page import SEARCHED, asked_modes, ways_words
from modebook.render.pages.kept import kept
from modebook.render.pages.links import fixture_href
from modebook.render.pages.reply import Place, Query, Raw, json_reply, known_only, number, refused
from modebook.store.errors import SearchError
from modebook.store.search import find

TYPED = 12
"""Modes offered as one types."""
MOST = 500


def search(connection: sqlite3.Connection, _place: Place, query: Query) -> Raw:
    """`total` and `modes`, as `modebook find --json` gives them, each with the address of its page."""
    known_only(query, *SEARCHED, "limit")
    modes, limit = asked_modes(query), number(query, "limit", 0, MOST, TYPED)
    try:
        if len(modes.text.strip()) == 1:
            # One letter begins a word of nearly every mode: many to count, and few letters to keep.
            answer = kept(connection, f"search {modes} {limit}", lambda: find(connection, modes, limit))
        else:
            answer = find(connection, modes, limit)
    except SearchError as error:
        raise refused(f"{error}.") from error
    address = number(query, "address", 1, 512)
    told = [
        {
            **mode.to_json(),
            "ways": ways_words(mode.smoothing_by),
            "href": fixture_href(mode.fixture, mode.mode, address),
        }
        for mode in answer.modes
    ]
    return json_reply({"total": answer.total, "modes": told})
