"""Documents for tests: hypothesis strategies for whole valid ones, and builders of the smallest valid ones.

All yield plain JSON data with every field that the models have. What a fixture refers to (sources, settings,
choices, wheel positions, parameters of the mode) is in it; no two slots overlap; its footprints are right.
"""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from modebook.documents.doubts import Acceptance, Doubt, Settled
from modebook.documents.fixture import (
    Emitter,
    Fixture,
    Promotion,
    RdmId,
    Source,
    Wheel,
    WheelColor,
    WheelPosition,
)
from modebook.documents.policy import Override, Policy, Severity, Threshold
from modebook.documents.rig import (
    Camera,
    Link,
    Loss,
    Planted,
    Reach,
    Repatch,
    RepatchDemand,
    Rig,
    UnitNote,
)
from modebook.words.e120 import Category
from modebook.words.records import Standing
from support.charts import (
    PARTS,
    POSITIONS,
    cells,
    conditions,
    modes,
    parameters,
    ranges,
    spans,
)
from support.pieces import (
    CHOICES,
    DATES,
    FIGURES,
    HEX,
    KEYS,
    NAMES,
    POINTERS,
    POSITIVE,
    SETTINGS,
    SHARES,
    SOURCE,
    SOURCES,
    TEXTS,
    Json,
    choices,
    lengths,
    piece,
    settings,
    ways,
    words,
)

__all__ = [
    "CHOICES",
    "PARTS",
    "POSITIONS",
    "SETTINGS",
    "SOURCES",
    "Json",
    "cells",
    "choices",
    "conditions",
    "fixture",
    "fixtures",
    "lengths",
    "mode",
    "modes",
    "parameter",
    "parameters",
    "policies",
    "ranges",
    "rigs",
    "setting",
    "settings",
    "spans",
    "ways",
]


def fixture(**changes: Any) -> Json:
    """The smallest valid fixture document, with some keys changed or added."""
    least = {
        "maker": "Ardenfell",
        "model": "Lumo 40",
        "category": "fixed",
        "standing": "draft",
        "modes": [mode()],
    }
    return {**least, **changes}


def mode(*parameters: Json, **changes: Any) -> Json:
    """A mode of the given parameters (a one-slot dimmer by default) with a footprint that fits them."""
    chart = list(parameters) or [parameter()]
    highest = max((slot for one in chart for slot in one["slots"]), default=0)
    return {"name": "Standard", "footprint": highest, "parameters": chart, **changes}


def parameter(word: str = "dimmer", *slots: int, **changes: Any) -> Json:
    """A parameter at slot 1, or at the given slots."""
    return {"parameter": word, "slots": list(slots) or [1], **changes}


def setting(*choices: Json, **changes: Any) -> Json:
    """A smoothing setting with the given choices."""
    least: Json = {"key": "smoothing", "setting": "smoothing"}
    return {**least, **({"choices": list(choices)} if choices else {}), **changes}


_COLOR = piece(WheelColor, {"x": SHARES, "y": SHARES}, {"filter": TEXTS}) | piece(
    WheelColor, {"filter": TEXTS}, {}, ("x", "y")
)
_POSITION = piece(
    WheelPosition,
    {},
    {
        "label": TEXTS,
        "color": _COLOR,
        "between": st.lists(st.sampled_from(POSITIONS), min_size=2, max_size=2),
    },
    elsewhere=("key",),
)
_WHEEL = piece(
    Wheel,
    {
        "positions": st.tuples(*(_POSITION for _ in POSITIONS)).map(
            lambda drawn: [{"key": key, **rest} for key, rest in zip(POSITIONS, drawn, strict=True)]
        )
    },
    {"label": TEXTS, "source": SOURCE},
    elsewhere=("key",),
)
_EMITTER = piece(
    Emitter,
    {"key": KEYS},
    {"label": TEXTS, "x": SHARES, "y": SHARES, "peak_nm": POSITIVE, "source": SOURCE},
)
_SETTLED = piece(Settled, {"by": TEXTS, "date": DATES, "decision": TEXTS}, {})
_DOUBT = piece(
    Doubt,
    {"pointer": POINTERS, "why": TEXTS},
    {
        "slots": st.lists(st.integers(1, 512), max_size=3),
        "place": TEXTS,
        "printed": st.just("") | TEXTS,
        "read": st.just("") | TEXTS,
        "settled": _SETTLED,
    },
)
_ACCEPTANCE = piece(
    Acceptance,
    {"rule": st.sampled_from(("slot-gap", "coarse-hue")), "pointer": POINTERS, "reason": TEXTS},
    {"by": TEXTS, "date": DATES},
)
_PROMOTION = piece(Promotion, {"to": words(Standing), "by": TEXTS, "date": DATES}, {"note": TEXTS})
_SOURCE_REST = piece(
    Source,
    {"title": TEXTS},
    {
        "revision": TEXTS,
        "date": DATES,
        "firmware": TEXTS,
        "pages": TEXTS,
        "language": TEXTS,
        "note": TEXTS,
    },
    elsewhere=("key",),
)
_SETTING_SETS = st.fixed_dictionaries({}, optional={key: settings(key) for key in SETTINGS})
_FIXTURE = piece(
    Fixture,
    {
        "maker": NAMES,
        "model": NAMES | TEXTS,
        "category": words(Category),
        "standing": words(Standing),
        "sources": st.tuples(*(_SOURCE_REST for _ in SOURCES)).map(
            lambda drawn: [{"key": key, **rest} for key, rest in zip(SOURCES, drawn, strict=True)]
        ),
    },
    {
        "settings": _SETTING_SETS.map(lambda drawn: list(drawn.values())),
        "wheels": _WHEEL.map(lambda wheel: [{"key": "wheel-1", **wheel}]),
        "$schema": st.just("../../../schema/fixture.schema.json"),
        "rdm": piece(RdmId, {"manufacturer": st.just("0x7FF1"), "model": HEX}, {}),
        "about": TEXTS,
        "emitters": st.lists(_EMITTER, unique_by=lambda emitter: str(emitter["key"]), max_size=2),
        "doubts": st.lists(_DOUBT, max_size=2),
        "accepted": st.lists(_ACCEPTANCE, max_size=2),
        "promotions": st.lists(_PROMOTION, max_size=2),
    },
    elsewhere=("modes",),
)


@st.composite
def fixtures(draw: st.DrawFn) -> Json:
    """A whole fixture document in which everything that is referred to exists."""
    made: Json = draw(_FIXTURE)
    names = draw(st.lists(TEXTS, unique=True, min_size=1, max_size=2))
    made["modes"] = [draw(modes(name)) for name in names]
    _free_of_what_it_lacks(made)
    return made


def _free_of_what_it_lacks(made: Json) -> None:
    """Takes out of the modes what refers to settings and wheels that the document does not have."""
    has = {one["key"] for one in made.get("settings", ()) if not one.get("none")}

    def visit(value: Any) -> None:
        if isinstance(value, list):
            for item in value:
                visit(item)
        elif isinstance(value, dict):
            if "sets" in value:
                value["sets"] = {key: to for key, to in value["sets"].items() if key in has}
            if "wheels" not in made:
                value.pop("position", None)
            for name in ("when", "needs"):
                if name in value:
                    value[name] = [one for one in value[name] if one.get("setting", "") in {"", *has}]
            for item in value.values():
                visit(item)

    visit(made["modes"])


def policies() -> st.SearchStrategy[Json]:
    """A policy document."""
    threshold = piece(
        Threshold,
        {"key": KEYS, "what": TEXTS, "value": FIGURES, "unit": TEXTS, "source": TEXTS},
        {"severity": words(Severity)},
    )
    once = st.lists(threshold, unique_by=lambda one: str(one["key"]), max_size=4)
    schema = {"$schema": st.just("../../../schema/policy.schema.json")}
    return piece(Policy, {"name": TEXTS, "thresholds": once}, schema)


def rigs() -> st.SearchStrategy[Json]:
    """A rig document, in every way of writing that it takes: bare figures, true and false, a bare loss."""
    override = piece(Override, {}, {"value": FIGURES, "severity": words(Severity), "source": TEXTS})
    share = st.floats(0, 0.99)
    loss = piece(
        Loss,
        {"rate": share},
        {"burst_packets": st.floats(1, 9), "kind": st.sampled_from(("missing", "repeated"))},
    )
    link = piece(
        Link,
        {},
        {
            "gateway_hz": POSITIVE,
            "delay_s": SHARES,
            "loss": share | loss,
            "rdm": st.sampled_from(("yes", "no", "unknown", True, False, None)),
            "about": TEXTS,
        },
    )
    note = piece(
        UnitNote,
        {},
        {
            "menu": st.dictionaries(TEXTS, TEXTS, max_size=2),
            "serial": TEXTS,
            "uid": st.just("7FF1:00000A01"),
            "firmware": TEXTS,
            "reach": words(Reach),
            "settings": st.dictionaries(KEYS, KEYS, max_size=2),
            "note": TEXTS,
        },
    )
    planted = piece(Planted, {"rule": KEYS, "unit": TEXTS, "about": TEXTS}, {})
    repatch = piece(
        Repatch,
        {},
        {
            "demands": st.lists(words(RepatchDemand), max_size=3),
            "pinned": st.lists(TEXTS, max_size=2),
            "reserved_universes": st.lists(st.integers(1, 63_999), max_size=2),
            "more_universes": st.integers(0, 64),
            "spare_slots": st.integers(0, 512),
            "together": st.lists(TEXTS, max_size=2),
        },
    )
    universes = st.sampled_from(("1", "2", "63999", "other"))
    return piece(
        Rig,
        {"name": TEXTS},
        {
            "$schema": st.just("../../../schema/rig.schema.json"),
            "about": TEXTS,
            "refresh_hz": POSITIVE,
            "camera": piece(Camera, {"fps": POSITIVE}, {"shutter_deg": st.integers(1, 360)}),
            "links": st.dictionaries(universes, link, max_size=3),
            "policy": st.dictionaries(KEYS, override | FIGURES, max_size=3),
            "units": st.dictionaries(TEXTS, note, max_size=2),
            "planted": st.lists(planted, max_size=2),
            "repatch": repatch,
        },
    )
