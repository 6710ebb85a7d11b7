"""The fade page and its endpoint: a question in an address, a fixture's record where one is named."""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass, fields
from typing import Any

from modebook.documents.cases import CaseError, mode_named
from modebook.documents.fixture import Fixture
from modebook.documents.responding import parameter_names
from modebook.render.pages.fade import FadePage, fade_page
from modebook.render.pages.fade_question import FadeQuestion, QuestionError, question_of
from modebook.render.pages.links import fixture_href
from modebook.render.pages.reply import (
    Drawn,
    PageError,
    Place,
    Query,
    Raw,
    json_reply,
    nothing_there,
    refused,
)
from modebook.response.errors import ResponseError
from modebook.store.documents import fixture_of


@dataclass(frozen=True, slots=True)
class FadeView:
    """The fade page: what is asked, what may be asked, and the answer."""

    asked: FadeQuestion
    form: dict[str, Any]
    """The question as the form's fields show it."""
    fixture: str
    """Maker and model; empty for plain bits."""
    fixture_href: str
    modes: tuple[str, ...]
    parameters: tuple[str, ...]
    choices: tuple[tuple[str, str], ...]
    """Keys and labels of the smoothing choices that act on the parameter."""
    answer: FadePage | None
    problem: str
    """Why there is no answer; empty where there is one."""


def fade(connection: sqlite3.Connection, _place: Place, query: Query) -> Drawn:
    """The page. A question that cannot be answered is refused."""
    asked, record = _question(connection, query)
    return Drawn("fade.html", fade_view(asked, record))


def fade_json(connection: sqlite3.Connection, _place: Place, query: Query) -> Raw:
    """The answer as JSON, for the page's script and for others."""
    asked, record = _question(connection, query)
    return json_reply(_answer(asked, record).to_json())


def fade_view(asked: FadeQuestion, record: Fixture | None) -> FadeView:
    """The page of one question. Raises PageError."""
    modes: tuple[str, ...] = ()
    parameters: tuple[str, ...] = ()
    choices: tuple[tuple[str, str], ...] = ()
    problem = ""
    if record is not None:
        from modebook.documents.responding import parameter_named, smoothing_for

        modes = tuple(mode.name for mode in record.modes)
        try:
            mode = mode_named(record, asked.mode or modes[0])
        except CaseError as error:
            raise refused(f"{str(error)[:400]}.") from error
        parameters = tuple(parameter_names(mode))
        found = parameter_named(mode, asked.parameter)
        if found is not None:
            choices = tuple(
                (choice.key, choice.label or choice.key)
                for setting in smoothing_for(record, found)
                for choice in setting.choices
            )
    answer = None
    try:
        answer = _answer(asked, record)
    except PageError as error:
        if record is None or asked.parameter in parameters:
            raise
        problem = error.message
    form: dict[str, Any] = {field.name: getattr(asked, field.name) for field in fields(asked)}
    return FadeView(
        asked,
        form,
        f"{record.maker} {record.model}" if record else "",
        fixture_href(asked.fixture) if record else "",
        modes,
        parameters,
        choices,
        answer,
        problem,
    )


def _question(connection: sqlite3.Connection, query: Query) -> tuple[FadeQuestion, Fixture | None]:
    try:
        asked = question_of(query)
    except QuestionError as error:
        raise refused(f"{error}.") from error
    if not asked.fixture:
        return asked, None
    record = fixture_of(connection, asked.fixture)
    if record is None:
        raise nothing_there(f"There is no fixture {asked.fixture[:80]} here.")
    return asked, record


def _answer(asked: FadeQuestion, record: Fixture | None) -> FadePage:
    try:
        return fade_page(asked, record)
    except (CaseError, ResponseError) as error:
        raise refused(f"{str(error)[:400]}.") from error
