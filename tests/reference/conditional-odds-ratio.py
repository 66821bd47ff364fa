"""Conditional odds ratios with exact and mid-P limits to 25 digits, from the equations that define them.

Run: python3 tests/reference/conditional-odds-ratio.py > tests/reference/conditional-odds-ratio.json
"""

import json
import random
from math import comb, log

from mpmath import exp, findroot, inf, log as mplog, mp, mpf, nstr, polyval

mp.dps = 50


def limits(a, m, c, n, level):
    k = a + c
    low, high = max(0, k - n), min(m, k)
    weights = [mpf(comb(m, y) * comb(n, k - y)) for y in range(low, high + 1)]
    at = a - low
    tail = (1 - mpf(level)) / 2

    def total(ws, psi):
        return polyval(ws[::-1], psi)

    def share(ws, psi):
        return total(ws, psi) / total(weights, psi)

    def half_own(ws, own):
        return [w / 2 if y == own else w for y, w in enumerate(ws)]

    def root(f):
        x0 = log((a + 0.5) * (n - c + 0.5) / ((m - a + 0.5) * (c + 0.5)))
        lo, hi = x0 - 1, x0 + 1
        while f(mpf(lo)) > 0:
            lo -= 2
        while f(mpf(hi)) < 0:
            hi += 2
        return exp(findroot(f, (mpf(lo), mpf(hi)), solver="anderson", tol=1e-70, maxsteps=500))

    def lower(half):
        ws = [w if y >= at else mpf(0) for y, w in enumerate(weights)]
        ws = half_own(ws, at) if half else ws
        return mpf(0) if a == low else root(lambda t: mplog(share(ws, exp(t))) - mplog(tail))

    def upper(half):
        ws = [w if y <= at else mpf(0) for y, w in enumerate(weights)]
        ws = half_own(ws, at) if half else ws
        return inf if a == high else root(lambda t: mplog(tail) - mplog(share(ws, exp(t))))

    def estimate():
        if a in (low, high):
            return mpf(0) if a == low else inf
        moments = [(y - at) * w for y, w in enumerate(weights)]
        return root(lambda t: share(moments, exp(t)))

    def show(value):
        return "Infinity" if value == inf else nstr(value, 25)

    return {
        "first": {"successes": a, "trials": m},
        "second": {"successes": c, "trials": n},
        "level": level,
        "estimate": show(estimate()),
        "exact": {"low": show(lower(False)), "high": show(upper(False))},
        "midP": {"low": show(lower(True)), "high": show(upper(True))},
    }


def tables():
    fixed = [(21, 23, 15, 18), (7, 34, 1, 34), (35, 40, 7, 11), (10, 10, 0, 10), (1, 1, 0, 1), (0, 5, 3, 6), (5, 5, 3, 6), (3, 4, 1, 4)]
    fixed += [(999, 1000, 1, 1000), (1, 1000, 3, 700), (500, 900, 480, 1000), (189, 1034, 104, 1037), (3, 4, 600, 1500)]
    rng = random.Random(20261124)
    for top, count in ((12, 40), (80, 50), (400, 20)):
        for _ in range(count):
            m, n = rng.randint(1, top), rng.randint(1, top)
            a, c = rng.randint(0, m), rng.randint(0, n)
            if 0 < a + c < m + n:
                fixed.append((a, m, c, n))
    return fixed


cases = [limits(*table, level) for i, table in enumerate(tables()) for level in ((0.95,), (0.8, 0.999), (0.5,))[i % 3]]
print(json.dumps({"source": "mpmath 1.3, 50 digits: roots of the tail and mean equations of the noncentral hypergeometric distribution", "cases": cases}, indent=1))
