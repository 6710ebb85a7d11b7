"""The shell of every printed sheet: one template beside another, one stylesheet inside, no script."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from jinja2 import Environment

_TEMPLATES = Path(__file__).with_name("templates")


@cache
def _environment() -> Environment:
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    made = Environment(
        loader=FileSystemLoader(_TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.globals["style"] = (_TEMPLATES / "sheet.css").read_text(encoding="utf-8")
    return made


def page(template: str, title: str, subtitle: str = "", **context: object) -> str:
    """A whole HTML document from a template of the folder templates; every text in it is escaped.

    Templates extend base.html and fill its block `body`; `title` stands in the head and as the heading,
    `subtitle` (if given) below it. The file needs nothing beside it and asks no other host for anything.
    """
    return _environment().get_template(template).render(title=title, subtitle=subtitle, **context)
