"""BCa limits of quadratic kappa by scipy on one invented table. Writes kappa-bootstrap.json."""

import json

import numpy
import scipy
from scipy import stats

table = [[12, 4, 0, 0], [5, 10, 4, 0], [0, 4, 9, 3], [0, 0, 2, 7]]
first = numpy.array([i for i, row in enumerate(table) for count in row for _ in range(count)])
second = numpy.array([j for row in table for j, count in enumerate(row) for _ in range(count)])


def kappa(a, b, axis=-1):
    apart = ((a - b) ** 2).mean(axis)
    expected = (a**2).mean(axis) + (b**2).mean(axis) - 2 * a.mean(axis) * b.mean(axis)
    return 1 - apart / expected


result = stats.bootstrap(
    (first, second), kappa, paired=True, vectorized=True, n_resamples=100_000, method="BCa", rng=numpy.random.default_rng(7)
).confidence_interval
with open(__file__.replace(".py", ".json"), "w") as out:
    source = f"scipy {scipy.__version__} stats.bootstrap, BCa, 100,000 resamples"
    json.dump({"source": source, "table": table, "low": result.low, "high": result.high}, out, indent=1)
    out.write("\n")
