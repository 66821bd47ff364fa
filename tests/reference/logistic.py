"""Reference values for logistic regression, plain and Firth-penalised: direct maximisation of the (penalised) log
likelihood in 40-digit arithmetic (mpmath) from a first point found by scipy, limits from the equations that define them. Derivatives of the penalised
likelihood are numerical, so that no formula for its score is taken for granted.
Run: python3 logistic.py > logistic.json
"""
import csv, json, sys
import numpy as np
from scipy.optimize import brentq, minimize
from mpmath import mp, mpf, log, exp, sqrt, matrix, det, findroot

mp.dps = 40
H = mpf(10) ** -14
CHI = mpf("3.84145882069412447634704221854770")  # 0.95 quantile of chi-square, 1 df


def columns(path, names):
    with open(path) as f:
        rows = list(csv.DictReader(f))
    return [[r[n] for n in names] for r in rows]


def fit(x, y, n, penalised):
    p = len(x[0])
    x = [[mpf(v) for v in row] for row in x]

    def pieces(b):
        value, info = mpf(0), matrix(p, p)
        for row, s, t in zip(x, y, n):
            eta = sum(bj * v for bj, v in zip(b, row))
            value += s * eta - t * log(1 + exp(eta))
            w = t * exp(eta) / (1 + exp(eta)) ** 2
            for i in range(p):
                for j in range(p):
                    info[i, j] += w * row[i] * row[j]
        return value, info

    def f(b):
        value, info = pieces(b)
        return value + (log(det(info)) / 2 if penalised else 0)

    def slope(b, j):
        up, down = list(b), list(b)
        up[j] += H
        down[j] -= H
        return (f(up) - f(down)) / (2 * H)

    def solve(equations, start):
        # Newton with a numerical Jacobian; ends when the step is below 1e-22.
        b = [mpf(v) for v in start]
        for _ in range(100):
            value = equations(b)
            jac = matrix(len(b), len(b))
            step = mpf(10) ** -10
            for j in range(len(b)):
                moved = list(b)
                moved[j] += step
                other = equations(moved)
                for i in range(len(b)):
                    jac[i, j] = (other[i] - value[i]) / step
            delta = mp.lu_solve(jac, matrix(value))
            size = max(abs(d) for d in delta)
            damp = min(1, 1 / size)
            b = [v - damp * d for v, d in zip(b, delta)]
            if size < mpf(10) ** -17:
                return b
        raise RuntimeError("no convergence")

    # First points in double precision.
    xf = np.array([[float(v) for v in row] for row in x])
    yf, nf = np.array(y, float), np.array(n, float)
    scale = np.abs(xf).max(axis=0)

    def rough(b):
        eta = xf @ (np.array(b) / scale)
        q = 1 / (1 + np.exp(-eta))
        info = (xf / scale).T @ ((nf * q * (1 - q))[:, None] * (xf / scale))
        value = yf @ eta - nf @ np.logaddexp(0, eta)
        return -(value + (np.linalg.slogdet(info)[1] / 2 if penalised else 0))

    def highest(j=None, at=0.0, start=None):
        keep = [k for k in range(p) if k != j]

        def whole(free):
            b = np.zeros(p)
            b[keep] = free
            if j is not None:
                b[j] = at
            return b

        start = np.zeros(p) if start is None else np.array(start)
        if not keep:
            return whole([])
        done = minimize(lambda free: rough(whole(free)), start[keep], method="BFGS", options={"gtol": 1e-8})
        return whole(done.x)

    first = highest()
    fall = lambda j, at: 2 * (rough(highest(j, at, first)) - rough(first)) - float(CHI)

    def first_limit(j, side):
        far = side
        while fall(j, first[j] + far) < 0:
            far *= 2
        at = brentq(lambda c: fall(j, c), first[j], first[j] + far, xtol=1e-6)
        return highest(j, at, first) / scale

    top = solve(lambda b: [slope(b, j) for j in range(p)], first / scale)
    value, info = pieces(top)
    inverse = info ** -1
    best = f(top)
    out = {
        "estimates": [mp.nstr(v, 17) for v in top],
        "standardErrors": [mp.nstr(sqrt(inverse[j, j]), 17) for j in range(p)],
        "logLikelihood": mp.nstr(best, 17),
        "limits": [],
        "likelihoodRatio": [],
    }
    for j in range(p):
        ends = []
        for side in (-1, 1):
            start = first_limit(j, side)
            rest = [k for k in range(p) if k != j]
            equations = lambda b: [f(b) - best + CHI / 2] + [slope(b, k) for k in rest]
            end = solve(equations, start)
            assert side * (end[j] - top[j]) > 0, (j, side)
            ends.append(mp.nstr(end[j], 17))
        out["limits"].append(ends)
        rest = [k for k in range(p) if k != j]
        if rest:
            def null(free):
                b = list(free[:j]) + [mpf(0)] + list(free[j:])
                return [slope(b, k) for k in rest]
            free = solve(null, [v for k, v in enumerate(highest(j, 0.0, first) / scale) if k != j])
            out["likelihoodRatio"].append(mp.nstr(2 * (best - f(list(free[:j]) + [mpf(0)] + list(free[j:]))), 17))
        else:
            out["likelihoodRatio"].append(mp.nstr(2 * (best - f([mpf(0)])), 17))
    return out


def grouped(rows):
    """rows: successes, trials, covariates..."""
    return [["1"] + [str(v) for v in r[2:]] for r in rows], [r[0] for r in rows], [r[1] for r in rows]


cases = []


def add(name, data, x, y, n, methods):
    for method in methods:
        print(name, method, file=sys.stderr)
        cases.append({"name": name, "data": data, "method": method, **fit(x, y, n, method == "firth")})


e = columns("data/endometrial.csv", ["NV", "PI", "EH", "HG"])
add("endometrial", {"file": "endometrial.csv"}, [["1"] + r[:3] for r in e], [int(r[3]) for r in e], [1] * len(e), ["firth"])
k = columns("data/kyphosis.csv", ["Age", "Number", "Start", "Kyphosis"])
add("kyphosis", {"file": "kyphosis.csv"}, [["1"] + r[:3] for r in k], [int(r[3] == "present") for r in k], [1] * len(k), ["ml", "firth"])
# Invented: closed 1, open 0; grade score; success by technique and grade, of limbs.
demo = [[14, 15, 1, 1], [1, 1, 0, 1], [10, 12, 1, 2], [2, 3, 0, 2], [2, 5, 1, 3], [3, 8, 0, 3]]
add("technique and grade", {"rows": demo}, *grouped(demo), ["ml", "firth"])
separated = [[9, 9, 0, 1], [12, 12, 1, 0], [0, 6, 0, 4], [1, 5, 1, 4]]
add("quasi-separated", {"rows": separated}, *grouped(separated), ["firth"])
complete = [[7, 7, 0], [0, 5, 1]]
add("completely separated", {"rows": complete}, *grouped(complete), ["firth"])
everything = [[20, 20]]
add("all successes", {"rows": everything}, *grouped(everything), ["firth"])

print(json.dumps({"source": "logistic.py, mpmath " + __import__("mpmath").__version__ + ", 40 digits", "cases": cases}, indent=1))
