"""The linear program over whole universes: each column is one way to fill one universe.

Columns are made as the program's prices ask for them (the longest path of a universe's graph under these
prices), until none would better it: then its value bounds every arrangement, and an integer choice among the
columns that reaches the bound is proved best (Dantzig and Wolfe's decomposition). HiGHS solves both.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from math import ceil, inf
from time import monotonic
from typing import Any

import numpy as np

from modebook.rig.repatch.errors import SolverMissingError
from modebook.rig.repatch.filling import Filling, Gaps, gaps_of
from modebook.rig.repatch.rows import MAXIMIZED, Entries, Rows

SHORT_COST = 1_000.0
"""What a block without a place costs while it is not forbidden."""
TOLERANCE = 1e-6
FEASIBLE = 2
"""HiGHS's word for a solution that meets every row."""

Prices = np.ndarray[Any, np.dtype[np.float64]]


@dataclass(frozen=True, slots=True)
class Column:
    """One way to fill one universe."""

    universe: int
    """Its place in the problem."""
    filled: tuple[tuple[int, int], ...]
    """First slot (from 0) and label of each block."""
    used: bool


@dataclass(frozen=True, slots=True)
class Choice:
    """An integer solution: the columns taken and the value of every variable."""

    columns: tuple[Column, ...]
    variables: tuple[float, ...]


def solver() -> Any:
    """The module of HiGHS. Raises SolverMissingError."""
    try:
        import highspy
    except ImportError as error:
        raise SolverMissingError from error
    return highspy


def quiet(highspy: Any) -> Any:
    """A new HiGHS that prints nothing, not even the line that it prints when it is made."""

    class Quiet(highspy.Highs):  # type: ignore[misc]
        def enableCallbacks(self) -> None:  # noqa: N802 - the library's name
            self.setOptionValue("output_flag", False)
            super().enableCallbacks()

    highs = Quiet()
    highs.setOptionValue("threads", 1)
    return highs


class Master:
    """The program of a problem, with the columns made so far."""

    def __init__(self, rows: Rows) -> None:
        self.rows = rows
        self.highspy = solver()
        self.base = len(rows.columns)
        self.columns: list[Column] = []
        self.known: set[Column] = set()
        self.universes = range(len(rows.problem.universes))
        self.convexity = [rows.row(1, 1) for _ in self.universes]
        self.effects: list[dict[int, Entries]] = []
        self.fillings: list[Filling] = []
        self.placeable = [rows.placeable(place) for place in self.universes]
        for place in self.universes:
            keeps = rows.keeps(place)
            labels = [keep.label for keep in keeps] + [one.label for one in self.placeable[place]]
            self.effects.append({label: rows.effect(place, label) for label in labels})
            self.fillings.append(Filling(keeps, rows.occupied[place], rows.hole(place)))
        self.gainers = [_Gainer(effects) for effects in self.effects]
        self.short_allowed = True
        self.wish = "moves"
        self.use_cost = self.tie = 0.0
        """What using a universe costs: 1 if that is the wish, a part of it to decide between equals."""
        self.lp = self._empty()
        for place in self.universes:
            self.add(Column(place, (), bool(rows.occupied[place])))

    def _empty(self) -> Any:
        highs = quiet(self.highspy)
        lp = self.highspy.HighsLp()
        rows = self.rows
        lp.num_col_, lp.num_row_ = self.base, len(rows.lower)
        lp.col_cost_ = np.zeros(self.base)
        lp.col_lower_ = np.array([low for low, _ in rows.bounds])
        lp.col_upper_ = np.array([high for _, high in rows.bounds])
        lp.row_lower_, lp.row_upper_ = np.array(rows.lower), np.array(rows.upper)
        starts, index, value = packed(rows.columns)
        lp.a_matrix_.start_, lp.a_matrix_.index_, lp.a_matrix_.value_ = starts, index, value
        highs.passModel(lp)
        return highs

    def add(self, column: Column) -> bool:
        """Take a column in; False if it is there already."""
        if column in self.known:
            return False
        self.known.add(column)
        self.columns.append(column)
        total: dict[int, float] = {self.convexity[column.universe]: 1.0}
        for _, label in column.filled:
            for row, value in self.effects[column.universe][label]:
                total[row] = total.get(row, 0.0) + value
        if column.used:
            total[self.rows.wish_row["universes"]] = 1.0
        entries = [(row, value) for row, value in total.items() if value]
        cost = self.use_cost if column.used else 0.0
        self.lp.addCol(
            cost,
            0.0,
            inf,
            len(entries),
            np.array([row for row, _ in entries], dtype=np.int32),
            np.array([value for _, value in entries]),
        )
        return True

    def aim(self, wish: str, *, few_universes: bool = False) -> None:
        """Make a wish the objective, turned so that the least is the best; `placed` wants no block short.

        few_universes: of arrangements that are equal in it, prefer those with fewer universes.
        """
        self.wish = wish
        row = self.rows.wish_row.get(wish, -1)
        sign = -1.0 if wish in MAXIMIZED else 1.0
        costs = np.zeros(self.base + len(self.columns))
        for variable, entries in enumerate(self.rows.columns):
            costs[variable] = sign * sum(value for r, value in entries if r == row)
        for variable in self.rows.short:
            costs[variable] = SHORT_COST
        self.tie = 1.0 / (len(self.universes) + 1) if few_universes else 0.0
        self.use_cost = 1.0 if wish == "universes" else self.tie
        costs[self.base :] = [self.use_cost * column.used for column in self.columns]
        self.lp.changeColsCost(len(costs), np.arange(len(costs), dtype=np.int32), costs)

    def hold(self, wish: str, value: float | None) -> None:
        """From now on a wish must be granted at least as far as `value`; None gives it free again."""
        low, high = -inf, inf
        if value is not None:
            low, high = (value, inf) if wish in MAXIMIZED else (-inf, value)
        self.lp.changeRowBounds(self.rows.wish_row[wish], low, high)

    def allow_short(self, allowed: bool) -> None:
        """Whether from now on blocks may lack a place, at SHORT_COST each."""
        self.short_allowed = allowed
        for variable in self.rows.short:
            self.lp.changeColBounds(variable, 0.0, inf if allowed else 0.0)

    def solved(self) -> bool:
        """Whether the program had a solution when it was run last."""
        return bool(self.lp.getModelStatus() == self.highspy.HighsModelStatus.kOptimal)

    def price(self) -> tuple[float, list[Column], Prices]:
        """The program's bound under the present prices, the columns that would better it, and the prices."""
        self.lp.run()
        objective = self.lp.getInfo().objective_function_value
        prices = np.array(self.lp.getSolution().row_dual)
        use = self.cost_of_use(prices)
        bound, found = float(objective), []
        known: dict[tuple[float, ...], Gaps] = {}
        for place in self.universes:
            gains = self.gains(place, prices)
            offers = [(one, gains[one.label]) for one in self.placeable[place]]
            key = tuple(round(gain, 12) for one, gain in offers) + tuple(one.label for one, _ in offers)
            if key not in known:
                known[key] = gaps_of(offers)
            filling = self.fillings[place]
            on_path = np.array([gains.get(label, 0.0) for label in filling.labels])
            best = filling.best(on_path, known[key])
            if best is None:
                continue
            gain, filled = best
            used = bool(filled or self.rows.occupied[place])
            reduced = (use if used else 0.0) - prices[self.convexity[place]] - gain
            if reduced < -TOLERANCE:
                bound += reduced
                found.append(Column(place, tuple(filled), used))
        return bound, found, prices

    def cost_of_use(self, prices: Prices) -> float:
        """What using a universe costs under the prices."""
        return float(self.use_cost - prices[self.rows.wish_row["universes"]])

    def gains(self, place: int, prices: Prices) -> dict[int, float]:
        """What each label gains under the prices, in the universe at a place."""
        return self.gainers[place](prices)

    def bounded(self, enough: float, until: float, told: Callable[[float], None]) -> float:
        """Make columns until the bound stands or reaches `enough`, or the clock passes `until`.

        Returns the bound as a whole number.
        """
        best = -inf
        while True:
            bound, found, _ = self.price()
            reach = self.lp.getInfo().objective_function_value
            best = max(best, bound)
            whole = ceil(best - self.tie * len(self.universes) - TOLERANCE)
            told(whole)
            added = [self.add(column) for column in found]
            stands = reach - best < self.tie / 3 if self.tie else whole >= ceil(reach - TOLERANCE)
            if not any(added) or stands or whole >= enough or monotonic() > until:
                return whole

    def new_solver(self, seconds: float) -> Any:
        """A solver for integers with a time limit. One thread: the same input gives the same plan."""
        highs = quiet(self.highspy)
        highs.setOptionValue("time_limit", max(seconds, 0.1))
        highs.setOptionValue("mip_rel_gap", 0.0)
        # Every wish counts in whole numbers.
        highs.setOptionValue("mip_abs_gap", 0.999 * (self.tie or 1.0))
        return highs

    def choose(self, seconds: float, start: Choice | None) -> Choice | None:
        """The best integer choice among the columns made so far, starting from a known one."""
        highs = self.new_solver(seconds)
        lp = self.lp.getLp()
        kind = self.highspy.HighsVarType
        lp.integrality_ = [kind.kInteger] * lp.num_col_
        highs.passModel(lp)
        if start is not None:
            values = np.zeros(lp.num_col_)
            values[: self.base] = start.variables
            taken = set(start.columns)
            for at, column in enumerate(self.columns):
                if column in taken:
                    values[self.base + at] = 1.0
            solution = self.highspy.HighsSolution()
            solution.col_value = list(values)
            highs.setSolution(solution)
        highs.run()
        if highs.getInfo().primal_solution_status != FEASIBLE:
            return None
        found = highs.getSolution().col_value
        columns = tuple(column for at, column in enumerate(self.columns) if found[self.base + at] > 0.5)
        return self.choice(columns, found[: self.base])

    def choice(self, columns: tuple[Column, ...], variables: Sequence[float]) -> Choice:
        """A choice of columns with the variables beside them, rounded to the whole numbers that they are."""
        return Choice(columns, tuple(float(round(value)) for value in variables))

    def value(self, choice: Choice, wish: str) -> float:
        """How far a choice grants a wish."""
        if wish == "universes":
            return float(sum(column.used for column in choice.columns))
        row = self.rows.wish_row[wish]
        return float(
            sum(
                choice.variables[at] * coefficient
                for at, entries in enumerate(self.rows.columns)
                for r, coefficient in entries
                if r == row
            )
        )

    def short(self, choice: Choice) -> float:
        """How many blocks a choice leaves without a place."""
        return sum(choice.variables[variable] for variable in self.rows.short)


class _Gainer:
    """Adds up, for each label, its rows' prices times its coefficients."""

    def __init__(self, effects: Mapping[int, Entries]) -> None:
        self.labels = list(effects)
        flat = [(at, row, value) for at, label in enumerate(effects) for row, value in effects[label]]
        self.owner = np.array([at for at, _, _ in flat], dtype=np.int64)
        self.row = np.array([row for _, row, _ in flat], dtype=np.int64)
        self.value = np.array([value for _, _, value in flat], dtype=float)

    def __call__(self, prices: Prices) -> dict[int, float]:
        total = np.bincount(self.owner, self.value * prices[self.row], len(self.labels))
        return dict(zip(self.labels, total.tolist(), strict=True))


def packed(columns: Sequence[Entries]) -> tuple[Any, Any, Any]:
    """A matrix by columns: where each begins, the rows, the coefficients; a row stands once in a column."""
    starts, index, value = [0], list[int](), list[float]()
    for entries in columns:
        total: dict[int, float] = {}
        for row, coefficient in entries:
            total[row] = total.get(row, 0.0) + coefficient
        index += total
        value += total.values()
        starts.append(len(index))
    return (
        np.array(starts, dtype=np.int32),
        np.array(index, dtype=np.int32),
        np.array(value, dtype=float),
    )
