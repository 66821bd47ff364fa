"""Reference values for the logistic-normal model of several series: likelihood by the trapezoidal rule with step 1/32 (1/128
where tau is large) over -10 to 10 standard deviations (exponentially accurate for such integrands) in 25-digit arithmetic (mpmath), maximum and
profile limits from the equations that define them. Run: python3 random-intercept.py > random-intercept.json
"""
import json, sys
from mpmath import mp, mpf, exp, log, sqrt, matrix, pi

mp.dps = 25
CHI = mpf("3.84145882069412447634704221854770")  # 0.95 quantile of chi-square, 1 df


def mesh(steps):
    global Z, PHI
    Z = [mpf(k) / steps for k in range(-10 * steps, 10 * steps + 1)]
    PHI = [exp(-z * z / 2) / sqrt(2 * pi) / steps for z in Z]



def value_and_score(b, r, n, x):
    """b: coefficients, then tau."""
    p = len(b) - 1
    total, score = mpf(0), [mpf(0)] * (p + 1)
    for ri, ni, xi in zip(r, n, x):
        eta = sum(bj * v for bj, v in zip(b, xi))
        s = a = az = mpf(0)
        for z, phi in zip(Z, PHI):
            q = 1 / (1 + exp(-(eta + b[p] * z)))
            w = phi * q**ri * (1 - q) ** (ni - ri)
            s += w
            a += w * (ri - ni * q)
            az += w * (ri - ni * q) * z
        total += log(s)
        for j in range(p):
            score[j] += xi[j] * a / s
        score[p] += az / s
    return total, score


def newton(equations, start):
    b = [mpf(v) for v in start]
    h = mpf(10) ** -8
    for _ in range(60):
        f = equations(b)
        jac = matrix(len(b), len(b))
        for j in range(len(b)):
            moved = list(b)
            moved[j] += h
            g = equations(moved)
            for i in range(len(b)):
                jac[i, j] = (g[i] - f[i]) / h
        d = mp.lu_solve(jac, matrix(f))
        size = max(abs(v) for v in d)
        b = [v - min(1, mpf("0.5") / size) * w for v, w in zip(b, d)]
        if size < mpf(10) ** -15:
            return b
    raise RuntimeError("no convergence")


def slopes(equations, b):
    """Jacobian by central differences."""
    h = mpf(10) ** -7
    jac = matrix(len(b), len(b))
    for j in range(len(b)):
        up, down = list(b), list(b)
        up[j] += h
        down[j] -= h
        f, g = equations(up), equations(down)
        for i in range(len(b)):
            jac[i, j] = (f[i] - g[i]) / (2 * h)
    return jac


def fit(r, n, x, start, tau_zero=False):
    p = len(x[0])
    if tau_zero:
        equations = lambda b: value_and_score(list(b) + [mpf(0)], r, n, x)[1][:p]
        top = newton(equations, start[:p])
        inverse = (-slopes(equations, top)) ** -1
        top = top + [mpf(0)]
    else:
        equations = lambda b: value_and_score(b, r, n, x)[1]
        top = newton(equations, start)
        inverse = (-slopes(equations, top)) ** -1
    best = value_and_score(top, r, n, x)[0]
    out = {
        "estimates": [mp.nstr(v, 15) for v in top],
        "standardErrors": [mp.nstr(sqrt(inverse[j, j]), 12) for j in range(p if tau_zero else p + 1)],
        "logLikelihood": mp.nstr(best, 17),
        "limits": [],
    }

    def curve(b, j):
        value, score = value_and_score(b, r, n, x)
        return [value - best + CHI / 2] + [s for k, s in enumerate(score) if k != j]

    for j in range(p + 1):
        ends = []
        for side in (-1, 1):
            if j == p and side == -1:
                zero = newton(lambda b: value_and_score(b + [mpf(0)], r, n, x)[1][:p], top[:p])
                if 2 * (best - value_and_score(zero + [mpf(0)], r, n, x)[0]) <= CHI:
                    ends.append("0")
                    continue
            se = sqrt(inverse[j, j]) if j < inverse.rows else mpf("0.3")
            at = [v + side * sqrt(CHI) * (inverse[k, j] / se if j < inverse.rows and k < inverse.rows else 0) for k, v in enumerate(top)]
            if tau_zero:
                at[p] = mpf("0.4")
            end = newton(lambda b: curve(b, j), at)
            assert side * (end[j] - top[j]) > 0 and (end[p] > 0 or j == p), (j, side, end)
            ends.append(mp.nstr(end[j], 15))
        out["limits"].append(ends)
    return out


seeds = json.load(open("worked-examples.json"))["examples"]
seeds = next(e for e in seeds if e["id"] == "G-seeds")["input"]
r, n = seeds["r"], seeds["n"]
x = [[1, s, e, s * e] for s, e in zip(seeds["seed"], seeds["extract"])]
surgical = ([0, 18, 8, 46, 8, 13, 9, 31, 14, 8, 29, 24], [47, 148, 119, 810, 211, 196, 148, 215, 207, 97, 256, 360])
cases = []


def add(name, r, n, x, start, tau_zero=False):
    print(name, file=sys.stderr)
    cases.append({"name": name, "successes": r, "trials": n, "covariates": [list(c) for c in zip(*x)][1:], **fit(r, n, x, start, tau_zero)})


ones = lambda r: [[1]] * len(r)
mesh(32)
add("twelve hospitals", *surgical, ones(surgical[0]), [-2.5, 0.4])
add("six small series", [3, 9, 10, 12, 0, 7], [4, 10, 10, 20, 3, 9], ones(range(6)), [1, 1])
mesh(128)
add("wide apart", [0, 20, 10, 1, 14, 0], [20, 20, 20, 15, 15, 8], ones(range(6)), [0, 3])
mesh(32)
add("alike", [5, 11, 15, 8], [10, 20, 30, 17], ones(range(4)), [0.1, 0], True)
add("seeds", r, n, x, [-0.55, 0.1, 1.3, -0.8, 0.24])
print(json.dumps({"source": "random-intercept.py, mpmath, 25 digits, trapezoidal rule", "cases": cases}, indent=1))
