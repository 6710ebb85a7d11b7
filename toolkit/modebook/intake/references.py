"""Marks parameters whose values a chart tells in another place: `See gel list below` says nothing of them."""

from __future__ import annotations

import re

from modebook.intake.drafts import DraftParameter

_ELSEWHERE = re.compile(
    r"\b(?:see|refer to|siehe|vgl\.|voir|cf\.|ver|véase|vedere|vedi)\b.*"
    r"\b(?:table|list|chart|below|above|page|section|chapter|appendix|overleaf|next|"
    r"tabelle|liste|unten|oben|seite|abschnitt|anhang|"
    r"tableau|ci-dessous|ci-dessus|annexe|tabla|lista|abajo|página|sección|anexo|"
    r"tabella|elenco|sotto|sopra|pagina|sezione|allegato)\b",
    re.IGNORECASE,
)


def doubt_references(parameter: DraftParameter) -> None:
    """Doubt the ranges of a parameter whose words only say where else to look."""
    for index, entry in enumerate(parameter.ranges):
        meaning = str(entry["meaning"])
        if _ELSEWHERE.search(meaning):
            parameter.doubt(
                "what these values do is told elsewhere", meaning, "as printed", f"/ranges/{index}"
            )
