"""Score limits of a difference (Miettinen-Nurminen), of a ratio (Koopman) and of a paired difference (Tango) to 20 digits.

The restricted likelihood is maximised by comparing all roots of its polynomial, not by a closed form.
Run: python3 tests/reference/score-limits.py > tests/reference/score-limits.json
"""

import json
import random

from mpmath import erfinv, inf, log, mp, mpf, nstr, polyroots, sqrt

mp.dps = 40


def quantile(level):
    return sqrt(2) * erfinv(mpf(level))


def likeliest(coefficients, loglik, low, high):
    """The root of the polynomial, or the end of the range, where the likelihood is largest."""
    while coefficients and coefficients[0] == 0:
        coefficients = coefficients[1:]
    roots = [r.real for r in polyroots(coefficients, maxsteps=500, extraprec=200) if abs(r.imag) < mpf(10) ** -15]
    inside = [min(max(r, low), high) for r in roots if low - mpf(10) ** -15 <= r <= high + mpf(10) ** -15]
    return max(inside + [low, high], key=loglik)


def xlog(count, p):
    return mpf(0) if count == 0 else (-inf if p <= 0 else count * log(p))


def ratio_to(above, variance):
    return mpf(0) if above == 0 else (above / sqrt(variance) if variance > 0 else (inf if above > 0 else -inf))


def difference_score(a, m, c, n, d):
    low, high = max(mpf(0), -d), min(mpf(1), 1 - d)

    def loglik(p):
        return xlog(a, p + d) + xlog(m - a, 1 - p - d) + xlog(c, p) + xlog(n - c, 1 - p)

    total = m + n
    cubic = [total, (m + 2 * n) * d - total - a - c, (n * d - total - 2 * c) * d + a + c, c * d * (1 - d)]
    p2 = likeliest(cubic, loglik, low, high)
    p1 = p2 + d
    return ratio_to(mpf(a) / m - mpf(c) / n - d, (p1 * (1 - p1) / m + p2 * (1 - p2) / n) * mpf(total) / (total - 1))


def ratio_score(a, m, c, n, phi):
    def loglik(p):
        return xlog(a, p * phi) + xlog(m - a, 1 - p * phi) + xlog(c, p) + xlog(n - c, 1 - p)

    high = min(mpf(1), 1 / phi)
    p2 = likeliest([phi * (m + n), -(phi * (m + c) + a + n), a + c], loglik, mpf(0), high)
    p1 = p2 * phi
    return ratio_to(mpf(a) / m - phi * c / n, p1 * (1 - p1) / m + phi**2 * p2 * (1 - p2) / n)


def paired_score(b, c, n, d):
    """b pairs succeed in the first only, c in the second only: multinomial with p12 = p21 + d, the rest lumped together."""

    def loglik(p21):
        return xlog(b, p21 + d) + xlog(c, p21) + xlog(n - b - c, 1 - 2 * p21 - d)

    low, high = max(mpf(0), -d), (1 - d) / 2
    # (b q (1-2q-d) + c (q+d)(1-2q-d) - 2 (n-b-c) q (q+d)) = 0
    rest = n - b - c
    quadratic = [-2 * b - 2 * c - 2 * rest, b * (1 - d) + c * (1 - d) - 2 * c * d - 2 * rest * d, c * d * (1 - d)]
    q = likeliest(quadratic, loglik, low, high)
    return ratio_to(b - c - n * d, n * (2 * q + d - d**2))


def root(f, low, high):
    """Bisection of a falling function."""
    low, high = mpf(low), mpf(high)
    for _ in range(75):
        middle = (low + high) / 2
        if f(middle) > 0:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def limits(score, z, low, estimate, high):
    """Falling score between the ends of the range; an end that is the estimate is the limit."""
    return {
        "low": nstr(mpf(low) if estimate == low else root(lambda t: score(t) - z, low, estimate), 17),
        "high": nstr(mpf(high) if estimate == high else root(lambda t: score(t) + z, estimate, high), 17),
    }


def ratio_limits(a, m, c, n, z):
    def score(t):
        return ratio_score(a, m, c, n, mp.exp(t))

    return {
        "low": "0" if a == 0 else nstr(mp.exp(root(lambda t: score(t) - z, -12, 12)), 17),
        "high": "Infinity" if c == 0 else nstr(mp.exp(root(lambda t: score(t) + z, -12, 12)), 17),
    }


rng = random.Random(1985)
two = [(56, 70, 48, 80), (9, 10, 3, 10), (0, 10, 0, 20), (10, 10, 0, 10), (0, 7, 5, 5), (7, 34, 1, 34), (189, 11034, 104, 11037), (1, 1, 0, 1), (5, 5, 9, 9)]
for top in (12, 12, 60, 300):
    for _ in range(10):
        m, n = rng.randint(1, top), rng.randint(1, top)
        two.append((rng.randint(0, m), m, rng.randint(0, n), n))
pairs = [(7, 1, 21), (0, 0, 10), (0, 5, 5), (3, 0, 8), (20, 5, 41), (5, 0, 5), (150, 86, 1600)]
for top in (10, 40, 200):
    for _ in range(8):
        n = rng.randint(2, top)
        b = rng.randint(0, n)
        pairs.append((b, rng.randint(0, n - b), n))


def cases():
    for i, (a, m, c, n) in enumerate(two):
        level = (0.95, 0.9, 0.95, 0.999)[i % 4]
        z, estimate = quantile(level), mpf(a) / m - mpf(c) / n
        yield {
            "first": {"successes": a, "trials": m},
            "second": {"successes": c, "trials": n},
            "level": level,
            "miettinenNurminen": limits(lambda d: difference_score(a, m, c, n, d), z, -1, estimate, 1),
            "koopman": ratio_limits(a, m, c, n, z),
        }


def paired():
    for i, (b, c, n) in enumerate(pairs):
        level = (0.95, 0.9, 0.95, 0.999)[i % 4]
        score = lambda d: paired_score(b, c, n, d)
        yield {"firstOnly": b, "secondOnly": c, "pairs": n, "level": level, "tango": limits(score, quantile(level), -1, mpf(b - c) / n, 1)}


source = "mpmath 1.3, 40 digits: score tests inverted by bisection"
print(json.dumps({"source": source, "cases": list(cases()), "paired": list(paired())}, indent=1))
