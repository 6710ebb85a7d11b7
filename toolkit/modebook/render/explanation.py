"""A rule explained: always the same headings, from the rule's own words."""

from __future__ import annotations

import json
import textwrap
from typing import Any

from modebook.checks.rule import Example, Rule
from modebook.render.terminal import paint, width


def explanation(rule: Rule[Any]) -> str:
    """What the rule checks, why it matters, a bad and a good example, references."""
    out = [f"{paint(rule.name, 'bold')} ({rule.severity})", _wrapped(rule.summary), ""]
    for title, words in (("What it checks", rule.checks), ("Why it matters", rule.why)):
        out += [paint(title, "bold"), _wrapped(words), ""]
    for title, example in (("Bad", rule.bad), ("Good", rule.good)):
        out += [paint(title, "bold"), _wrapped(example.about), "", _shown(example), ""]
    out += [paint("References", "bold"), *(f"  {reference}" for reference in rule.references)]
    return "\n".join(out) + "\n"


def _wrapped(words: str) -> str:
    return "\n\n".join(
        textwrap.fill(
            part, width=width(), initial_indent="  ", subsequent_indent="  ", break_on_hyphens=False
        )
        for part in words.strip().split("\n\n")
    )


def _shown(example: Example) -> str:
    from modebook.shelf.canonical import form

    lines: list[str] = []
    for key, value in example.content.items():
        if isinstance(value, str) and "\n" in value:
            lines += [f"{key}:", textwrap.indent(value.rstrip(), "  ")]
        else:
            lines.append(f"{json.dumps(key)}: {form(value, width() - 4)}")
    return textwrap.indent("\n".join(lines), "    ")
