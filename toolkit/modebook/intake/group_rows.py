"""Rows that head a group of slots (`Movement`, `Optics`) in the midst of a chart, and say no more."""

from __future__ import annotations

import re
from collections.abc import Sequence

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.conditions import read_conditions
from modebook.intake.folding import fold
from modebook.intake.grid import Cell
from modebook.intake.phrases import read_description
from modebook.intake.values import read_values

_GROUPS = frozenset(
    {
        *("movement", "position", "positioning", "intensity", "color", "colors", "color mixing", "beam"),
        *("optics", "optical", "gobo", "gobos", "image", "effects", "effect", "control", "system", "general"),
        *("framing", "shutters", "blades", "dimmer", "dimming", "settings", "setup", "other", "special"),
        *("special functions", "pixel", "pixels", "cells", "lamp", "light", "head", "base", "fan", "misc"),
        *(
            "miscellaneous",
            "service",
            "maintenance",
            "white",
            "whites",
            "strobe",
            "shutter",
            "focus",
            "pan tilt",
        ),
        *("bewegung", "intensitat", "farbe", "farben", "farbmischung", "optik", "strahl", "steuerung"),
        *(
            "effekte",
            "effekt",
            "allgemein",
            "sonstiges",
            "einstellungen",
            "blendenschieber",
            "geratesteuerung",
        ),
        *("helligkeit", "position bewegung", "sonderfunktionen", "licht", "weisslicht", "geschwindigkeit"),
        *("mouvement", "mouvements", "intensite", "couleur", "couleurs", "optique", "faisceau", "effets"),
        *(
            "commande",
            "commandes",
            "controle",
            "reglages",
            "general",
            "divers",
            "couteaux",
            "lumiere",
            "systeme",
        ),
        *("movimiento", "movimientos", "intensidad", "colores", "optica", "haz", "efectos", "ajustes"),
        *("varios", "posicion", "cuchillas", "luz", "sistema", "generales", "funciones especiales"),
        *(
            "movimento",
            "movimenti",
            "intensita",
            "colore",
            "colori",
            "ottica",
            "ottiche",
            "fascio",
            "effetti",
        ),
        *("controllo", "controlli", "impostazioni", "varie", "posizione", "sagomatore", "luce", "generale"),
        "servizio",
    }
)
"""What makers call groups of slots, folded. Common practice, no source."""
_NOTE = re.compile(
    r"^(?:note|notes|n\.?b\.?|remark|remarks|hinweis|hinweise|anmerkung|achtung|remarque|remarques|attention|"
    r"important|nota|notas|observación|importante|attenzione|avvertenza)\s*[:.!–-]\s*\S",
    re.IGNORECASE,
)
_FULL = (255, 65535, 16777215)


def is_group_heading(
    cells: list[Cell], below: Sequence[Cell] | None, slots: Sequence[int], end: int | None
) -> bool:
    """Whether a row of one cell heads the slots below it.

    below: the next row that is not empty; slots: the columns of slots; end: where the values of the row above
    end, None where it has none. Such a row has values that reach the top before it, and a new slot after it;
    a word that goes on with a name or a meaning above is none.
    """
    filled = [cell for cell in cells if cell.flat]
    if len({cell.flat for cell in filled}) != 1 or below is None:
        return False
    text = filled[0].flat.strip(" :–-")
    if not any(letter.isalpha() for letter in text) or read_values(text) or len(text.split()) > 4:
        return False
    starts = any(
        read_slot_cell(below[c].flat).kind == "slots" for c in slots if c < len(below) and below[c].flat
    )
    if not starts or (end is not None and end not in _FULL):
        return False
    return fold(text) in _GROUPS


def is_note(text: str) -> bool:
    """Whether a row of one cell is a note to the reader without a hold or a condition."""
    if not _NOTE.match(text) or read_conditions(text):
        return False
    return read_description(text, triggers=True).hold_s is None
