"""The same plans by a general mixed-integer solver (SCIP through pyscipopt), beside ours in the same run.

Needs Python 3 with pyscipopt. `cargo xtask bench` makes a throwaway environment for it; by hand:
    cargo bench -p bayhand-planner --bench solver | python3 src-tauri/crates/planner/benches/solver.py
Only the solver's own solving time counts, not the making of its model. Exit 1 when any optimum differs.
"""

import json
import statistics
import sys

from pyscipopt import Model, quicksum

# Costs closer than this, relative to one plus the cost, are the same optimum: the solver's own feasibility tolerance.
SAME = 1e-6


def cost_of(problem, steps):
    cost = sum((row["b"] + sum(g * s for g, s in zip(row["g"], steps))) ** 2 for row in problem["rows"])
    cost += problem["per_collar"] * sum(s != 0 for s in steps)
    return cost + problem["per_step"] * sum(abs(s) for s in steps)


def keeps_limits(problem, steps):
    values = (sum(a * s for a, s in zip(limit["a"], steps)) for limit in problem["limits"])
    return all(l["low"] - 1e-6 <= v <= l["high"] + 1e-6 for l, v in zip(problem["limits"], values))


def solve(problem):
    model = Model()
    model.hideOutput()
    model.setParam("limits/gap", 0.0)
    model.setParam("numerics/feastol", 1e-9)
    box = list(zip(problem["low"], problem["high"]))
    s = [model.addVar(vtype="I", lb=low, ub=high) for low, high in box]
    size = [model.addVar(vtype="C", lb=0, ub=max(-low, high)) for low, high in box]
    turned = [model.addVar(vtype="B") for _ in box]
    for i, (low, high) in enumerate(box):
        model.addCons(size[i] >= s[i])
        model.addCons(size[i] >= -s[i])
        model.addCons(s[i] <= high * turned[i])
        model.addCons(s[i] >= low * turned[i])
    for limit in problem["limits"]:
        model.addCons(quicksum(a * v for a, v in zip(limit["a"], s)) <= limit["high"])
        model.addCons(quicksum(a * v for a, v in zip(limit["a"], s)) >= limit["low"])
    squares = model.addVar(vtype="C", lb=0)
    errors = [row["b"] + quicksum(g * v for g, v in zip(row["g"], s)) for row in problem["rows"]]
    model.addCons(squares >= quicksum(e * e for e in errors))
    price = problem["per_collar"] * quicksum(turned) + problem["per_step"] * quicksum(size)
    model.setObjective(squares + price, "minimize")
    model.optimize()
    return model.getStatus(), [round(model.getVal(v)) for v in s] if model.getNSols() else None, model.getSolvingTime()


def main():
    first = json.loads(sys.stdin.readline())
    print(f"seed {first['seed']}, {first['problems']} problems, boxes of 30 steps either way")
    ours, theirs, same, unequal, left_out = [], [], 0, [], 0
    for number, line in enumerate(sys.stdin):
        problem = json.loads(line)
        if not keeps_limits(problem, problem["steps"]):
            # Where limits cannot be kept we answer another question (least violation) than the solver.
            left_out += 1
            continue
        status, steps, seconds = solve(problem)
        ours.append(problem["seconds"])
        theirs.append(seconds)
        here, there = problem["cost"], cost_of(problem, steps) if steps else float("nan")
        if status == "optimal" and keeps_limits(problem, steps) and abs(here - there) <= SAME * (1 + abs(here)):
            same += 1
        else:
            unequal.append((number, status, problem["steps"], here, steps, there))
    print(f"same optimum on {same} of {len(ours)} problems ({left_out} left out: their limits cannot be kept)")
    for case in unequal:
        print("differs:", *case)
    for name, times in (("the solver", theirs), ("ours", ours)):
        print(f"{name:>10}: median {1e6 * statistics.median(times):9.1f} us, worst {1e6 * max(times):9.1f} us")
    here, there = statistics.median(ours), statistics.median(theirs)
    print(f"ratio of the medians: {there / here:.0f}")
    said = f"median {1e6 * here:.1f} us | a general mixed-integer solver | median {1e6 * there:.1f} us"
    print(f"table: a plan, seven wishes: the optimum | {said} | {here / there:.2g} |")
    print(f"table: the same optimum | {same} of {len(ours)} | the solver's | {len(ours)} | {same / len(ours):.3g} | 1")
    sys.exit(1 if unequal else 0)


main()
