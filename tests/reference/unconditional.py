"""Boschloo's and Barnard's p values: tables ordered in exact rationals, the maximum over a dense grid refined to 20 digits.

Run: python3 tests/reference/unconditional.py > tests/reference/unconditional.json
"""

import json
import random
from fractions import Fraction
from math import comb

import numpy
from mpmath import mp, mpf, nstr, polyval

mp.dps = 30
SIDES = ("twoSided", "less", "greater")


def fisher(m, n):
    """Fisher's p of every table, exactly: side -> (a, c) -> Fraction."""
    p = {side: {} for side in SIDES}
    for k in range(m + n + 1):
        cells = range(max(0, k - n), min(m, k) + 1)
        ways = {x: comb(m, x) * comb(n, k - x) for x in cells}
        total = comb(m + n, k)
        for a in cells:
            p["twoSided"][a, k - a] = Fraction(sum(w for w in ways.values() if w * 10**7 <= ways[a] * (10**7 + 1)), total)
            p["less"][a, k - a] = Fraction(sum(w for x, w in ways.items() if x <= a), total)
            p["greater"][a, k - a] = Fraction(sum(w for x, w in ways.items() if x >= a), total)
    return p


def pooled(m, n):
    """Sign and square of the pooled z of every table, exactly, as one signed number; as what is extreme when small."""
    z = {}
    for a in range(m + 1):
        for c in range(n + 1):
            k, d = a + c, a * n - c * m
            z[a, c] = Fraction(0) if d == 0 else Fraction(d * abs(d), k * (m + n - k))
    return {"twoSided": {t: -abs(v) for t, v in z.items()}, "less": z, "greater": {t: -v for t, v in z.items()}}


def supremum(m, n, tables):
    counts = [0] * (m + n + 1)
    for a, c in tables:
        counts[a + c] += comb(m, a) * comb(n, c)
    if len(tables) == (m + 1) * (n + 1):
        return "1"
    total = m + n
    share = numpy.array([float(Fraction(w, comb(total, s))) for s, w in enumerate(counts)])
    binomial = numpy.array([float(comb(total, s)) for s in range(total + 1)])
    grid = (1 - numpy.cos(numpy.linspace(0, numpy.pi, 2001))) / 2
    powers = numpy.array([grid**s * (1 - grid) ** (total - s) * binomial[s] for s in range(total + 1)])
    values = share @ powers

    def exact(x):
        return polyval(counts[::-1], x / (1 - x)) * (1 - x) ** total if x < 1 else mpf(counts[-1])

    best = max(exact(mpf(0)), exact(mpf(1)))
    for i in range(1, len(grid) - 1):
        if values[i] >= values[i - 1] and values[i] >= values[i + 1] and values[i] > values.max() * (1 - 1e-5):
            low, high = mpf(grid[i - 1]), mpf(grid[i + 1])
            for _ in range(56):  # thirds: the value is flat at its top, so 1e-10 in place is 1e-20 in value
                one, two = low + (high - low) / 3, high - (high - low) / 3
                if exact(one) < exact(two):
                    low = one
                else:
                    high = two
            best = max(best, exact((low + high) / 2))
    return nstr(best, 20)


def cases():
    rng = random.Random(1970)
    tables = [(7, 15, 12, 15), (7, 34, 1, 34), (9, 10, 3, 10), (3, 4, 1, 4), (5, 5, 0, 5), (35, 40, 7, 11), (21, 23, 15, 18), (2, 2, 0, 1), (1, 1, 0, 1), (0, 6, 0, 9), (8, 12, 6, 9)]
    tables += [(30, 50, 20, 45)]
    for top, count in ((8, 25), (16, 22), (30, 4)):
        for _ in range(count):
            m, n = rng.randint(1, top), rng.randint(1, top)
            tables.append((rng.randint(0, m), m, rng.randint(0, n), n))
    for a, m, c, n in tables:
        orders = {"boschloo": fisher(m, n), "barnard": pooled(m, n)}
        row = {"first": {"successes": a, "trials": m}, "second": {"successes": c, "trials": n}}
        for name, order in orders.items():
            row[name] = {
                side: supremum(m, n, [t for t, v in order[side].items() if v <= order[side][a, c]]) for side in SIDES
            }
        yield row


print(json.dumps({"source": "Python fractions and mpmath 1.3: exact order of tables, 2001-point search refined to 20 digits", "cases": list(cases())}, indent=1))
