"""Solves cut tasks with HiGHS as arc-flow models; reads and writes one JSON document.

Valerio de Carvalho, "Exact solution of bin-packing problems using column generation and branch-and-bound",
Annals of Operations Research 86 (1999): a cut is a path through positions along a stock length, a piece an arc.
"""

import json
import math
import sys
import time

import highspy

LIMIT_S = float(sys.argv[1])
# Models beyond this take minutes to be put together.
MOST_ARCS = 12_000
# Lengths are exact to this: a 1/32 in is 31750 of them.
STEP_MM = 25e-6


def solve(task):
    grid = [round((length + task["kerf"]) / STEP_MM) for length, _ in task["pieces"]]
    room = [
        round((length - task["end_trim"] + task["kerf"]) * (1 + 1e-6) / STEP_MM)
        for length, _, _ in task["stock"]
    ]
    step = math.gcd(*grid)
    kinds = sorted(zip([g // step for g in grid], [count for _, count in task["pieces"]]), reverse=True)
    room = [r // step for r in room]
    priced = any(price is not None for _, price, _ in task["stock"])
    cost = [price if priced else length for length, price, _ in task["stock"]]

    # Positions that pieces reach, longest first.
    arcs = set()
    reached = {0}
    for index, (weight, count) in enumerate(kinds):
        if len(arcs) + len(reached) > MOST_ARCS:
            return {"name": task["name"], "seconds": None, "cost": None, "bound": None, "proved": False}
        starts = set(reached)
        for start in starts:
            for copies in range(min(count, (max(room) - start) // weight)):
                arcs.add((start + copies * weight, start + (copies + 1) * weight, index))
                reached.add(start + (copies + 1) * weight)
    nodes = sorted(reached)
    model = highspy.Highs()
    model.setOptionValue("output_flag", False)
    model.setOptionValue("time_limit", LIMIT_S)
    model.setOptionValue("threads", 1)
    model.setOptionValue("mip_rel_gap", 0.0)
    # One row a position: what comes in goes on, or ends in a stock length.
    rows = {node: row for row, node in enumerate(nodes)}
    demand = len(nodes)
    for _ in nodes:
        model.addRow(0.0, 0.0, 0, [], [])
    for _, count in kinds:
        model.addRow(float(count), highspy.kHighsInf, 0, [], [])
    start = time.perf_counter()
    for a, b, kind in sorted(arcs):
        model.addCol(0.0, 0.0, float(kinds[kind][1]), 3, [rows[a], rows[b], demand + kind], [-1.0, 1.0, 1.0])
    columns = len(arcs)
    most = float(sum(count for _, count in kinds))
    for length, price, (_, _, available) in zip(room, cost, task["stock"]):
        model.addRow(0.0, most if available is None else float(available), 0, [], [])
        limit = demand + len(kinds) + room.index(length)
        for node in nodes:
            if 0 < node <= length:
                model.addCol(price, 0.0, most, 3, [rows[0], rows[node], limit], [1.0, -1.0, 1.0])
                columns += 1
    model.changeColsIntegrality(
        columns, list(range(columns)), [highspy.HighsVarType.kInteger] * columns
    )
    model.run()
    info = model.getInfo()
    found = info.primal_solution_status == 2
    return {
        "name": task["name"],
        "seconds": time.perf_counter() - start,
        "cost": info.objective_function_value if found else None,
        "bound": info.mip_dual_bound,
        "proved": model.getModelStatus() == highspy.HighsModelStatus.kOptimal,
    }


# The solver greets on the same way out: the answer is the last line.
answer = json.dumps([solve(task) for task in json.load(sys.stdin)])
print()
print(answer)
