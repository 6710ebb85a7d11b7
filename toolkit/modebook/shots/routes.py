"""Which roads lead to which choice on a unit as it is patched, and what each costs: slot, RDM, by hand."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from modebook.documents.policy import Policy
from modebook.documents.settings import Choice, Setting, Way
from modebook.documents.ways import reached_by
from modebook.rig.firmware import same_version
from modebook.rig.reading import PatchedRow, RigReading
from modebook.shots.located import places
from modebook.shots.route import Route
from modebook.shots.slot_routes import overruled, slot_routes

Roads = dict[str, dict[str, tuple[Route, ...]]]
"""By setting and choice, the cheapest road first; an empty tuple where no way reaches the choice."""


def routes(reading: RigReading, rows: PatchedRow | Sequence[PatchedRow]) -> Roads:
    """The roads to every choice of every setting of a unit; `rows` are its start addresses.

    A road over RDM is left out where the link does not pass RDM, one by hand where nobody gets to the
    unit. What is not known (whether RDM passes, a UID, a hold) is a doubt of the road.
    """
    rows = [rows] if isinstance(rows, PatchedRow) else list(rows)
    row, policy = rows[0], reading.policy
    assert row.fixture is not None
    at = places(rows)
    by_slot = list(slot_routes(rows, policy, at))
    found: Roads = {}
    for setting in row.fixture.fixture.settings:
        if setting.none:
            continue
        roads = found.setdefault(setting.key, {})
        over = overruled(rows, setting, at)
        for choice in setting.choices:
            some = [one for one in by_slot if (one.setting, one.choice) == (setting.key, choice.key)]
            if not over.always and not over.against(choice.key):
                # A slot that sets it at every value, or where it rests, leaves no other road: it rules.
                some += [
                    replace(one, stand=over.stand, rests=over.stand, doubts=(*one.doubts, *over.doubts))
                    for one in _others(reading, row, setting, choice)
                ]
            roads[choice.key] = tuple(sorted(some, key=lambda one: (one.cost, one.seconds)))
    return found


def in_the_shop(reading: RigReading, row: PatchedRow, setting: Setting, choice: Choice) -> Route | None:
    """The road by hand before the units go out to the set, where each stands on the floor; else None."""
    for way in setting.ways:
        if way.by != "rdm" and choice.key in reached_by(way, setting):
            return _by_hand(reading.policy, row, setting, choice, way, "floor", ())
    return None


def _others(reading: RigReading, row: PatchedRow, setting: Setting, choice: Choice) -> Iterator[Route]:
    for way in setting.ways:
        if choice.key not in reached_by(way, setting):
            continue
        doubts = _firmware(row, way)
        if doubts is None:
            continue
        if way.by == "rdm":
            road = _over_rdm(reading, row, setting, choice, way, doubts)
        elif way.by in ("app", "page"):
            road = _by_hand(reading.policy, row, setting, choice, way, "floor", doubts)
        elif row.reach == "not at all":
            road = None
        else:
            if row.reach is None:
                doubts = (*doubts, "how the unit is reached is not written: taken as by ladder")
            road = _by_hand(reading.policy, row, setting, choice, way, row.reach or "ladder", doubts)
        if road is not None:
            yield road


def _firmware(row: PatchedRow, way: Way) -> tuple[str, ...] | None:
    """Doubts for a way that only some firmware has; None where the unit's is known to lack it."""
    if not way.firmware:
        return ()
    has = row.unit.firmware or (row.known.firmware if row.known else "") or ""
    if not has:
        return (f"only from firmware {way.firmware} on: look at the unit's",)
    return () if same_version(has, way.firmware) or _newer(has, way.firmware) else None


def _newer(has: str, least: str) -> bool:
    def parts(text: str) -> list[int]:
        return [
            int(piece) for piece in text.replace("-", ".").split(".") if piece.isascii() and piece.isdigit()
        ]

    return parts(has.lstrip("vV ")) > parts(least.lstrip("vV "))


def _over_rdm(
    reading: RigReading, row: PatchedRow, setting: Setting, choice: Choice, way: Way, doubts: tuple[str, ...]
) -> Route | None:
    address = row.unit.address
    passes = reading.link(address.universe).rdm if address else "unknown"
    value = (way.values or {}).get(choice.key)
    if passes == "no" or value is None or way.pid is None:
        return None
    policy = reading.policy
    cost = policy["change-cost-rdm"].value
    uid = row.unit.uid or (row.known.uid if row.known and row.known.uid else None)
    told = list(doubts)
    if passes == "unknown":
        cost *= 2  # a road that may not be there goes behind one that is
        told.append("whether RDM passes in this universe is not known: try it first")
    if not uid:
        told.append("its UID is not noted: find it by its address first")
    size = way.size or max(1, (value.bit_length() + 7) // 8)
    if way.size is None:
        told.append(f"the data size of PID {way.pid} is not printed: {size} taken")
    needs: tuple[str, ...] = ()
    if way.locked:
        needs = (way.locked if isinstance(way.locked, str) else "the fixture's lock opened",)
    return Route(
        by="rdm",
        setting=setting.key,
        choice=choice.key,
        cost=cost,
        seconds=policy["change-time-rdm"].value,
        kept=way.kept or "unknown",
        needs=needs,
        then="nothing: the fixture keeps it" if way.kept else "",
        pid=way.pid,
        data=value.to_bytes(size, "big").hex().upper() if value < 256**size else None,
        uid=uid,
        position=row.unit.position,
        reach=row.reach or "",
        doubts=tuple(told),
    )


def _by_hand(
    policy: Policy,
    row: PatchedRow,
    setting: Setting,
    choice: Choice,
    way: Way,
    reach: str,
    doubts: tuple[str, ...],
) -> Route:
    needs: tuple[str, ...] = ()
    if way.locked:
        needs = (way.locked if isinstance(way.locked, str) else "the fixture's lock opened",)
    before = {"menu": (), "app": ("app",), "page": ("network page",)}[way.by]
    warnings = () if reach == "floor" else (f"by {reach}: qualified people, local rules first",)
    return Route(
        by="hand",
        setting=setting.key,
        choice=choice.key,
        cost=policy[f"change-cost-{reach}"].value,
        seconds=policy[f"change-time-{reach}"].value,
        kept=way.kept or "unknown",
        needs=needs,
        path=(*before, *(way.path or ()), choice.label or choice.key),
        position=row.unit.position,
        reach=row.reach or "",
        warnings=warnings,
        doubts=doubts,
    )
