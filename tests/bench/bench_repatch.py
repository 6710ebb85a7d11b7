"""Times the repatch of 300 units over 12 universes, a third changing footprint, at 70, 85 and 95 % full.

Run it with the project's Python: python tests/bench/bench_repatch.py [--seeds N] [--more N]
The rigs differ in where their free slots are: in one stretch at each universe's end, or scattered between
the units. Prints for each pass its value, bound, gap and time; the floor is a repatch of a single unit.
"""

from __future__ import annotations

import argparse
import random
import time

from modebook.documents.address import Address
from modebook.rig.repatch.problem import Option, Problem, Unit, Universe
from modebook.rig.repatch.solve import solve

UNITS, UNIVERSES = 300, 12
SIZES = (6, 8, 9, 12, 14, 16, 18, 20, 22, 24, 26, 28, 32, 36)
KINDS = 12
"""Different fixtures; every third one has a mode with more slots that it needs."""


def rig(seed: int, full: float, scattered: bool, more: int) -> Problem:
    """A rig that is `full` (a share of all slots) once every unit has the mode that it needs."""
    chance = random.Random(seed)
    kinds = _kinds(chance, full)
    units = [kinds[n % KINDS] for n in range(UNITS)]
    chance.shuffle(units)
    found: list[Unit] = []
    for place in range(UNIVERSES):
        here = units[place::UNIVERSES]
        while sum(now for now, _ in here) > 512:
            here[max(range(len(here)), key=lambda at: here[at][0])] = min(kinds)
        free = 512 - sum(now for now, _ in here)
        before = [0] * len(here)
        if scattered:
            for _ in range(free):
                before[chance.randrange(len(here))] += 1
        address = 1
        for gap, (now, needed) in zip(before, here, strict=True):
            address += gap
            modes = [Option(0, (("", now),), frozenset() if needed != now else frozenset({"fine"}))]
            if needed != now:
                modes.append(Option(1, (("", needed),), frozenset({"fine"})))
            at = {"": Address(place + 1, address)}
            found.append(Unit(str(len(found) + 1), tuple(modes), modes[0], at))
            address += now
    return Problem(tuple(found), tuple(Universe(n) for n in range(1, UNIVERSES + more + 1)))


def _kinds(chance: random.Random, full: float) -> list[tuple[int, int]]:
    wanted = full * UNIVERSES * 512 / UNITS * KINDS
    sizes = [chance.choice(SIZES) for _ in range(KINDS)]
    grows = [chance.choice((1, 2, 3, 4, 6)) if n % 3 == 0 else 0 for n in range(KINDS)]
    scale = (wanted - sum(grows)) / sum(sizes)
    sizes = [max(2, round(size * scale)) for size in sizes]
    at = 0
    while (off := round(wanted) - sum(sizes) - sum(grows)) != 0:
        sizes[at % KINDS] = max(2, sizes[at % KINDS] + (1 if off > 0 else -1))
        at += 1
    return [(size, size + grow) for size, grow in zip(sizes, grows, strict=True)]


def main() -> None:
    """Make the rigs, solve, print."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seeds", type=int, default=2)
    parser.add_argument("--more", type=int, default=1, help="universes that may be opened")
    told = parser.parse_args()
    tiny = Option(0, (("", 1),))
    start = time.perf_counter()
    solve(Problem((Unit("1", (tiny,), tiny, {"": Address(1, 1)}),), (Universe(1),)))
    print(f"one unit: {time.perf_counter() - start:.2f} s")
    for full in (0.70, 0.85, 0.95):
        for scattered in (False, True):
            for seed in range(1, told.seeds + 1):
                problem = rig(seed, full, scattered, told.more)
                slots = sum(unit.options[-1].slots for unit in problem.units)
                changing = sum(len(unit.options) > 1 for unit in problem.units)
                wall, cpu = time.perf_counter(), time.process_time()
                solution = solve(problem)
                wall, cpu = time.perf_counter() - wall, time.process_time() - cpu
                where = "scattered" if scattered else "at ends"
                how = "all proved" if solution.proved else f"gap {solution.gap:.1%}"
                print(
                    f"{slots / UNIVERSES / 5.12:5.1f} % full, free slots {where}, {changing} change, "
                    f"seed {seed}: {wall:.1f} s ({cpu:.1f} s of one core), {how}"
                )
                for one in solution.passes:
                    print(
                        f"    {one.wish:10} {one.value:6.0f}  bound {one.bound:6.0f}  gap {one.gap:6.1%}  "
                        f"{one.seconds:5.1f} s",
                        flush=True,
                    )


if __name__ == "__main__":
    main()
