"""A fixture to take away: its document, its chart sheet as CSV, its charts for printing."""

from __future__ import annotations

import base64
import hashlib
import re
import sqlite3

from modebook.render.pages.fixture_page import taken
from modebook.render.pages.reply import Place, Query, Raw, known_only
from modebook.render.pages.shown import shown

_STYLE = re.compile(r"<style>(.*?)</style>", re.DOTALL)


def document(connection: sqlite3.Connection, place: Place, query: Query) -> Raw:
    """The document as the catalog writes it."""
    from modebook.shelf.canonical import canonical

    known_only(query)
    record = taken(connection, _identity(place))
    return Raw(canonical(record), "application/json; charset=utf-8", _named(place, "json"))


def chart_sheet(connection: sqlite3.Connection, place: Place, query: Query) -> Raw:
    """The chart sheet, which `modebook draft` reads back without loss."""
    from modebook.intake.sheet_out import csv_text, sheet_rows

    known_only(query)
    rows = sheet_rows(taken(connection, _identity(place)))
    return Raw(csv_text(rows), "text/csv; charset=utf-8", _named(place, "csv"))


def printed(connection: sqlite3.Connection, place: Place, query: Query) -> Raw:
    """The charts as one page for printing: what `modebook chart --html` writes."""
    from modebook.render.chart_html import chart_html

    known_only(query)
    return page_alone(shown(chart_html(taken(connection, _identity(place)))))


def page_alone(html: str) -> Raw:
    """A page that carries its style inside: its policy allows that very style, and nothing else."""
    styles = " ".join(
        f"'sha256-{base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()}'"
        for style in _STYLE.findall(html)
    )
    policy = f"default-src 'none'; style-src {styles}; base-uri 'none'; form-action 'none'; "
    return Raw(
        html,
        "text/html; charset=utf-8",
        {"content-security-policy": policy + "frame-ancestors 'none'"},
    )


def _identity(place: Place) -> str:
    return f"{place['maker']}/{place['model']}"


def _named(place: Place, ending: str) -> dict[str, str]:
    """The headers that name the file; names in paths are plain letters, digits and hyphens."""
    return {"content-disposition": f'attachment; filename="{place["maker"]}-{place["model"]}.{ending}"'}
