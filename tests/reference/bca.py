"""Reference values for bias-corrected and accelerated limits, from Efron 1987 as printed, in 40 digits (mpmath), over
stated resampled values. Run: python3 bca.py > bca.json
"""
import json
from mpmath import mp, mpf, sqrt, erfinv, ncdf

mp.dps = 40
q = lambda p: sqrt(2) * erfinv(2 * mpf(p) - 1)


def quantile(v, p):
    at = (len(v) - 1) * p
    k = int(mp.floor(at))
    return v[k] + (at - k) * (v[min(k + 1, len(v) - 1)] - v[k])


def bca(estimate, values, left, level):
    v = sorted(mpf(x) for x in values)
    share = sum(1 if x < estimate else mpf("0.5") if x == estimate else 0 for x in v) / mpf(len(v))
    z0 = q(share)
    squares = cubes = mpf(0)
    for group in left:
        n = len(group)
        mean = sum(mpf(x) for x in group) / n
        for x in group:
            u = (n - 1) * (mean - mpf(x)) / n
            squares += u**2
            cubes += u**3
    a = cubes / (6 * squares ** mpf("1.5"))
    ends = []
    for end in (q((1 - mpf(level)) / 2), q((1 + mpf(level)) / 2)):
        ends.append(quantile(v, ncdf(z0 + (z0 + end) / (1 - a * (z0 + end)))))
    return {"bias": mp.nstr(z0, 17), "acceleration": mp.nstr(a, 17), "interval": [mp.nstr(e, 17) for e in ends]}


cases = []
state = 12345
for round in range(12):
    size, groups = 40 + 30 * round, 1 + round % 3
    values = []
    for _ in range(size):
        state = (1103515245 * state + 12345) % 2**31
        values.append(((state >> 8) % 1000) ** 2 / 10000)
    left = []
    for g in range(groups):
        group = []
        for _ in range(5 + round):
            state = (1103515245 * state + 12345) % 2**31
            group.append(((state >> 8) % 1000) ** 3 / 1e7)
        left.append(group)
    estimate = sorted(values)[size // 3]
    level = [0.95, 0.9, 0.5][round % 3]
    cases.append({"estimate": estimate, "values": values, "left": left, "level": level, **bca(mpf(estimate), values, left, str(level))})
print(json.dumps({"source": "bca.py, mpmath, 40 digits", "cases": cases}))
