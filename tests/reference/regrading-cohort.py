# Writes regrading-cohort.json: what the readings of the invented cohort say of its grades, by exact sums (fractions) and
# the normal distribution of mpmath at 40 digits. Run from this folder: python3 regrading-cohort.py
import csv
import json
from fractions import Fraction as F
from pathlib import Path

import mpmath as mp

mp.mp.dps = 40
CUTS = [10, 33, 67]
rows = list(csv.DictReader(open(Path(__file__).parents[2] / "data-demo/cohort.csv", encoding="utf-8-sig")))
observers = [["Displacement A1", "Displacement A2"], ["Displacement B1", "Displacement B2"]]


def sem(table):
    """Two-way random, absolute agreement: variance of raters and residual (McGraw and Wong 1996, Table 2)."""
    n, k = len(table), len(table[0])
    grand = sum(map(sum, table)) / (n * k)
    row = [sum(r) / k for r in table]
    col = [sum(r[j] for r in table) / n for j in range(k)]
    raters = n * sum((c - grand) ** 2 for c in col) / (k - 1)
    rest = sum((table[i][j] - row[i] - col[j] + grand) ** 2 for i in range(n) for j in range(k)) / ((n - 1) * (k - 1))
    return mp.sqrt(mp.mpf((max(raters - rest, F(0)) / n + rest).numerator) / (max(raters - rest, F(0)) / n + rest).denominator)


def first(row, columns):
    """An observer's first reading, None where there is none."""
    return next((F(row[c]) for c in columns if row[c].strip()), None)


firsts = [[first(r, columns) for columns in observers] for r in rows]
read = [values for values in firsts if None not in values]
error = sem(read)
analysed = [
    r
    for r in rows
    if r["Excluded because"] == "none" and r["Last review"] != "lost" and r["Displacement at union (%)"].strip()
]
value = [F(r["Displacement (% of width)"]) for r in analysed]
technique = [r["First technique"] for r in analysed]
success = [
    F(r["Displacement at union (%)"]) <= 33 and not (r["First technique"] == "closed" != r["Final technique"])
    for r in analysed
]


def place(v, cuts=CUTS):
    return sum(v > c for c in cuts)


def chances(v, sd):
    x = mp.mpf(v.numerator) / v.denominator
    ends = [mp.ncdf((c - x) / sd) for c in CUTS]
    return [b - a for a, b in zip([mp.mpf(0)] + ends, ends + [mp.mpf(1)])]


def count_of(ps):
    mass = [mp.mpf(1)]
    for p in ps:
        mass = [a * (1 - p) + b * p for a, b in zip(mass + [0], [0] + mass)]
    return mass


def inverse(pairs, p):
    total = mp.mpf(0)
    for x, mass in sorted(pairs):
        total += mass
        if total >= p:
            return x


def changed(sd):
    each = [1 - chances(v, sd)[place(v)] for v in value]
    mass = list(enumerate(count_of(each)))
    return {
        "each": [float(p) for p in each],
        "expected": float(sum(each)),
        "range": [inverse(mass, mp.mpf("0.025")), inverse(mass, mp.mpf("0.975"))],
    }


def simulated(grade):
    """Exact quantiles of the cases in a grade and of their share of successes over all gradings."""
    won = count_of([chances(v, error)[grade] for v, s in zip(value, success) if s])
    lost = count_of([chances(v, error)[grade] for v, s in zip(value, success) if not s])
    cases, share = {}, {}
    for a, p in enumerate(won):
        for b, q in enumerate(lost):
            cases[a + b] = cases.get(a + b, 0) + p * q
            if a + b:
                share[F(a, a + b)] = share.get(F(a, a + b), 0) + p * q
    whole = sum(share.values())
    at = [mp.mpf("0.025"), mp.mpf("0.5"), mp.mpf("0.975")]
    return {
        "cases": [inverse(cases.items(), p) for p in at],
        "share": [float(inverse(share.items(), p * whole)) for p in at],
    }


def trend(grades):
    mean = F(sum(grades), len(grades))
    return sum(g - mean for g, s in zip(grades, success) if s)


def comparison(grades):
    """Numerator of the Mantel-Haenszel difference, closed less open."""
    total = F(0)
    for grade in set(grades):
        a = [s for g, t, s in zip(grades, technique, success) if g == grade and t == "closed"]
        b = [s for g, t, s in zip(grades, technique, success) if g == grade and t == "open"]
        if a and b:
            total += F(sum(a) * len(b) - sum(b) * len(a), len(a) + len(b))
    return total


def sign(x):
    return (x > 0) - (x < 0)


def first_turn(of, cut):
    """Cut moved in steps of a quarter (measurements are whole): last measurement reached when the sign turns."""
    low, high = ([0] + CUTS + [200])[cut], ([0] + CUTS + [200])[cut + 2]
    here = sign(of([place(v) for v in value]))

    def at(c):
        return sign(of([place(v, CUTS[:cut] + [c] + CUTS[cut + 1 :]) for v in value]))

    c = F(CUTS[cut])
    up = down = None
    while up is None and (c := c + F(1, 4)) < high:
        up = int(c) if at(c) != here else None
    c = F(CUTS[cut])
    while down is None and (c := c - F(1, 4)) > low:
        down = int(c) + 1 if at(c) != here else None
    return {"down": down, "up": up}


json.dump(
    {
        "source": f"fractions of Python, normal distribution of mpmath {mp.__version__} at 40 digits; see regrading-cohort.py",
        "error": float(error),
        "radiographs": len(read),
        "ids": [r["ID"] for r in analysed],
        "trueValue": changed(error),
        "anotherReading": changed(mp.sqrt(2) * error),
        "near": sorted(
            r["ID"] for r, v in zip(analysed, value) if min(abs(mp.mpf(int(v)) - c) for c in CUTS) <= mp.mpf("1.96") * error
        ),
        "simulated": [simulated(g) for g in range(4)],
        "trend": [first_turn(trend, k) for k in range(3)],
        "comparison": [first_turn(comparison, k) for k in range(3)],
    },
    open(Path(__file__).with_suffix(".json"), "w"),
    indent=1,
)
