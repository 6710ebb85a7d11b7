"""Changes of single units drawn together: like units on one line, lines in the order of doing."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from modebook.shots.change import BY, Change, Standing, once
from modebook.shots.route import Byte, Route, RouteBy
from modebook.shots.unit_state import UnitState
from modebook.shots.walking import natural, on_the_way


@dataclass(frozen=True, slots=True)
class Done:
    """One change on one unit."""

    step: int
    unit: UnitState
    route: Route
    from_: str | None
    resting: tuple[Byte, ...]
    """What is sent afterwards, what stands for other settings minded."""

    @property
    def setting(self) -> str:
        """The key of the setting."""
        return self.route.setting


def gathered(done: Sequence[Done]) -> tuple[Change, ...]:
    """One line for units that are alike in all but their addresses; by hand one line for each position."""
    alike: dict[tuple[object, ...], list[Done]] = {}
    for one in done:
        route, row = one.route, one.unit.rows[0]
        key = (
            one.step,
            row.identity,
            row.modes if route.by == "slot" else (),
            route.setting,
            one.from_,
            route.choice,
            route.by,
            route.hold_s,
            route.needs,
            route.then,
            route.pid,
            route.data,
            route.path,
            route.warnings,
            route.doubts,
            route.position if route.by == "hand" else "",
            tuple(byte.value for byte in one.resting),
        )
        alike.setdefault(key, []).append(one)
    lines = [_line(sorted(some, key=lambda one: natural(one.unit.number))) for some in alike.values()]
    return tuple(sorted(lines, key=_order))


def _order(line: Change) -> tuple[object, ...]:
    return (line.step, BY.index(line.by), *on_the_way(line.position, line.units[0]), line.setting)


def _line(some: Sequence[Done]) -> Change:
    first = some[0]
    route = first.route
    modes = dict.fromkeys(one.unit.rows[0].mode.mode.name for one in some if one.unit.rows[0].mode)
    setting = first.unit.settings[route.setting]
    labels = {choice.key: choice.label or choice.key for choice in setting.choices}
    uids = [one.route.uid or "" for one in some]
    return Change(
        step=first.step,
        units=tuple(one.unit.number for one in some),
        fixture=first.unit.fixture,
        mode=", ".join(modes),
        setting=route.setting,
        setting_label=setting.label or setting.key,
        from_=first.from_,
        from_label="not known" if first.from_ is None else labels.get(first.from_, first.from_),
        to=route.choice,
        to_label=labels.get(route.choice, route.choice),
        by=route.by,
        kept=route.kept,
        seconds=route.seconds * (1 if route.by == "slot" else len(some)),
        needs=route.needs,
        needs_bytes=once(byte for one in some for byte in one.route.needs_bytes),
        bytes=once(byte for one in some for byte in one.route.bytes),
        hold_s=route.hold_s,
        then=route.then if first.resting == route.then_bytes else "what stands there for another setting",
        then_bytes=once(byte for one in some for byte in one.resting),
        pid=route.pid,
        data=route.data,
        uids=tuple(uids) if any(uids) else (),
        path=route.path,
        position=_positions(some),
        reach=route.reach,
        warnings=route.warnings,
        doubts=route.doubts,
    )


def _positions(some: Iterable[Done]) -> str:
    return ", ".join(dict.fromkeys(one.route.position for one in some if one.route.position))


def seconds_by_way(done: Iterable[Done]) -> dict[RouteBy, float]:
    """What changes take: by slot all units at once, over RDM and by hand one after another."""
    by_unit: dict[str, float] = {}
    told: dict[RouteBy, float] = dict.fromkeys(BY, 0.0)
    for one in done:
        if one.route.by == "slot":
            by_unit[one.unit.number] = by_unit.get(one.unit.number, 0.0) + one.route.seconds
        else:
            told[one.route.by] += one.route.seconds
    told["slot"] = max(by_unit.values(), default=0.0)
    return told


def standings(units: Iterable[UnitState]) -> tuple[Standing, ...]:
    """What must be sent in every cue, like units together."""
    alike: dict[tuple[object, ...], list[tuple[UnitState, tuple[Byte, ...]]]] = {}
    for unit in units:
        for setting, bytes_ in unit.stands().items():
            now = unit.now[setting]
            if bytes_ and now.route is not None:
                row = unit.rows[0]
                key = (row.identity, row.modes, setting, now.choice, now.route.by, unit.below.get(setting))
                alike.setdefault((*key, tuple(b.value for b in bytes_)), []).append((unit, bytes_))
    return tuple(_standing(str(key[2]), some) for key, some in alike.items())


def _standing(setting: str, some: Sequence[tuple[UnitState, tuple[Byte, ...]]]) -> Standing:
    unit = some[0][0]
    now, written = unit.now[setting], unit.settings[setting]
    assert now.route is not None
    labels = {choice.key: choice.label or choice.key for choice in written.choices}
    below = unit.below.get(setting)
    if now.route.by != "slot":
        why = "this slot would overrule what was set otherwise: keep it at rest"
        returns = "then the slot rules"
    else:
        why = {
            "while sent": "acts only while sent",
            "unknown": "not known to stay without the value: sent until that is tried",
        }.get(now.kept, "where this slot rests is not known: left where it is")
        returns = f"then {labels.get(below, below)} comes back" if below else "what comes back is not known"
        if now.kept in ("stored", "until power off"):
            returns = ""
            if now.route.then_bytes:
                why = "other values of this slot set it as long as they are sent: keep it at rest"
    return Standing(
        tuple(one.number for one, _ in some),
        unit.fixture,
        setting,
        written.label or setting,
        str(now.choice),
        labels.get(str(now.choice), str(now.choice)),
        once(byte for _, bytes_ in some for byte in bytes_),
        why,
        returns,
    )
