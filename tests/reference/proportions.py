"""Writes proportions.json: limits of every interval for one proportion, coverage and predictive chances, 40 digits.

Each limit solves the equation that defines it (sums of binomial masses, no beta function); Blaker's limits come from a
scan of the acceptability function from outside in. Run: python3 proportions.py
"""
import json
from pathlib import Path
from mpmath import mp, mpf, binomial, erfinv, exp, findroot, log, sqrt, beta as beta_function

mp.dps = 40


def mass(k, n, p):
    return binomial(n, k) * p**k * (1 - p) ** (n - k)


def at_most(k, n, p):
    return sum((mass(j, n, p) for j in range(0, k + 1)), mpf(0))


def at_least(k, n, p):
    return sum((mass(j, n, p) for j in range(k, n + 1)), mpf(0))


def solve(f, low, high):
    """Root by bisection to 12 digits, then by the secant method to 35."""
    sign = f(low) > 0
    for _ in range(24):
        middle = (low + high) / 2
        if (f(middle) > 0) == sign:
            low = middle
        else:
            high = middle
    return findroot(f, (low, high), solver="anderson", tol=mpf(10) ** -70, maxsteps=200, verify=False)


tiny = mpf(10) ** -30


def exact(x, n, tail):
    low = mpf(0) if x == 0 else solve(lambda p: at_least(x, n, p) - tail, tiny, 1 - tiny)
    high = mpf(1) if x == n else solve(lambda p: at_most(x, n, p) - tail, tiny, 1 - tiny)
    return low, high


def mid_p(x, n, tail):
    low = mpf(0) if x == 0 else solve(lambda p: at_least(x, n, p) - mass(x, n, p) / 2 - tail, tiny, 1 - tiny)
    high = mpf(1) if x == n else solve(lambda p: at_most(x, n, p) - mass(x, n, p) / 2 - tail, tiny, 1 - tiny)
    return low, high


def likelihood(x, n, z):
    estimate = mpf(x) / n
    value = lambda p: (x * log(p) if x else 0) + ((n - x) * log(1 - p) if n - x else 0)
    top = 0 if x in (0, n) else value(estimate)
    f = lambda p: 2 * (top - value(p)) - z**2
    low = mpf(0) if x == 0 else solve(f, tiny, estimate if x < n else 1 - tiny)
    high = mpf(1) if x == n else solve(f, estimate if x > 0 else tiny, 1 - tiny)
    return low, high


def jeffreys(x, n, tail):
    from mpmath import betainc

    a, b = x + mpf(1) / 2, n - x + mpf(1) / 2
    f = lambda p: betainc(a, b, 0, p, regularized=True)
    low = mpf(0) if x == 0 else solve(lambda p: f(p) - tail, tiny, 1 - tiny)
    high = mpf(1) if x == n else solve(lambda p: f(p) - (1 - tail), tiny, 1 - tiny)
    return low, high


def acceptability(x, n, p):
    masses = [mass(k, n, p) for k in range(n + 1)]
    left, right = sum(masses[: x + 1]), sum(masses[x:])
    if left < right:
        other = max((sum(masses[k:]) for k in range(n + 2) if sum(masses[k:]) <= left), default=mpf(0))
        return min(mpf(1), left + other)
    other = max((sum(masses[: k + 1]) for k in range(-1, n + 1) if sum(masses[: k + 1]) <= right), default=mpf(0))
    return min(mpf(1), right + other)


def first_accepted(x, n, alpha, outer, inner):
    points = 300
    before = outer
    for i in range(points + 1):
        at = outer + (inner - outer) * i / points
        if acceptability(x, n, at) >= alpha:
            good, bad = at, before
            for _ in range(60):
                middle = (good + bad) / 2
                if acceptability(x, n, middle) >= alpha:
                    good = middle
                else:
                    bad = middle
            return good
        before = at
    return inner


def blaker(x, n, alpha):
    outer, inner = exact(x, n, alpha / 2), exact(x, n, alpha)
    low = mpf(0) if x == 0 else first_accepted(x, n, alpha, outer[0], inner[0])
    high = mpf(1) if x == n else first_accepted(x, n, alpha, outer[1], inner[1])
    return low, high


def closed_forms(x, n, z):
    p = mpf(x) / n
    q = 1 - p
    centre, denominator = 2 * x + z**2, 2 * (n + z**2)
    half = z * sqrt(z**2 + 4 * n * p * q)
    low = 0 if x == 0 else (centre - 1 - z * sqrt(z**2 - 2 - mpf(1) / n + 4 * p * (n * q + 1))) / denominator
    high = 1 if x == n else (centre + 1 + z * sqrt(z**2 + 2 - mpf(1) / n + 4 * p * (n * q - 1))) / denominator
    n_tilde = n + z**2
    p_tilde = (x + z**2 / 2) / n_tilde
    width = z * sqrt(p_tilde * (1 - p_tilde) / n_tilde)
    wald = z * sqrt(p * q / n)
    return {
        "wilson": (mpf(0) if x == 0 else (centre - half) / denominator, mpf(1) if x == n else (centre + half) / denominator),
        "wilsonContinuity": (mpf(low), mpf(high)),
        "agrestiCoull": (p_tilde - width, p_tilde + width),
        "wald": (p - wald, p + wald),
        "waldContinuity": (p - wald - mpf(1) / (2 * n), p + wald + mpf(1) / (2 * n)),
    }


def intervals(x, n, level, with_blaker):
    alpha = 1 - mpf(level)
    z = sqrt(mpf(2)) * erfinv(mpf(level))
    found = closed_forms(x, n, z)
    found["clopperPearson"] = exact(x, n, alpha / 2)
    found["midP"] = mid_p(x, n, alpha / 2)
    found["jeffreys"] = jeffreys(x, n, alpha / 2)
    found["likelihoodRatio"] = likelihood(x, n, z)
    if with_blaker:
        found["blaker"] = blaker(x, n, alpha)
    return found


def digits(value):
    return float(mp.nstr(value, 20))


def counts(n):
    return sorted({0, 1, 2, n // 4, n // 2, (9 * n) // 10, n - 1, n} & set(range(n + 1)))


cases = []
for n in (1, 2, 3, 5, 10, 20, 23, 64, 137, 200):
    for x in counts(n):
        for level in (0.95,) if n not in (3, 20, 137) else (0.5, 0.8, 0.9, 0.95, 0.99, 0.9999):
            found = intervals(x, n, level, n <= 20)
            cases.append({"successes": x, "trials": n, "level": level, **{k: [digits(a), digits(b)] for k, (a, b) in found.items()}})
            print(n, x, level, flush=True)

coverage = []
for n, level in ((10, 0.95), (17, 0.9)):
    limits = {x: intervals(x, n, level, False) for x in range(n + 1)}
    for p in (0.05, 0.2, 0.5, 0.83):
        for method in ("wald", "wilson", "clopperPearson", "jeffreys"):
            inside = [x for x in range(n + 1) if limits[x][method][0] <= mpf(p) <= limits[x][method][1]]
            cut = {x: min(1, limits[x][method][1]) - max(0, limits[x][method][0]) for x in range(n + 1)}
            coverage.append({
                "trials": n, "level": level, "proportion": p, "method": method,
                "coverage": digits(sum(mass(x, n, mpf(p)) for x in inside)),
                "width": digits(sum(mass(x, n, mpf(p)) * cut[x] for x in range(n + 1))),
            })

next_cases = []
for x, n, m in ((6, 11, 20), (0, 9, 5), (42, 51, 30)):
    for prior, w in (("jeffreys", mpf(1) / 2), ("uniform", mpf(1))):
        a, b = x + w, n - x + w
        chances = [binomial(m, k) * beta_function(k + a, m - k + b) / beta_function(a, b) for k in range(m + 1)]
        next_cases.append({"successes": x, "trials": n, "next": m, "prior": prior, "probabilities": [digits(c) for c in chances]})

out = {
    "source": "mpmath 1.3, 40 digits, each limit from the equation that defines it (proportions.py)",
    "intervals": cases,
    "coverage": coverage,
    "nextCases": next_cases,
}
rows = lambda values: "[\n" + ",\n".join(json.dumps(v) for v in values) + "\n]"
text = "{\n" + ",\n".join(f'"{k}": {json.dumps(v) if isinstance(v, str) else rows(v)}' for k, v in out.items()) + "\n}\n"
Path(__file__).with_suffix(".json").write_text(text)
