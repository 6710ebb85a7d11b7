"""The whole program step by step, for what the columns leave open: is there any arrangement that is better?

Every step of every universe's graph becomes a variable, but for those that the prices exclude: a step whose
best path costs more than the room between the bound and the value to be beaten is in no better arrangement.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, inf
from typing import Any

import numpy as np

from modebook.rig.repatch.graph import Graph
from modebook.rig.repatch.master import FEASIBLE, TOLERANCE, Choice, Column, Master, packed

MOST_STEPS = 40_000
"""More steps than this are not worth the while: HiGHS would spend the time on the first relaxation."""


@dataclass(frozen=True, slots=True)
class Searched:
    """What a search for something better gave."""

    choice: Choice | None
    """Something better; None where nothing was found."""
    bound: float
    """What no arrangement can better, as a whole number."""


def search(master: Master, value: float, seconds: float) -> Searched | None:
    """Look for an arrangement with a smaller objective than `value`; None if the problem is too large."""
    bound, _, prices = master.price()
    room = value - 1 - bound + TOLERANCE * 10
    rows = master.rows
    steps: list[list[int]] = []
    graphs = [rows.graph(place) for place in master.universes]
    for place, graph in enumerate(graphs):
        base = master.cost_of_use(prices) - prices[master.convexity[place]]
        through = graph.through(master.gains(place, prices))
        steps.append([step for step, gain in enumerate(through) if base - gain <= room])
    if sum(map(len, steps)) > MOST_STEPS:
        return None
    highs = master.new_solver(seconds)
    highs.passModel(_model(master, graphs, steps))
    highs.run()
    status = highs.getModelStatus()
    kinds = master.highspy.HighsModelStatus
    if status in (kinds.kInfeasible, kinds.kUnboundedOrInfeasible):
        return Searched(None, value)
    low = highs.getInfo().mip_dual_bound
    whole = ceil(low - TOLERANCE) if low > -1e29 else -inf
    found = highs.getInfo().objective_function_value
    # Steps that only worse arrangements need are left out, but not every worse arrangement is.
    if highs.getInfo().primal_solution_status != FEASIBLE or found > value - 1 + TOLERANCE:
        return Searched(None, min(value, whole))
    return Searched(_read(master, graphs, steps, highs.getSolution().col_value), whole)


def _model(master: Master, graphs: list[Graph], steps: list[list[int]]) -> Any:
    rows, now = master.rows, master.lp.getLp()
    lower, upper = list(now.row_lower_), list(now.row_upper_)
    columns = [list(entries) for entries in rows.columns]
    costs = list(now.col_cost_)[: master.base]
    low, high = list(now.col_lower_)[: master.base], list(now.col_upper_)[: master.base]
    use_cost = master.use_cost
    for place, graph in enumerate(graphs):
        node_row: dict[int, int] = {}
        for step in steps[place]:
            for node in (graph.tails[step], graph.heads[step]):
                if node not in (0, graph.last) and node not in node_row:
                    node_row[node] = len(lower)
                    lower.append(0.0)
                    upper.append(0.0)
        for step in steps[place]:
            tail, head, label = graph.tails[step], graph.heads[step], graph.labels[step]
            entries = list(master.effects[place].get(label, []))
            if tail == 0:
                entries += [(master.convexity[place], 1.0), (rows.wish_row["universes"], 1.0)]
            if tail in node_row:
                entries.append((node_row[tail], 1.0))
            if head in node_row:
                entries.append((node_row[head], -1.0))
            columns.append(entries)
            costs.append(use_cost if tail == 0 else 0.0)
        if not rows.occupied[place]:
            columns.append([(master.convexity[place], 1.0)])
            costs.append(0.0)
    more = len(columns) - master.base
    lp = master.highspy.HighsLp()
    lp.num_col_, lp.num_row_ = len(columns), len(lower)
    lp.col_cost_ = np.array(costs)
    lp.col_lower_, lp.col_upper_ = np.array(low + [0.0] * more), np.array(high + [1.0] * more)
    lp.row_lower_, lp.row_upper_ = np.array(lower), np.array(upper)
    lp.a_matrix_.start_, lp.a_matrix_.index_, lp.a_matrix_.value_ = packed(columns)
    lp.integrality_ = [master.highspy.HighsVarType.kInteger] * len(columns)
    return lp


def _read(master: Master, graphs: list[Graph], steps: list[list[int]], values: Any) -> Choice:
    at = master.base
    columns: list[Column] = []
    for place, graph in enumerate(graphs):
        taken = [step for step, value in zip(steps[place], values[at:], strict=False) if value > 0.5]
        at += len(steps[place]) + (not master.rows.occupied[place])
        columns.append(_column(master, place, graph, taken))
    for column in columns:
        master.add(column)
    return master.choice(tuple(columns), values[: master.base])


def _column(master: Master, place: int, graph: Graph, taken: list[int]) -> Column:
    by_tail = {graph.tails[step]: step for step in taken}
    path: list[int] = []
    node = 0
    while by_tail and node != graph.last:
        path.append(by_tail[node])
        node = graph.heads[by_tail[node]]
    filled = tuple(graph.filled(path))
    return Column(place, filled, bool(filled or master.rows.occupied[place]))
