"""Agreement by general-purpose Python libraries, on invented tables and readings. Writes agreement-library.json."""

import json
import random

import krippendorff
import numpy
import scipy
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


def alphas(rows):
    data = numpy.array([[numpy.nan if v is None else float(v + 1) for v in row] for row in rows]).T
    return {
        level: krippendorff.alpha(reliability_data=data, level_of_measurement=level)
        for level in ("nominal", "ordinal", "interval", "ratio")
    }


cases = []
for number, (size, n, sharp) in enumerate([(2, 30, 2), (3, 60, 2), (4, 60, 2), (4, 200, 3), (5, 120, 1), (4, 25, 1)], 1):
    counts = table(size, n, sharp)
    cases.append({"number": number, "table": counts, **kappas(counts)})

several = []
for number, (size, images, raters, missing) in enumerate([(4, 40, 3, 0), (4, 60, 5, 0.2), (3, 25, 4, 0.4), (5, 80, 6, 0)], 1):
    rows = readings(size, images, raters, missing)
    case = {"number": number, "grades": size, "readings": rows, "alpha": alphas(rows)}
    if missing == 0:
        case["fleiss"] = inter_rater.fleiss_kappa(inter_rater.aggregate_raters(numpy.array(rows))[0])
    several.append(case)

versions = f"statsmodels {statsmodels.__version__}, scikit-learn {sklearn.__version__}, krippendorff 0.8, numpy {numpy.__version__}"
with open(__file__.replace(".py", ".json"), "w") as out:
    json.dump({"source": versions, "kappa": cases, "several": several}, out, indent=1)
    out.write("\n")
