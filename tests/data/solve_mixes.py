"""An independent solver for mixes of pitches: scipy asks for runs, the tests answer.

Spoken to by tests/mix_elsewhere.rs through pipes, one line at a time, with Python 3.11 and scipy 1.17:

    -> {"caps": [...], "fastballs": [...], "fastball_floor": f, "breaking": [...], "breaking_cap": f}
    <- ? share share ...            asks for the runs of a mix
    -> runs
    <- = share share ...            the best mix found

Nothing of the model is here: no slopes and no table, only runs. SLSQP with numerical slopes starts
from every corner the bounds leave (softened) and from random mixes; the best is then polished by
trust-constr, an interior-point method. What is kept keeps every bound to 1e-9.
"""

import json
import sys

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, minimize

RANDOM_STARTS = 10
SCALE = 1000  # runs per pitch are about 0.03; the methods like numbers near one


def ask(mix):
    print("?", *(f"{share:.17g}" for share in mix), flush=True)
    return float(sys.stdin.readline())


def solve(problem, draw):
    caps = np.array(problem["caps"], dtype=float)
    fastballs, breaking = (np.array(problem[name], dtype=float) for name in ("fastballs", "breaking"))
    floor, ceiling = problem["fastball_floor"], problem["breaking_cap"]
    count = len(caps)

    def runs(mix):
        mix = np.clip(mix, 0, None)
        return SCALE * ask(mix / mix.sum())

    rules = [
        {"type": "eq", "fun": lambda m: m.sum() - 1},
        {"type": "ineq", "fun": lambda m: fastballs @ m - floor},
        {"type": "ineq", "fun": lambda m: ceiling - breaking @ m},
    ]
    box = Bounds(0, caps)
    starts = [0.7 * np.eye(count)[k] + 0.3 / count for k in range(count)]
    starts += list(draw.dirichlet(np.ones(count), RANDOM_STARTS))
    options = {"ftol": 1e-10, "eps": 1e-5, "maxiter": 200}
    found = [minimize(runs, np.minimum(s, caps), method="SLSQP", bounds=box, constraints=rules, options=options)
             for s in starts]

    def broken(mix):
        return max(abs(mix.sum() - 1), floor - fastballs @ mix, breaking @ mix - ceiling, (mix - caps).max(), -mix.min())

    allowed = [f.x for f in found if broken(f.x) < 1e-7]
    best = min(allowed, key=runs)
    rows = LinearConstraint(np.array([np.ones(count), fastballs, breaking]), [1, floor, -np.inf], [1, np.inf, ceiling])
    polished = minimize(runs, best, method="trust-constr", jac="3-point", bounds=box, constraints=rows,
                        options={"gtol": 1e-7, "xtol": 1e-9, "maxiter": 300, "finite_diff_rel_step": 1e-5}).x
    if broken(polished) < 1e-7 and runs(polished) < runs(best):
        best = polished
    return np.clip(best, 0, None) / np.clip(best, 0, None).sum()


def main():
    draw = np.random.default_rng(50)
    for line in iter(sys.stdin.readline, ""):
        print("=", *(f"{share:.10g}" for share in solve(json.loads(line), draw)), flush=True)


if __name__ == "__main__":
    sys.exit(main())
