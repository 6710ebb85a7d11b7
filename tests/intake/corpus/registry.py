"""The charts of the corpus, open and aside: each a name, a layout, a format, and a function that makes it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from importlib import import_module

from intake.corpus.content import Made

SUFFIXES = ("pdf", "xlsx", "ods", "csv", "html", "txt")


@dataclass(frozen=True)
class Chart:
    """One chart. `trap` names the trap that it sets, by its number in the list of the README."""

    name: str
    layout: str
    suffix: str
    language: str
    maker: str
    model: str
    make: Callable[[int], Made]
    trap: int | None = None
    seed: int = 1


_FOUND: dict[str, list[Chart]] = {"open": [], "aside": []}
FAMILIES = {
    "open": [
        "rows",
        "columns",
        "sides",
        "blocks",
        "sheets",
        "pages",
        "texts",
        "firsts",
        "firsts_more",
        "traps_text",
        "traps_pdf",
        "traps_more",
        "fresh_heads",
        "fresh_pages",
        "fresh_more",
        "fresh_sheets",
        "fresh_pasted",
        "fresh_hard",
        "second_bands",
        "second_columns",
        "second_hard",
        "second_pages",
        "second_pasted",
        "second_sheets",
        "rare_rows",
        "rare_sides",
        "rare_blocks",
        "rare_sheets",
        "rare_texts",
        "rare_traps",
        "fourth_late",
        "fourth_web",
        "fourth_lists",
        "fourth_pasted",
        "fifth_b_csv",
        "fifth_b_heads",
        "fifth_b_films",
        "fifth_b_rooms",
        "fifth_b_web",
        "fifth_b_plain",
        "fifth_studio",
        "fifth_floor",
        "fifth_heads",
        "fifth_yoke",
        "fifth_walls",
        "fifth_copied",
        "sixth_film",
        "sixth_copied",
        "sixth_effects",
        "sixth_b_comma",
        "sixth_b_rigs",
        "sixth_b_words",
        "seventh_film",
        "seventh_heads",
        "seventh_lines",
        "seventh_b_commas",
        "seventh_b_office",
    ],
    "aside": [
        "fourth_more",
        "fourth_pages",
        "fourth_tables",
        "third_hard",
        "third_more",
        "third_pages",
        "third_pasted",
        "third_plain",
        "third_sheets",
        "fourth_sheets",
        "fourth_rest",
        "sixth_b_tabs",
        "sixth_b_books",
        "sixth_b_open",
        "sixth_b_pages",
        "sixth_movers",
        "sixth_yokes",
        "sixth_rooms",
        "sixth_pasted",
        "seventh_b_semis",
        "seventh_b_books",
        "seventh_b_sites",
        "seventh_yoke",
        "seventh_party",
        "seventh_house",
        "seventh_air",
        "eighth_b_papers",
        "eighth_b_lists",
        "eighth_b_folders",
        "eighth_b_shelves",
        "eighth_b_webs",
        "eighth_b_pastes",
        "eighth_film",
        "eighth_yoke",
        "eighth_bars",
        "eighth_crew",
        "eighth_pasted",
    ],
}


def chart(
    name: str,
    layout: str,
    suffix: str,
    language: str,
    maker: str,
    model: str,
    trap: int | None = None,
    seed: int = 1,
) -> Callable[[Callable[[int], Made]], Callable[[int], Made]]:
    """Enters a generator in the corpus, under the folder that its module stands in."""

    def enter(make: Callable[[int], Made]) -> Callable[[int], Made]:
        kept = make.__module__.split(".")[-2]
        _FOUND[kept].append(Chart(name, layout, suffix, language, maker, model, make, trap, seed))
        return make

    return enter


def charts(kept: str) -> list[Chart]:
    """All charts of `open` or `aside`, in the order of their modules."""
    for family in FAMILIES[kept]:
        import_module(f"intake.corpus.{kept}.{family}")
    return list(_FOUND[kept])
