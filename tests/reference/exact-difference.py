"""Exact unconditional limits of a difference for small groups, by brute force over all tables.

Restricted proportions by bisection of the likelihood's slope, every table listed, 601 second proportions (then 4001 near the
limit), differences in steps of 0.002 from outside in, then halved to 1e-7.
Run: python3 tests/reference/exact-difference.py > tests/reference/exact-difference.json
"""

import json
from math import comb

import numpy as np


def scores(m, n, d):
    a, c = np.meshgrid(np.arange(m + 1.0), np.arange(n + 1.0), indexing="ij")
    low = np.full(a.shape, max(0.0, -d))
    high = np.full(a.shape, min(1.0, 1 - d))
    with np.errstate(all="ignore"):
        for _ in range(60):
            q = (low + high) / 2
            p = q + d
            slope = a / p - (m - a) / (1 - p) + c / q - (n - c) / (1 - q)
            low, high = np.where(slope > 0, q, low), np.where(slope > 0, high, q)
        q = (low + high) / 2
        p = np.clip(q + d, 0, 1)
        return (a / m - c / n - d) / np.sqrt(p * (1 - p) / m + q * (1 - q) / n)


def supremum(m, n, d, rejected, places):
    q = np.linspace(max(0.0, -d), min(1.0, 1 - d), places)
    p = np.clip(q + d, 0, 1)
    first = np.array([comb(m, a) * p**a * (1 - p) ** (m - a) for a in range(m + 1)])
    second = np.array([comb(n, c) * q**c * (1 - q) ** (n - c) for c in range(n + 1)])
    return float((first * (rejected.astype(float) @ second)).sum(axis=0).max())


def lower(a, m, c, n, alpha, both):
    estimate = a / m - c / n
    if estimate == -1:
        return -1.0

    def accepted(d, places):
        z = scores(m, n, d)
        seen = z[a, c]
        rejected = (abs(z) >= abs(seen) * (1 - 1e-8) - 1e-8) if both else (z >= seen - 1e-8 * abs(seen) - 1e-8)
        return supremum(m, n, d, rejected, places) > alpha

    d = -1.0
    while d + 0.002 < estimate and not accepted(d + 0.002, 601):
        d += 0.002
    low, high = max(d - 0.002, -1.0), min(d + 0.002, estimate)
    if d > -1.0 and accepted(d, 4001):  # a finer look overturned the last rejection
        high = d
    else:
        low = d
    while high - low > 1e-7:
        middle = (low + high) / 2
        low, high = (low, middle) if accepted(middle, 4001) else (middle, high)
    return high


def limits(a, m, c, n, level, both):
    alpha = 1 - level if both else (1 - level) / 2
    return {"low": lower(a, m, c, n, alpha, both), "high": -lower(c, n, a, m, alpha, both)}


tables = [(7, 15, 12, 15), (9, 10, 3, 10), (0, 6, 0, 9), (5, 5, 0, 5), (1, 1, 0, 1), (3, 4, 1, 7), (11, 12, 5, 8), (2, 14, 6, 11)]
cases = [
    {
        "first": {"successes": a, "trials": m},
        "second": {"successes": c, "trials": n},
        "level": level,
        "chanZhang": limits(a, m, c, n, level, False),
        "agrestiMin": limits(a, m, c, n, level, True),
    }
    for i, (a, m, c, n) in enumerate(tables)
    for level in ((0.95,), (0.9,))[i % 2]
]
print(json.dumps({"source": "numpy: all tables, dense grids, limits to 1e-6", "cases": cases}, indent=1))
