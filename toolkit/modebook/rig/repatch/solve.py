"""Solves a repatch, one pass a wish: each is granted as far as those before it allow."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from math import ceil, inf
from time import monotonic

from modebook.documents.address import SLOTS_PER_UNIVERSE
from modebook.rig.repatch.check import refuse_faulty
from modebook.rig.repatch.choices import best_choices, best_worth, fewer_choices
from modebook.rig.repatch.dive import dive
from modebook.rig.repatch.errors import ImpossibleError, UnsolvedError
from modebook.rig.repatch.exact import search
from modebook.rig.repatch.feasible import refuse_hopeless
from modebook.rig.repatch.greedy import greedy
from modebook.rig.repatch.master import SHORT_COST, Choice, Master
from modebook.rig.repatch.placing import placings_of
from modebook.rig.repatch.problem import PassReport, Problem, Solution
from modebook.rig.repatch.rows import BY_OPTION, MAXIMIZED, WISHES, Rows
from modebook.rig.repatch.settle import settled

SECONDS = 30.0
"""How long a repatch may take by default."""


@dataclass(frozen=True, slots=True)
class Progress:
    """How far a pass has come."""

    wish: str
    bound: float | None
    """What no plan can better, as far as it is known."""
    value: float | None
    """What the best plan so far reaches; None before there is one."""
    seconds: float
    """Since the repatch began."""


Told = Callable[[Progress], None]


def solve(problem: Problem, *, seconds: float = SECONDS, told: Told | None = None) -> Solution:
    """The best arrangement of a problem, wish by wish (see rows.WISHES).

    The same problem gives the same solution, unless a pass had to be stopped at its share of `seconds`.
    Raises ImpossibleError where no arrangement exists, UnsolvedError where none was found in time,
    SolverMissingError without HiGHS.
    """
    refuse_hopeless(problem)
    if not problem.units:
        return Solution({}, ())
    return _Solving(problem, seconds, told or (lambda _: None)).run()


@dataclass
class _Solving:
    problem: Problem
    seconds: float
    told: Told
    began: float = field(default_factory=monotonic)
    reports: list[PassReport] = field(default_factory=list)

    def run(self) -> Solution:
        """All passes."""
        whole = self.problem
        wishes = [wish for wish in WISHES if wish != "footprints" or whole.keep_footprints]
        found = self.all_demands_at_once(fewer_choices(best_choices(whole, "demands")))
        if found is not None:
            self.best = found
            wishes.remove("demands")
        else:
            self.take(fewer_choices(whole))
            self.best = self.any_arrangement()
        self.master.allow_short(False)
        for wish in wishes:
            self.granted(wish)
        placings = settled(whole, placings_of(self.rows, self.best))
        refuse_faulty(whole, placings)
        return Solution(placings, tuple(self.reports))

    def take(self, problem: Problem) -> None:
        """Begin with a problem anew."""
        self.problem = problem
        self.rows = Rows(problem)
        self.master = Master(self.rows)
        self.allowed = problem

    def all_demands_at_once(self, problem: Problem) -> Choice | None:
        """An arrangement in which each unit has a mode that meets as many demands as any; with few moves.

        That is how it ends wherever there is room, and then the other modes need never be looked at.
        """
        began = monotonic()
        self.take(problem)
        master, best = self.master, self.easiest("demands")
        self.told(Progress("demands", best, None, began - self.began))
        for few_universes in (False, True):
            master.aim("moves", few_universes=few_universes)
            master.bounded(inf, monotonic() + self.left() / 4, lambda _: None)
        dived = dive(master, monotonic() + self.left() / 3)
        found = master.choose(self.left() / 4, dived)
        if found is None or master.short(found):
            found = greedy(master)
        if found is None:
            return None
        self.report("demands", best, best, began)
        return found

    def any_arrangement(self) -> Choice:
        """Any arrangement at all, for a rig that is too full for all demands."""
        master = self.master
        master.aim("placed")
        bound = master.bounded(inf, monotonic() + self.left() / 3, lambda _: None)
        if bound > 0:
            raise ImpossibleError(_NO_ROOM)
        found = master.choose(self.left() / 3, None)
        if found is not None and not master.short(found):
            return found
        found = greedy(master)
        if found is not None:
            return found
        searched = search(master, SHORT_COST, self.left() / 3)
        if searched is not None and searched.choice is not None:
            return searched.choice
        if searched is not None and searched.bound >= SHORT_COST:
            raise ImpossibleError(_NO_ROOM)
        raise UnsolvedError(
            f"no arrangement was found in {self.seconds:.0f} s: give it longer, or open another universe"
        )

    def granted(self, wish: str) -> None:
        """One pass: grant a wish as far as can be, and hold it."""
        began, master, sign = monotonic(), self.master, -1.0 if wish in MAXIMIZED else 1.0
        share = self.left() / 2
        value = sign * master.value(self.best, wish)
        bound = sign * self.easiest(wish)
        if bound < value:
            master.aim(wish)

            def tell(now: float) -> None:
                self.told(Progress(wish, sign * now, sign * value, monotonic() - self.began))

            bound = max(bound, master.bounded(value, began + share, tell))
        if bound < value and wish == "universes":
            bound, value = self.fewer_universes(bound, value, began + share)
        if bound < value:
            dived = dive(master, began + share / 2)
            if dived is not None and sign * master.value(dived, wish) < value:
                self.best, value = dived, sign * master.value(dived, wish)
                tell(bound)
        if bound < value:
            found = master.choose(began + share - monotonic(), self.best)
            if found is not None and sign * master.value(found, wish) < value:
                self.best, value = found, sign * master.value(found, wish)
                tell(bound)
        while bound < value:
            searched = search(master, value, began + share - monotonic())
            if searched is None:
                break
            bound = max(bound, min(searched.bound, value))
            if searched.choice is None:
                break
            self.best, value = searched.choice, sign * master.value(searched.choice, wish)
            tell(bound)
        master.hold(wish, sign * value)
        self.report(wish, sign * value, sign * min(bound, value), began)

    def fewer_universes(self, bound: float, value: float, until: float) -> tuple[float, float]:
        """Ask how many moves one universe less would take, which bounds better than counting their parts.

        Returns the bound and the value that then hold.
        """
        master = self.master
        moves = master.value(self.best, "moves")
        master.hold("moves", None)
        master.allow_short(True)
        master.aim("moves")
        while bound < value and monotonic() < until:
            master.hold("universes", value - 1)
            if master.bounded(moves + 1, until, lambda _: None) > moves:
                bound = value
                break
            found = dive(master, until)
            if found is None or master.value(found, "moves") > moves:
                found = master.choose(until - monotonic(), found)
            if found is None or master.short(found) or master.value(found, "moves") > moves:
                break
            self.best, value = found, master.value(found, "universes")
        master.hold("universes", None)
        master.hold("moves", moves)
        master.allow_short(False)
        master.aim("universes")
        return bound, value

    def report(self, wish: str, value: float, bound: float, began: float) -> None:
        """Keep how a pass ended, and narrow the modes that bounds look at to those that its value leaves."""
        now = monotonic()
        if wish in BY_OPTION and value == self.easiest(wish):
            self.allowed = best_choices(self.allowed, wish)
        self.reports.append(PassReport(wish, value, bound, value == bound, now - began))
        self.told(Progress(wish, bound, value, now - self.began))

    def easiest(self, wish: str) -> float:
        """A bound that needs no solver: what is left to choose, unit by unit."""
        units = self.allowed.units
        if wish == "moves":
            return float(sum(unit.weight for unit in units if not unit.at))
        if wish == "effort":
            return float(sum(unit.weight * unit.effort for unit in units if not unit.at))
        if wish == "universes":
            taken = {
                self.problem.universes[at].number for at, fixed in enumerate(self.rows.occupied) if fixed
            }
            taken |= {address.universe for unit in units if unit.pinned for address in unit.at.values()}
            slots = sum(min(option.slots for option in unit.options) for unit in units)
            return float(max(len(taken), ceil(slots / SLOTS_PER_UNIVERSE)))
        return float(sum(best_worth(wish, unit) for unit in units))

    def left(self) -> float:
        """Seconds that are left; never less than one, so that every pass gives its gap."""
        return max(1.0, self.seconds - (monotonic() - self.began))


_NO_ROOM = (
    "no arrangement has room for every unit: let more universes be opened (repatch.more_universes in "
    "rig.json), or pin, reserve or keep together less"
)
