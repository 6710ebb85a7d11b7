"""Strategies for fixtures whose settings are changed by slot, over RDM, at the menu; and for stages."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

Json = dict[str, Any]
KEPT = (None, "while sent", "until power off", "stored")
SETTINGS = ("smoothing", "curve")
CHOICES = ("off", "short", "long")
KINDS = {"smoothing": "smoothing", "curve": "dimmer-curve"}


@st.composite
def fixtures(draw: st.DrawFn) -> Json:
    """A fixture with up to two settings, a dimmer, and up to two control slots of one or two bytes."""
    settings = [
        {
            "key": key,
            "setting": KINDS[key],
            "choices": [{"key": choice} for choice in CHOICES],
            "ways": draw(_ways(place)),
        }
        for place, key in enumerate(draw(st.sampled_from([SETTINGS[:1], SETTINGS])))
    ]
    keys = [str(setting["key"]) for setting in settings]
    parameters: list[Json] = [{"parameter": "dimmer", "slots": [1, 2]}]
    at = 3
    for place in range(draw(st.integers(0, 2))):
        size = draw(st.sampled_from([1, 1, 2]))
        slots = list(range(at, at + size))
        parameters.append(draw(_control(f"control-{place + 1}", slots, keys)))
        at += size
    modes: list[Json] = [{"name": "Whole", "parameters": parameters}]
    if draw(st.booleans()):
        moved = [{**one, "slots": [slot - 2 for slot in one["slots"]]} for one in parameters[1:]]
        if moved:
            modes = [
                {
                    "name": "Whole",
                    "footprint": at - 1,
                    "parameters": parameters[:1],
                    "parts": [{"key": "base", "footprint": at - 3, "parameters": moved}],
                }
            ]
    return {"model": "Changer", "settings": settings, "modes": modes}


def _ways(place: int) -> st.SearchStrategy[list[Json]]:
    kept = st.sampled_from((None, "until power off", "stored"))

    def with_kept(way: Json, told: str | None) -> Json:
        return way if told is None else {**way, "kept": told}

    some = st.lists(st.sampled_from(CHOICES), min_size=1, max_size=3, unique=True)
    rdm = st.builds(
        lambda reached, told: with_kept(
            {
                "by": "rdm",
                "pid": f"0x800{place}",
                "size": 1,
                "values": {choice: 7 + CHOICES.index(choice) for choice in reached},
            },
            told,
        ),
        some,
        kept,
    )
    menu = st.builds(
        lambda reached, told: with_kept(
            {"by": "menu", "path": ["Setup", f"Entry {place}"], "choices": reached}, told
        ),
        some,
        kept,
    )
    return st.builds(lambda *ways: [way for way in ways if way], st.none() | rdm, st.none() | menu)


@st.composite
def _control(draw: st.DrawFn, key: str, slots: list[int], settings: list[str]) -> Json:
    top = 256 ** len(slots) - 1
    ends = sorted(draw(st.lists(st.integers(0, top), min_size=2, max_size=12, unique=True)))
    ranges: list[Json] = []
    for low, high in zip(ends[::2], ends[1::2], strict=False):
        kind = draw(st.sampled_from(["sets", "sets", "sets", "nothing", "hazard", "as-menu"]))
        one: Json = {"from": low, "to": high, "meaning": kind}
        if kind == "sets":
            one["sets"] = {draw(st.sampled_from(settings)): draw(st.sampled_from(CHOICES))}
            kept = draw(st.sampled_from(KEPT))
            if kept is not None:
                one["kept"] = kept
            if draw(st.booleans()):
                one["hold_s"] = draw(st.integers(1, 5))
            if kept in ("until power off", "stored") and draw(st.booleans()):
                one["needs"] = [{"parameter": "dimmer", "from": 0, "to": draw(st.integers(0, 300))}]
        elif kind == "hazard":
            one["hazard"] = draw(st.sampled_from(["reset", "lamp off", "blackout", "movement"]))
        else:
            one["does"] = kind
        ranges.append(one)
    made: Json = {"parameter": "control", "key": key, "slots": slots, "ranges": ranges}
    if draw(st.booleans()):
        made["default"] = draw(st.integers(0, top))
    return made


def wanted(units: list[str], keys: list[str]) -> st.SearchStrategy[dict[tuple[str, str], str | None]]:
    """What is wanted in one stage: some settings of some units."""
    pairs = [(unit, key) for unit in units for key in keys]
    return st.dictionaries(st.sampled_from(pairs), st.sampled_from((*CHOICES, None)), max_size=len(pairs))
