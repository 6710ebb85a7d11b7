"""The prep sheet: what each unit is set to in the shop, before it goes out to the set, and by which road."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from modebook.rig.reading import RigReading
from modebook.shots.change import PrepLine, Stage, bytes_words
from modebook.shots.route import Route
from modebook.shots.routes import in_the_shop
from modebook.shots.unit_state import Now, UnitState
from modebook.shots.walking import natural


@dataclass(frozen=True, slots=True)
class _One:
    unit: UnitState
    setting: str
    choice: str
    from_: str | None
    road: Route | None
    words: str
    doubts: tuple[str, ...]


def prepare(
    reading: RigReading, units: Mapping[str, UnitState], stages: Sequence[Stage]
) -> tuple[PrepLine, ...]:
    """Set every unit to the first choice that the plan has for each of its settings; `units` are changed.

    Only roads that outlast power off count, since units are switched off on their way to the set; a choice
    that only a slot gives is sent on the set, and the sheet says so. In the shop every unit is on the floor.
    """
    found: list[_One] = []
    for (number, setting), choice in _firsts(stages).items():
        unit = units.get(number)
        if unit is None:
            continue
        now = unit.now.get(setting)
        has = now.choice if now else None
        road = _shop_road(reading, unit, setting, choice)
        if has == choice:
            found.append(_One(unit, setting, choice, has, None, _known(unit, setting, choice), ()))
            continue
        slot = any(one.by == "slot" for one in unit.roads.get(setting, {}).get(choice, ()))
        over = unit.over(setting)
        if road is not None and road.by == "hand" and slot and (over.always or over.stand or over.doubts):
            # Whatever is stored, that slot must be sent in every cue: nobody need go to the menu for it.
            words = "sent by slot on the set, in every cue: the slot would overrule what is stored"
            found.append(_One(unit, setting, choice, has, None, words, ()))
            continue
        if road is None:
            words = "sent by slot on the set; no road leaves it stored" if slot else "no way reaches it"
            found.append(_One(unit, setting, choice, has, None, words, ()))
            continue
        doubts = road.doubts
        if road.kept == "unknown":
            doubts = (*doubts, "whether it outlasts power off is not written: look again on the set")
        found.append(_One(unit, setting, choice, has, road, _words(road), doubts))
        unit.now[setting] = Now(choice, road.kept, road)
        unit.below[setting] = choice
    return tuple(_lines(found))


def _firsts(stages: Sequence[Stage]) -> dict[tuple[str, str], str]:
    found: dict[tuple[str, str], str] = {}
    for stage in stages:
        for key, choice in stage.wanted.items():
            if choice is not None:
                found.setdefault(key, choice)
    return found


def _shop_road(reading: RigReading, unit: UnitState, setting: str, choice: str) -> Route | None:
    """The cheapest road that leaves a choice stored, those that surely do so first."""
    some = [
        one
        for one in unit.roads.get(setting, {}).get(choice, ())
        if one.by == "rdm" or (one.by == "slot" and one.kept == "stored" and not {*one.bytes} & {*one.stand})
    ]
    written = unit.settings[setting]
    picked = next((one for one in written.choices if one.key == choice), None)
    by_hand = in_the_shop(reading, unit.rows[0], written, picked) if picked else None
    if by_hand is not None:
        some.append(by_hand)
    lasting = [one for one in some if one.kept != "until power off" and not _waits(unit, one)]
    return min(lasting, key=lambda one: (one.kept != "stored", one.cost), default=None)


def _known(unit: UnitState, setting: str, choice: str) -> str:
    row = unit.rows[0]
    if row.known and row.known.settings.get(setting) == choice:
        return "so already, says rig.json: look"
    return "so from the factory, if nobody changed it: look"


def _waits(unit: UnitState, road: Route) -> bool:
    return any(
        unit.now[setting].choice not in choices
        for setting, choices in road.needs_settings
        if setting in unit.now
    )


def _words(road: Route) -> str:
    if road.by == "rdm":
        return f"over RDM: PID {road.pid}, data {road.data}"
    if road.by == "slot":
        return _by_slot([road])
    return f"by hand: {' > '.join(road.path)}"


def _by_slot(roads: Sequence[Route]) -> str:
    """Like units by slot, their values together."""
    first = roads[0]
    needs = f"first {'; '.join(first.needs)}; " if first.needs else ""
    hold = "" if first.hold_s is None else f", held {first.hold_s:g} s"
    sent = bytes_words(byte for road in roads for byte in road.bytes)
    return f"by slot: {needs}{sent}{hold}; {first.then}"


def _lines(found: Sequence[_One]) -> Iterator[PrepLine]:
    alike: dict[tuple[object, ...], list[_One]] = {}
    for one in found:
        row, by = one.unit.rows[0], one.road.by if one.road else None
        words = "slot" if by == "slot" else one.words
        key = (row.identity, one.setting, one.choice, one.from_, by, words, one.doubts)
        alike.setdefault(key, []).append(one)
    for some in sorted(alike.values(), key=lambda few: natural(few[0].unit.number)):
        first = some[0]
        row, written = first.unit.rows[0], first.unit.settings[first.setting]
        slots = [one.road for one in some if one.road and one.road.by == "slot"]
        by_slot = _by_slot(slots) if slots else None
        modes = dict.fromkeys(one.unit.rows[0].mode.mode.name for one in some if one.unit.rows[0].mode)
        label = next((one.label for one in written.choices if one.key == first.choice), None)
        yield PrepLine(
            tuple(one.unit.number for one in some),
            first.unit.fixture,
            ", ".join(modes),
            first.setting,
            written.label or first.setting,
            first.choice,
            label or first.choice,
            first.words if by_slot is None else by_slot,
            first.road.by if first.road else None,
            first.from_,
            sum(one.road.seconds for one in some if one.road and one.road.by != "slot"),
            first.doubts,
        )
