"""The column titles that people give a patch, and which of them are meant."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

from modebook.shelf.table import fold_title

Column = Literal[
    "unit",
    "maker",
    "fixture",
    "mode",
    "universe",
    "address",
    "position",
    "purpose",
    "group",
    "throw",
    "part",
    "uid",
    "serial",
    "firmware",
    "reach",
    "note",
]

TITLES: Mapping[Column, tuple[str, ...]] = MappingProxyType(
    {
        "unit": (
            "unit",
            "unit number",
            "unit no",
            "unit nr",
            "unit num",
            "unit #",
            "unit id",
            "units",
            "#",
            "number",
            "no",
            "nr",
            "einheit",
            "gerat nr",
            "geratenummer",
            "nummer",
            "unite",
            "numero",
            "unidad",
            "unita",
        ),
        "maker": (
            "maker",
            "manufacturer",
            "made by",
            "hersteller",
            "fabricant",
            "fabricante",
            "produttore",
        ),
        "fixture": (
            "fixture",
            "fixture type",
            "fixture model",
            "fixture name",
            "model",
            "type",
            "fixtures",
            "luminaire",
            "light",
            "gerat",
            "geratetyp",
            "typ",
            "modell",
            "scheinwerfer",
            "appareil",
            "projecteur",
            "modele",
            "aparato",
            "proyector",
            "modelo",
            "apparecchio",
            "proiettore",
            "modello",
        ),
        "mode": (
            "mode",
            "mode name",
            "dmx mode",
            "fixture mode",
            "personality",
            "dmx personality",
            "personality number",
            "personality no",
            "mode number",
            "mode no",
            "modus",
            "betriebsart",
            "dmx modus",
            "mode dmx",
            "modo",
            "modo dmx",
            "modalita",
        ),
        "universe": (
            "universe",
            "univ",
            "uni",
            "u",
            "dmx universe",
            "universe number",
            "universe no",
            "universe #",
            "universum",
            "univers",
            "universo",
            "dmx universum",
        ),
        "address": (
            "address",
            "addr",
            "start address",
            "start addr",
            "dmx address",
            "dmx addr",
            "dmx start address",
            "dmx start",
            "absolute address",
            "universe address",
            "start",
            "dmx",
            "patch",
            "adresse",
            "startadresse",
            "dmx adresse",
            "adresse dmx",
            "adresse de depart",
            "direccion",
            "direccion dmx",
            "indirizzo",
            "indirizzo dmx",
        ),
        "position": (
            "position",
            "pos",
            "location",
            "hanging position",
            "hung at",
            "ort",
            "emplacement",
            "posicion",
            "posizione",
        ),
        "purpose": ("purpose", "use", "used for"),
        "group": (
            "group",
            "groups",
            "group name",
            "gruppe",
            "groupe",
            "grupo",
            "gruppo",
        ),
        "throw": (
            "throw",
            "throw m",
            "throw in m",
            "throw meters",
            "throw in meters",
            "throw ft",
            "throw in ft",
            "throw feet",
            "throw in feet",
            "throw distance",
            "throw distance m",
            "throw distance ft",
        ),
        "part": ("part", "parts", "mode part"),
        "uid": ("uid", "rdm uid"),
        "serial": ("serial", "serial number", "serial no", "serial nr", "serial #"),
        "firmware": ("firmware", "firmware version"),
        "reach": ("reach", "reached", "reached by", "access", "how reached"),
        "note": (
            "note",
            "notes",
            "remark",
            "remarks",
            "comment",
            "comments",
            "bemerkung",
            "bemerkungen",
            "notiz",
            "remarque",
            "remarques",
            "nota",
            "notas",
        ),
    }
)
"""For each column the titles that mean it, folded, the plainest first."""

KNOWN: frozenset[str] = frozenset(title for titles in TITLES.values() for title in titles)

SUCH_AS = "unit, fixture, mode, universe, address"

FEET: frozenset[str] = frozenset(title for title in TITLES["throw"] if title.endswith(("ft", "feet")))


@dataclass(frozen=True, slots=True)
class Columns:
    """Which column of a table is which."""

    at: Mapping[Column, int]
    other: tuple[int, ...]
    """The columns that nothing here reads."""
    doubled: tuple[tuple[Column, str, str], ...]
    """Columns meant by two titles: which, the title that was taken, and the one that was not."""


def columns_of(titles: Sequence[str]) -> Columns:
    """Which title means which column; of several for one, the plainest is taken and the others are told.

    A `model` beside a `maker` goes before a `fixture`, which then is often a number or a family.
    """
    folded = [fold_title(title) for title in titles]
    at: dict[Column, int] = {}
    doubled: list[tuple[Column, str, str]] = []
    taken: set[int] = set()
    for column, names in TITLES.items():
        order = ("model", *names) if column == "fixture" and "maker" in at else names
        places = [
            index for name in dict.fromkeys(order) for index, title in enumerate(folded) if title == name
        ]
        if not places:
            continue
        at[column] = places[0]
        taken.add(places[0])
        doubled.extend((column, titles[places[0]], titles[other]) for other in places[1:])
    other = tuple(index for index, title in enumerate(titles) if index not in taken and title.strip())
    return Columns(at, other, tuple(doubled))
