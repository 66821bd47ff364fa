"""Exact permutation tails of kappa by going through every pairing of two spelled-out gradings. Writes kappa-permutation.json."""

import json
from collections import Counter
from fractions import Fraction
from itertools import permutations

tables = [
    [[3, 0], [0, 3]],
    [[3, 1], [1, 3]],
    [[2, 1, 0], [0, 2, 1], [1, 0, 2]],
    [[1, 2, 0], [2, 1, 0], [0, 1, 2]],
    [[0, 3], [4, 1]],
    [[2, 1, 0, 0], [0, 1, 1, 0], [0, 0, 1, 1], [1, 0, 0, 1]],
]


def tails(table, power):
    size = len(table)
    apart = lambda a, b: 0 if a == b else abs(a - b) ** power
    first = [i for i in range(size) for _ in range(sum(table[i]))]
    second = [j for j in range(size) for _ in range(sum(row[j] for row in table))]
    observed = sum(apart(i, j) * table[i][j] for i in range(size) for j in range(size))
    sums = Counter(sum(map(apart, first, paired)) for paired in permutations(second))
    total = sum(sums.values())
    greater = Fraction(sum(count for value, count in sums.items() if value <= observed), total)
    less = Fraction(sum(count for value, count in sums.items() if value >= observed), total)
    return {"greater": float(greater), "less": float(less)}


cases = [
    {"table": table, **{name: tails(table, power) for name, power in (("unweighted", 0), ("linear", 1), ("quadratic", 2))}}
    for table in tables
]
with open(__file__.replace(".py", ".json"), "w") as out:
    json.dump({"source": "every permutation counted, python fractions", "cases": cases}, out, indent=1)
    out.write("\n")
