"""Agreement by general-purpose Python libraries, on invented tables and readings. Writes agreement-library.json.

Alpha, AC1, AC2 and Conger's kappa have no general library here: they are worked out from their definitions in exact fractions.
"""

import json
import random
from collections import Counter
from fractions import Fraction

import numpy
import sklearn
import statsmodels
from sklearn.metrics import cohen_kappa_score
from statsmodels.stats import inter_rater

random.seed(20)


def table(size, n, sharp):
    """Grades of two raters about a common value; the larger `sharp`, the closer they read."""
    counts = [[0] * size for _ in range(size)]
    for _ in range(n):
        true = random.random() * size
        a, b = (min(size - 1, max(0, int(random.gauss(true, 1 / sharp)))) for _ in range(2))
        counts[a][b] += 1
    return counts


def kappas(counts):
    array = numpy.array(counts)
    first = [i for i, row in enumerate(counts) for count in row for _ in range(count)]
    second = [j for row in counts for j, count in enumerate(row) for _ in range(count)]
    result = {}
    for name, wt, sk in (("unweighted", None, None), ("linear", "linear", "linear"), ("quadratic", "quadratic", "quadratic")):
        fitted = inter_rater.cohens_kappa(array, wt=wt)
        other = cohen_kappa_score(first, second, weights=sk)
        assert abs(fitted.kappa - other) < 1e-12, (name, fitted.kappa, other)
        result[name] = {
            "kappa": fitted.kappa,
            "standardError": fitted.std_kappa,
            "nullStandardError": fitted.std_kappa0,
        }
    return result


def readings(size, images, raters, missing):
    rows = []
    for _ in range(images):
        true = random.random() * size
        row = [min(size - 1, max(0, int(random.gauss(true, 0.6)))) for _ in range(raters)]
        rows.append([None if random.random() < missing else grade for grade in row])
    return rows


def alpha(rows, metric):
    units = [[v + 1 for v in row if v is not None] for row in rows]
    units = [unit for unit in units if len(unit) >= 2]
    values = [v for unit in units for v in unit]
    totals = Counter(values)

    def apart(a, b):
        if a == b:
            return Fraction(0)
        if metric == "nominal":
            return Fraction(1)
        if metric == "interval":
            return Fraction(a - b) ** 2
        if metric == "ratio":
            return Fraction(a - b, a + b) ** 2
        low, high = min(a, b), max(a, b)
        between = sum(totals[v] for v in range(low, high + 1))
        return (between - Fraction(totals[a] + totals[b], 2)) ** 2

    observed = sum(
        sum(apart(a, b) for i, a in enumerate(unit) for j, b in enumerate(unit) if i != j) / (len(unit) - 1)
        for unit in units
    ) / len(values)
    expected = Fraction(sum(apart(a, b) * totals[a] * totals[b] for a in totals for b in totals)) / (
        len(values) * (len(values) - 1)
    )
    return float(1 - observed / expected)


def alphas(rows):
    return {metric: alpha(rows, metric) for metric in ("nominal", "ordinal", "interval", "ratio")}


def weights(size, name):
    power = {"unweighted": 0, "linear": 1, "quadratic": 2}[name]
    apart = [[0 if i == j else abs(i - j) ** power for j in range(size)] for i in range(size)]
    largest = max(max(row) for row in apart)
    return [[1 - Fraction(d, largest) for d in row] for row in apart]


def gwet(rows, size, name):
    """AC1 and AC2 as defined by Gwet 2014: shares over all units read, agreement over pairs of readings of one unit."""
    w = weights(size, name)
    units = [[v for v in row if v is not None] for row in rows]
    units = [unit for unit in units if unit]
    shares = [sum(Fraction(unit.count(k), len(unit)) for unit in units) / len(units) for k in range(size)]
    paired = [unit for unit in units if len(unit) >= 2]
    observed = sum(
        sum(w[a][b] for i, a in enumerate(unit) for j, b in enumerate(unit) if i != j) / (len(unit) * (len(unit) - 1))
        for unit in paired
    ) / len(paired)
    chance = sum(map(sum, w)) * sum(s * (1 - s) for s in shares) / (size * (size - 1))
    return float((observed - chance) / (1 - chance))


def conger(rows, size, name):
    w = weights(size, name)
    raters = len(rows[0])
    observed = chance = Fraction(0)
    for g in range(raters):
        for h in range(g):
            observed += sum(w[row[g]][row[h]] for row in rows) / Fraction(len(rows))
            first, second = Counter(row[g] for row in rows), Counter(row[h] for row in rows)
            chance += sum(w[a][b] * first[a] * second[b] for a in first for b in second) / Fraction(len(rows) ** 2)
    pairs = raters * (raters - 1) // 2
    return float((observed / pairs - chance / pairs) / (1 - chance / pairs))


cases = []
for number, (size, n, sharp) in enumerate([(2, 30, 2), (3, 60, 2), (4, 60, 2), (4, 200, 3), (5, 120, 1), (4, 25, 1)], 1):
    counts = table(size, n, sharp)
    cases.append({"number": number, "table": counts, **kappas(counts)})

several = []
for number, (size, images, raters, missing) in enumerate([(4, 40, 3, 0), (4, 60, 5, 0.2), (3, 25, 4, 0.4), (5, 80, 6, 0)], 1):
    rows = readings(size, images, raters, missing)
    case = {"number": number, "grades": size, "readings": rows, "alpha": alphas(rows)}
    case["gwet"] = {name: gwet(rows, size, name) for name in ("unweighted", "linear", "quadratic")}
    if missing == 0:
        case["conger"] = {name: conger(rows, size, name) for name in ("unweighted", "linear", "quadratic")}
        case["fleiss"] = inter_rater.fleiss_kappa(inter_rater.aggregate_raters(numpy.array(rows))[0])
    several.append(case)

versions = f"statsmodels {statsmodels.__version__}, scikit-learn {sklearn.__version__}, numpy {numpy.__version__}"
with open(__file__.replace(".py", ".json"), "w") as out:
    json.dump({"source": versions, "kappa": cases, "several": several}, out, indent=1)
    out.write("\n")
