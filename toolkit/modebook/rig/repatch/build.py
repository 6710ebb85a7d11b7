"""Plans the repatch of a read rig: gathers the problem, solves it, and tells the changes row by row."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from modebook.documents.address import Address
from modebook.rig.reading import RigReading
from modebook.rig.repatch.gathering import Gathered, Member, gather
from modebook.rig.repatch.modes import REMOTE, Demand, ModeFacts
from modebook.rig.repatch.plan import Change, Plan, Unmet
from modebook.rig.repatch.problem import Placing, Solution
from modebook.rig.repatch.solve import SECONDS, Told, solve


def repatch(reading: RigReading, *, seconds: float = SECONDS, told: Told | None = None) -> Plan:
    """The plan of a rig's repatch, by the wishes of its rig.json (documents.rig.Repatch).

    seconds: how long the solver may take. told: is called with each step of its progress. Raises the errors
    of errors.py.
    """
    gathered = gather(reading)
    solution = solve(gathered.problem, seconds=seconds, told=told)
    return _plan(reading, gathered, solution)


def _plan(reading: RigReading, gathered: Gathered, solution: Solution) -> Plan:
    ends: list[tuple[Member, ModeFacts, dict[str, Address]]] = []
    for unit in gathered.problem.units:
        placing: Placing = solution.placings[unit.id]
        for member in gathered.units[unit.id]:
            ends.append((member, member.modes[placing.option.key], dict(placing.at)))
    for member in gathered.still:
        mode = _best_alone(member) if not member.at else member.now
        ends.append((member, mode, member.at))
    changes = [change for member, mode, at in ends for change in _changes(member, mode, at)]
    unmet = [one for member, mode, at in ends for one in _unmet(reading, member, mode, at)]
    before = {block.first.universe for block in gathered.problem.fixed}
    after = set(before)
    for member, _, at in ends:
        before |= {address.universe for address in member.at.values()}
        after |= {address.universe for address in at.values()}
    return Plan(
        rig=reading.name,
        patch=reading.patch.path,
        changes=tuple(sorted(changes, key=lambda change: change.row)),
        unmet=tuple(sorted(unmet, key=lambda one: (one.row, one.demand, one.parameter))),
        aside=tuple((row.unit.number, row.unit.row, why) for row, why in gathered.aside),
        passes=solution.passes,
        proved=solution.proved,
        gap=solution.gap,
        universes_before=len(before),
        universes_after=len(after),
        slots_before=sum(_slots(member, member.now) for member, _, _ in ends),
        slots_after=sum(_slots(member, mode) for member, mode, _ in ends),
        moved=sum(at != member.at for member, _, at in ends),
        remoded=sum(mode is not member.now for member, mode, _ in ends),
    )


def _slots(member: Member, mode: ModeFacts) -> int:
    return sum(size for _, size in member.blocks(mode))


def _best_alone(member: Member) -> ModeFacts:
    """The mode of a unit without an address: room does not matter to it."""
    return min(
        member.allowed(),
        key=lambda mode: (
            len(mode.unmet),
            member.blocks(mode) != member.blocks(member.now),
            _slots(member, mode),
            mode is not member.now,
        ),
    )


def _changes(member: Member, mode: ModeFacts, at: dict[str, Address]) -> Iterator[Change]:
    given = mode.mode.mode.given
    note = f"needs {given} at the menu" if given and mode is not member.now else ""
    now_slots, slots = dict(member.now.blocks), dict(mode.blocks)
    for key, row in member.rows.items():
        if mode is member.now and at.get(key) == row.unit.address:
            continue
        yield Change(
            unit=member.number,
            row=row.unit.row,
            fixture=row.identity or row.unit.fixture,
            position=row.unit.position,
            part=key,
            mode_from=member.now.mode.mode.name,
            mode_to=mode.mode.mode.name,
            mode_place=mode.place,
            address_from=row.unit.address,
            address_to=at.get(key),
            slots_from=now_slots[key],
            slots_to=slots[key],
            note=note,
        )


def _unmet(reading: RigReading, member: Member, mode: ModeFacts, at: dict[str, Address]) -> Iterator[Unmet]:
    for demand, wrong in mode.unmet.items():
        said = wrong
        if demand == Demand(REMOTE) and "rdm" in mode.smoothing_by:
            links = {address.universe: reading.rig.link(address.universe).rdm for address in at.values()}
            if links and all(passes == "yes" for passes in links.values()):
                continue
            said += _link_told(links)
        nearest, reason = _nearest(member, mode, demand)
        yield Unmet(
            unit=member.number,
            row=member.row.unit.row,
            demand=demand.rule,
            parameter=demand.parameter,
            why=f"{said}; {reason}",
            nearest=nearest,
        )


def _link_told(links: Mapping[int, str]) -> str:
    for universe, passes in links.items():
        if passes == "no":
            return f", which the link of universe {universe} does not pass"
        if passes == "unknown":
            return f", and whether the link of universe {universe} passes it is not known"
    return ""


def _nearest(member: Member, chosen: ModeFacts, demand: Demand) -> tuple[str, str]:
    """The nearest mode that meets a demand, and what speaks against it."""
    able = [mode for mode in member.modes if mode is not chosen and demand not in mode.unmet]
    if not able:
        return "", "no mode of this fixture does better"
    ranked = sorted(
        able,
        key=lambda mode: (
            bool(mode.why_not(member.now, member.firmware)),
            len(mode.lost_from(member.now)),
            mode.mode.mode.footprint,
        ),
    )
    mode = ranked[0]
    name = mode.mode.mode.name
    against = mode.why_not(member.now, member.firmware)
    if not against:
        others = len(mode.unmet)
        against = (
            f"leaves {others} demand{'s' * (others != 1)} unmet itself"
            if others >= len(chosen.unmet)
            else "found no room"
        )
    return name, f"mode {name} would do, but {against}"
