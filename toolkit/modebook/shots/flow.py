"""More tied axes than a joint search bears: paths as flows in one program, solved by HiGHS with its gap."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

from modebook.rig.repatch.master import packed, quiet, solver
from modebook.shots.path import Chain, Path, cost_of

SECONDS = 10.0

Apart = Mapping[tuple[int, int], Any]
"""For two axes, which of their choices are apart: a table of truths, [choices, choices]."""


def flow(chain: Chain, apart: Sequence[Sequence[Apart]], weight: float, seconds: float = SECONDS) -> Path:
    """The cheapest path with ties told as pairs that are apart.

    apart: for each stage, for each tie, a mapping from two axes to a table of their choices that are apart; a
    tie costs `weight` if any of its pairs is. The chain's own `ties` are left aside. gap: HiGHS's own.
    """
    program = _Program(chain)
    for stage, ties in enumerate(apart):
        for tie in ties:
            program.tie(stage, tie, weight)
    values, bound, objective = program.solve(seconds)
    choices = program.choices(values)
    cost = cost_of(Chain(chain.first, chain.change, chain.stages), choices) + weight * sum(
        _is_apart(tie, choices[stage]) for stage, ties in enumerate(apart) for tie in ties
    )
    gap = 0.0 if objective <= 0 else max(0.0, (cost - bound) / max(cost, 1e-9))
    return Path(choices, cost, gap if gap > 1e-6 else 0.0)


def _is_apart(tie: Apart, now: Sequence[int]) -> bool:
    return any(bool(table[now[one], now[other]]) for (one, other), table in tie.items())


class _Program:
    """Columns of choices, steps and ties; rows that make the steps a path."""

    def __init__(self, chain: Chain) -> None:
        self.chain = chain
        self.costs: list[float] = []
        self.whole: list[bool] = []
        self.columns: list[list[tuple[int, float]]] = []
        self.lower: list[float] = []
        self.upper: list[float] = []
        self.node: dict[tuple[int, int, int], int] = {}
        for axis, size in enumerate(chain.sizes):
            for stage in range(len(chain.stages)):
                row = self._row(1.0, 1.0)
                for choice in range(size):
                    cost = float(chain.stages[stage][axis][choice])
                    if stage == 0:
                        cost += float(chain.first[axis][choice])
                    self.node[stage, axis, choice] = self._column(cost, whole=True)
                    self.columns[-1].append((row, 1.0))
        for axis, size in enumerate(chain.sizes):
            for stage in range(1, len(chain.stages)):
                self._steps(axis, size, stage)

    def _column(self, cost: float, *, whole: bool) -> int:
        self.costs.append(cost)
        self.whole.append(whole)
        self.columns.append([])
        return len(self.columns) - 1

    def _row(self, low: float, high: float) -> int:
        self.lower.append(low)
        self.upper.append(high)
        return len(self.lower) - 1

    def _steps(self, axis: int, size: int, stage: int) -> None:
        leaves = [self._row(0.0, 0.0) for _ in range(size)]
        comes = [self._row(0.0, 0.0) for _ in range(size)]
        for choice in range(size):
            self.columns[self.node[stage - 1, axis, choice]].append((leaves[choice], -1.0))
            self.columns[self.node[stage, axis, choice]].append((comes[choice], -1.0))
        for before in range(size):
            for after in range(size):
                column = self._column(float(self.chain.change[axis][before][after]), whole=False)
                self.columns[column] += [(leaves[before], 1.0), (comes[after], 1.0)]

    def tie(self, stage: int, tie: Apart, weight: float) -> None:
        """A tie that costs `weight` if any of its pairs is apart."""
        broken = self._column(weight, whole=False)
        for (one, other), table in tie.items():
            told = np.asarray(table)
            for choice in range(told.shape[0]):
                against = np.flatnonzero(told[choice])
                if not len(against):
                    continue
                # x(one, choice) + sum of x(other, those apart from it) - broken <= 1
                row = self._row(-math.inf, 1.0)
                self.columns[self.node[stage, one, choice]].append((row, 1.0))
                for each in against:
                    self.columns[self.node[stage, other, int(each)]].append((row, 1.0))
                self.columns[broken].append((row, -1.0))

    def solve(self, seconds: float) -> tuple[list[float], float, float]:
        """The values of all columns, the bound that no path betters, and the objective reached."""
        highspy = solver()
        highs = quiet(highspy)
        highs.setOptionValue("time_limit", seconds)
        highs.setOptionValue("mip_rel_gap", 0.0)
        infinite = [not math.isfinite(cost) for cost in self.costs]
        lp = highspy.HighsLp()
        lp.num_col_, lp.num_row_ = len(self.columns), len(self.lower)
        lp.col_cost_ = np.array(
            [0.0 if bad else cost for cost, bad in zip(self.costs, infinite, strict=True)]
        )
        lp.col_lower_ = np.zeros(len(self.columns))
        lp.col_upper_ = np.array([0.0 if bad else 1.0 for bad in infinite])
        lp.row_lower_, lp.row_upper_ = np.array(self.lower), np.array(self.upper)
        lp.a_matrix_.start_, lp.a_matrix_.index_, lp.a_matrix_.value_ = packed(self.columns)
        kinds = highspy.HighsVarType
        lp.integrality_ = [kinds.kInteger if whole else kinds.kContinuous for whole in self.whole]
        highs.passModel(lp)
        highs.run()
        info = highs.getInfo()
        if info.primal_solution_status != 2:
            raise ValueError("no choice can be had in every setup")
        return list(highs.getSolution().col_value), info.mip_dual_bound, info.objective_function_value

    def choices(self, values: Sequence[float]) -> tuple[tuple[int, ...], ...]:
        """What was chosen, stage by stage."""
        return tuple(
            tuple(
                max(range(size), key=lambda choice: values[self.node[stage, axis, choice]])
                for axis, size in enumerate(self.chain.sizes)
            )
            for stage in range(len(self.chain.stages))
        )
