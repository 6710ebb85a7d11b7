"""A block a slot: a heading with number and name, then a small table; and prose."""

from __future__ import annotations

from intake.corpus.building import Builder
from intake.corpus.content import P
from intake.corpus.grids import C, Element, Grid, Heading, Look, Para, Row, Table
from intake.corpus.layouts.rows import RowStyle, lines


def block_elements(
    b: Builder,
    params: tuple[P, ...],
    style: RowStyle,
    look: Look,
    form: str = "{word} {slot}: {label}",
    heads: bool = True,
) -> list[Element]:
    """Heading, small value table, heading, small value table ..."""
    made: list[Element] = []
    word = b.head("word")
    head: list[Row] = [[C(b.head("value")), C(b.head("text"))]] if heads else []
    for line in lines(params, b.say("finetext")):
        made.append(Heading(form.format(word=word, slot=line.slot, label=line.label), 3))
        body: list[Row] = [[C(style.values(lo, hi)), C(text)] for lo, hi, text in line.entries]
        made.append(Table(Grid(head, body, [26.0, 90.0]), look))
    return made


PROSE = {
    "en": (
        "Channel {slot} controls {label}.",
        "Channel {slot} controls {label} ({text}).",
        "Values {value}: {text}.",
    ),
    "de": (
        "Kanal {slot} steuert {label}.",
        "Kanal {slot} steuert {label} ({text}).",
        "Werte {value}: {text}.",
    ),
    "fr": (
        "Le canal {slot} commande {label}.",
        "Le canal {slot} commande {label} ({text}).",
        "Valeurs {value} : {text}.",
    ),
    "es": (
        "El canal {slot} controla {label}.",
        "El canal {slot} controla {label} ({text}).",
        "Valores {value}: {text}.",
    ),
    "it": (
        "Il canale {slot} controlla {label}.",
        "Il canale {slot} controlla {label} ({text}).",
        "Valori {value}: {text}.",
    ),
}


def prose_elements(b: Builder, params: tuple[P, ...], style: RowStyle) -> list[Element]:
    """Sentences, one paragraph a slot."""
    plain, told, each = PROSE[b.language]
    made: list[Element] = []
    for line in lines(params):
        ranged = line.byte == 0 and line.p.ranges
        text = "" if ranged else line.entries[0][2]
        first = (told if text else plain).format(slot=line.slot, label=line.label, text=text)
        rest = (
            [each.format(value=style.values(lo, hi), text=t) for lo, hi, t in line.entries] if ranged else []
        )
        made.append(Para(" ".join([first, *rest])))
    return made
