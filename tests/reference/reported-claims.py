"""Invented sentences with numbers computed by scipy, sound and with one planted error, and one-digit alterations.

Writes reported-claims.json. An alteration counts as detectable when no method below, rounded or truncated, prints it.
Run: python3 reported-claims.py
"""
import json, math, random
import scipy
from scipy import optimize, stats

random.seed(20261124)
Z = stats.norm.isf(0.025)
WORDS = "zero one two three four five six seven eight nine ten eleven twelve".split()


def half_up(x, d):
    s = abs(x) * 10**d
    return math.copysign(math.floor(s + 0.5 + 1e-9) / 10**d, x)


def show(x, d):
    v = half_up(x, d)
    return f"{0.0 if v == 0 else v:.{d}f}"


def prints(x, text):
    """Rounded (ties both ways), truncated, or rounded to one digit fewer."""
    d = len(text.split(".")[1]) if "." in text else 0
    s, t = x * 10**d, round(float(text) * 10**d)
    if abs(s - t) <= 0.5 + 1e-7 or (0 <= abs(s) - abs(t) < 1 and s * t >= 0):
        return True
    return d >= 1 and t % 10 == 0 and abs(s - t) <= 5 + 1e-7


def wilson(k, n):
    c, h = (2 * k + Z * Z) / (2 * (n + Z * Z)), Z * math.sqrt(Z * Z + 4 * k * (1 - k / n)) / (2 * (n + Z * Z))
    return (0.0 if k == 0 else c - h, 1.0 if k == n else c + h)


def wilson_cc(k, n):
    p = k / n
    low = 0.0 if k == 0 else (2 * n * p + Z * Z - 1 - Z * math.sqrt(Z * Z - 2 - 1 / n + 4 * p * (n * (1 - p) + 1))) / (2 * (n + Z * Z))
    high = 1.0 if k == n else (2 * n * p + Z * Z + 1 + Z * math.sqrt(Z * Z + 2 - 1 / n + 4 * p * (n * (1 - p) - 1))) / (2 * (n + Z * Z))
    return max(0, low), min(1, high)


def exact(k, n):
    return (0.0 if k == 0 else stats.beta.ppf(0.025, k, n - k + 1), 1.0 if k == n else stats.beta.isf(0.025, k + 1, n - k))


def jeffreys(k, n):
    return (0.0 if k == 0 else stats.beta.ppf(0.025, k + 0.5, n - k + 0.5), 1.0 if k == n else stats.beta.isf(0.025, k + 0.5, n - k + 0.5))


def agresti_coull(k, n):
    m = n + Z * Z
    p = (k + Z * Z / 2) / m
    h = Z * math.sqrt(p * (1 - p) / m)
    return p - h, p + h


def wald(k, n):
    p = k / n
    h = Z * math.sqrt(p * (1 - p) / n)
    return p - h, p + h


def wald_cc(k, n):
    l, h = wald(k, n)
    return l - 0.5 / n, h + 0.5 / n


def mid_p(k, n):
    up = lambda p: stats.binom.sf(k, n, p) + stats.binom.pmf(k, n, p) / 2 - 0.025
    dn = lambda p: stats.binom.cdf(k - 1, n, p) + stats.binom.pmf(k, n, p) / 2 - 0.025
    return (0.0 if k == 0 else optimize.brentq(up, 1e-12, k / n), 1.0 if k == n else optimize.brentq(dn, k / n, 1 - 1e-12))


def likelihood(k, n):
    ll = lambda p: (k * math.log(p) if k else 0) + ((n - k) * math.log(1 - p) if n > k else 0)
    top = (k * math.log(k / n) if k else 0) + ((n - k) * math.log(1 - k / n) if n > k else 0)
    f = lambda p: 2 * (top - ll(p)) - Z * Z
    return (0.0 if k == 0 else optimize.brentq(f, 1e-12, k / n), 1.0 if k == n else optimize.brentq(f, k / n, 1 - 1e-12))


def blaker_acceptance(k, n, p):
    a, b = stats.binom.sf(k - 1, n, p), stats.binom.cdf(k, n, p)
    if a < b:
        q = stats.binom.ppf(a, n, p)
        q = q if stats.binom.cdf(q, n, p) <= a * (1 + 1e-12) else q - 1
        return a + (stats.binom.cdf(q, n, p) if q >= 0 else 0)
    q = stats.binom.isf(b, n, p)
    while stats.binom.sf(q - 1, n, p) > b * (1 + 1e-12):
        q += 1
    return b + stats.binom.sf(q - 1, n, p)


def blaker(k, n):
    l, h = exact(k, n)
    if k > 0:
        while blaker_acceptance(k, n, l + 1e-4) < 0.05:
            l += 1e-4
    if k < n:
        while blaker_acceptance(k, n, h - 1e-4) < 0.05:
            h -= 1e-4
    return l, h


def intervals(k, n):
    found = [f(k, n) for f in (wilson, wilson_cc, exact, jeffreys, agresti_coull, wald, wald_cc, mid_p, likelihood, blaker)]
    found += [(max(0, l), min(1, h)) for l, h in found]
    if k == 0:
        found += [(0, 1 - 0.05 ** (1 / n)), (0, 3 / n)]
    if k == n:
        found += [(0.05 ** (1 / n), 1), (1 - 3 / n, 1)]
    return found


def fisher(a, m, c, n):
    h = stats.hypergeom(m + n, a + c, m)
    xs = range(max(0, a + c - n), min(m, a + c) + 1)
    p0 = h.pmf(a)
    both = min(1, sum(h.pmf(x) for x in xs if h.pmf(x) <= p0 * (1 + 1e-7)))
    lo, hi = h.cdf(a), h.sf(a - 1)
    return both, min(1, 2 * min(lo, hi)), both - p0 / 2, min(1, 2 * min(lo, hi) - p0), min(lo, hi)


def chi(a, m, c, n):
    t = [[a, m - a], [c, n - c]]
    pearson = stats.chi2_contingency(t, correction=False)[0]
    yates = stats.chi2_contingency(t, correction=True)[0]
    N = m + n
    return tuple(stats.chi2.sf(x, 1) for x in (pearson, yates, pearson * (N - 1) / N))


def newcombe(a, m, c, n):
    (l1, u1), (l2, u2), d = wilson(a, m), wilson(c, n), a / m - c / n
    return d - math.hypot(a / m - l1, u2 - c / n), d + math.hypot(u1 - a / m, c / n - l2)


def wald_difference(a, m, c, n):
    p, q = a / m, c / n
    h = Z * math.sqrt(p * (1 - p) / m + q * (1 - q) / n)
    return p - q - h, p - q + h


def agresti_caffo(a, m, c, n):
    p, q = (a + 1) / (m + 2), (c + 1) / (n + 2)
    h = Z * math.sqrt(p * (1 - p) / (m + 2) + q * (1 - q) / (n + 2))
    return p - q - h, p - q + h


def woolf(a, m, c, n):
    o, se = math.log(a * (n - c) / ((m - a) * c)), math.sqrt(1 / a + 1 / (m - a) + 1 / c + 1 / (n - c))
    return math.exp(o), math.exp(o - Z * se), math.exp(o + Z * se)


def katz(a, m, c, n):
    r, se = math.log(a / m / (c / n)), math.sqrt(1 / a - 1 / m + 1 / c - 1 / n)
    return math.exp(r), math.exp(r - Z * se), math.exp(r + Z * se)


EVENTS = ["Union was obtained", "An acceptable position was kept", "The reduction held", "Full motion returned", "Treatment succeeded"]
NOUNS = ["fractures", "limbs", "children", "cases"]
COUNTS = ["{k} of {n} {u}", "{k} out of {n} {u}", "{k}/{n} {u}", "{k} of the {n} {u}"]
RANGES = ["{l}% to {h}%", "{l} to {h}", "{l}–{h}%", "{l}-{h}", "{l}%–{h}%", "{l}, {h}", "{l} % to {h} %"]
LABELS = ["95% CI ", "95% CI, ", "95%CI: ", "95% confidence interval ", "CI95 ", "95% confidence interval, ", "95% CI = ", "CI 95% "]
pick = random.choice


def draw(high=False):
    n = random.randint(12, 90)
    return (random.randint(int(0.6 * n), n - 1) if high or random.random() < 0.7 else random.randint(1, int(0.5 * n))), n


def spell(k):
    return WORDS[k] if k <= 12 else str(k)


def proportion():
    k, n = draw()
    d = pick([0, 0, 1])
    u = pick(NOUNS)
    count = pick(COUNTS)
    p = show(100 * k / n, d)
    form = pick([
        "{E} in " + count + " ({p}%).", "{E} in {p}% (" + count.replace(" {u}", "") + ") of {u}.", "{E} in {k} ({p}%) of {n} {u}.",
        "Of {n} {u}, {k} ({p}%) did well.", "{E} in " + count + " ({p} per cent).", "{E} in " + count + ", {p}%.", "In {n} {u} the rate was {p}% ({k}/{n}).",
    ])  # fmt: skip
    slots = {"E": pick(EVENTS), "k": str(k), "n": str(n), "u": u, "p": p}
    return form, slots, {"p": lambda s, t: prints(100 * k / n, t), "k": lambda s, t: int(t) <= n and prints(100 * int(t) / n, p)}


def interval():
    k, n = draw()
    d = pick([0, 0, 1])
    l, h = pick([wilson, wilson, exact, jeffreys, agresti_coull, wilson_cc, mid_p])(k, n)
    l, h = max(0, l), min(1, h)
    label, rng = pick(LABELS), pick(RANGES)
    form = pick(["{E} in {k} of {n} {u} ({p}%; " + label + rng + ").", "{E} in {p}% ({k}/{n}; " + label + rng + ") of {u}.", "{E} in {k}/{n} {u} ({p}%, " + label + rng + ").", "{E} in {k} of {n} {u} ({p}%) (" + label + rng + ")."])
    slots = {"E": pick(EVENTS), "k": str(k), "n": str(n), "u": pick(NOUNS), "p": show(100 * k / n, d), "l": show(100 * l, d), "h": show(100 * h, d)}

    def fits(s, k=k, n=n):
        return any(same(L, H, s) for L, H in intervals(k, n))

    def same(L, H, s):
        return prints(100 * L, s["l"]) and prints(100 * H, s["h"])

    return form, slots, {
        "p": lambda s, t: prints(100 * k / n, t),
        "l": lambda s, t: fits({**s, "l": t}),
        "h": lambda s, t: fits({**s, "h": t}),
        "k": lambda s, t: int(t) <= n and prints(100 * int(t) / n, s["p"]) and fits(s, int(t)),
    }


def zero():
    n = random.randint(15, 90)
    l, h = pick([wilson, exact, jeffreys])(0, n)
    d = pick([0, 1])
    u = pick(NOUNS)
    form = pick(["No nerve injury occurred in {n} {u} (0 of {n}; 95% CI 0% to {h}%).", "None of the {n} {u} had an infection (95% CI 0 to {h}%).", "There were no infections (0/{n}; 0%; 95% CI 0–{h}%)."])
    fits = lambda s, t: any(prints(100 * H, t) for L, H in intervals(0, n) if L <= 0)
    return form, {"n": str(n), "u": u, "h": show(100 * h, d)}, {"h": fits}


def two():
    while True:
        (a, m), (c, n) = draw(True), draw()
        if 0 < a < m and 0 < c < n and abs(a / m - c / n) > 0.12:
            return a, m, c, n


def p_value():
    a, m, c, n = two()
    test = pick(["fisher", "fisher", "doubled", "chi", "yates", "n-1"])
    f, x = fisher(a, m, c, n), chi(a, m, c, n)
    value = {"fisher": f[0], "doubled": f[1], "chi": x[0], "yates": x[1], "n-1": x[2]}[test]
    if value < 0.001:
        return p_value()
    d = 3
    name = {"fisher": ["Fisher’s exact test", "Fisher's exact test", "Fisher exact test", "two-sided Fisher’s exact test"], "doubled": ["two-sided Fisher’s exact test"], "chi": ["chi-square test without continuity correction", "uncorrected chi-squared test"], "yates": ["chi-squared test with Yates’ correction", "chi-square test with continuity correction"], "n-1": ["N − 1 chi-square test"]}[test]
    sets = {"fisher": f[:2], "doubled": f[:2], "chi": x[:1], "yates": x[1:2], "n-1": x[2:]}[test]
    form = pick([
        "Success was {a} of {m} after closed and {c} of {n} after open treatment ({P}% v {Q}%; " + pick(name) + ", {pp}{p}).",
        "Success was {a}/{m} ({P}%) after closed and {c}/{n} ({Q}%) after open treatment (" + pick(name) + ": {pp}{p}).",
        "Treatment succeeded in {P}% ({a}/{m}) of closed and {Q}% ({c}/{n}) of open cases ({pp}{p}; " + pick(name) + ").",
    ])  # fmt: skip
    slots = {"a": str(a), "m": str(m), "c": str(c), "n": str(n), "P": show(100 * a / m, 0), "Q": show(100 * c / n, 0), "pp": pick(["p = ", "P = ", "p=", "P value "]), "p": show(value, d)}
    return form, slots, {
        "p": lambda s, t: any(prints_p(v, t) for v in sets),
        "P": lambda s, t: prints(100 * a / m, t),
        "Q": lambda s, t: prints(100 * c / n, t),
    }


def prints_p(x, t):
    d = len(t.split(".")[1]) if "." in t else 0
    s, v = x * 10**d, round(float(t) * 10**d)
    return abs(s - v) <= 0.5 + 1e-7 or 0 <= s - v < 1


def difference():
    a, m, c, n = two()
    l, h = pick([newcombe, newcombe, wald_difference, agresti_caffo])(a, m, c, n)
    d = a / m - c / n
    if d < 0:
        return difference()
    low = show(100 * l, 0).replace("-", "−")
    form = pick([
        "Closed treatment succeeded in {a} of {m} and open in {c} of {n} (difference {d} percentage points; 95% CI {l} to {h}).",
        "Success was {a}/{m} after closed and {c}/{n} after open treatment, a difference of {d} points (95% CI {l} to {h}).",
    ])  # fmt: skip
    return form, {"a": str(a), "m": str(m), "c": str(c), "n": str(n), "d": show(100 * d, 0), "l": low, "h": show(100 * h, 0)}, {
        "d": lambda s, t: prints(100 * d, t)
    }


def ratio():
    a, m, c, n = two()
    kind = pick(["or", "rr"])
    e, l, h = woolf(a, m, c, n) if kind == "or" else katz(a, m, c, n)
    if h > 90 or e < 0.15:
        return ratio()
    d = 2 if e < 2 else 1
    names = ["odds ratio ", "OR ", "OR = "] if kind == "or" else ["risk ratio ", "RR ", "relative risk "]
    form = pick([
        "Success was more often seen after closed treatment ({a}/{m} v {c}/{n}; " + pick(names) + "{e}, 95% CI {l} to {h}).",
        "Success was {a} of {m} after closed and {c} of {n} after open treatment (" + pick(names) + "{e}; 95% CI, {l}–{h}).",
    ])  # fmt: skip
    return form, {"a": str(a), "m": str(m), "c": str(c), "n": str(n), "e": show(e, d), "l": show(l, d), "h": show(h, d)}, {}


def total():
    parts = [random.randint(4, 30) for _ in range(4)]
    n = sum(parts)
    form = pick([
        "The {n} fractures comprised {a} grade I, {b} grade II, {c} grade III and {d} grade IV.",
        "Of {n} fractures, {a} were grade I, {b} grade II, {c} grade III and {d} grade IV.",
        "We treated {n} fractures ({a} grade I, {b} grade II, {c} grade III and {d} grade IV).",
        "There were {n} fractures: {a} were grade I, {b} grade II, {c} grade III, and {d} grade IV.",
    ])  # fmt: skip
    slots = dict(zip("abcd", map(str, parts))) | {"n": str(n)}
    return form, slots, {key: (lambda s, t: False) for key in "abcdn"}


def mean():
    n = random.randint(9, 35)
    value = random.randint(9 * n, 15 * n) / n
    form = pick(["The mean age of the {n} patients, in completed years, was {v}.", "Mean age in completed years was {v} (n = {n}).", "The mean age of {n} children was {v} completed years."])
    possible = lambda s, t: any(prints(k / n, t) for k in range(0, 100 * n))
    return form, {"n": str(n), "v": show(value, 2)}, {"v": possible}


def against():
    e = random.randint(4, 20)
    w = random.randint(3, 18)
    p = 2 * stats.norm.sf(e / (w / Z))
    if not 0.002 < p < 0.9 or 0.03 < p < 0.08:
        return against()
    l = f"−{w - e}" if w > e else str(e - w)
    form = pick(["Mean elevation was {e}° better after closed treatment (95% CI {l}° to {h}°; p = {p}).", "The mean difference was {e}° (95% CI {l}° to {h}°; P = {p})."])
    return form, {"e": str(e), "l": l, "h": str(e + w), "p": show(p, 2) if p > 0.01 else show(p, 3)}, {}


def kappa():
    n = random.randint(40, 90)
    k = random.randint(int(0.6 * n), n - 3)
    v = k / n - random.uniform(0.05, 0.25)
    form = pick(["The observers agreed on the grade in {k} of {n} radiographs ({p}%; unweighted κ = {v}).", "Both observers gave the same grade to {k}/{n} radiographs ({p}%; Cohen’s kappa {v})."])
    return form, {"k": str(k), "n": str(n), "p": show(100 * k / n, 0), "v": show(v, 2)}, {"p": lambda s, t: prints(100 * k / n, t), "v": lambda s, t: float(t) <= k / n + 0.005}


def fill(form, slots):
    return form.format(**slots)


def change(text, avoid):
    """Another number of the same length: one digit altered."""
    at = random.choice([i for i, ch in enumerate(text) if ch.isdigit()])
    new = random.choice([d for d in "0123456789" if d != text[at]])
    out = text[:at] + new + text[at + 1 :]
    return out if not (at == 0 and new == "0" and len(out) > 1 and out[1] != ".") else None


KINDS = [proportion, interval, zero, p_value, difference, ratio, total, mean, against, kappa]
sound, alterations = [], []
for kind in KINDS:
    made = 0
    while made < 40:
        form, slots, checks = kind()
        text = fill(form, slots)
        sound.append({"kind": kind.__name__, "text": text})
        made += 1
        for slot, fits in checks.items():
            if "{" + slot + "}" not in form or form.count("{" + slot + "}") > 1:
                continue
            for _ in range(2):
                new = change(slots[slot], None)
                if new is None or (slot in "kn" and int(new) == 0):
                    continue
                if (slot in ("p",) and kind is p_value and float(new) == 0) or new == slots[slot]:
                    continue
                alterations.append({"kind": kind.__name__, "slot": slot, "text": fill(form, {**slots, slot: new}), "detectable": not fits(slots, new)})

# Planted errors, each far from every convention.
wrong = []
for _ in range(40):
    k, n = draw()
    p = 100 * k / n + pick([-6, -4, -3, 3, 4, 6])
    if 0 < p < 100:
        wrong.append({"kind": "percentage", "text": f"{pick(EVENTS)} in {k} of {n} {pick(NOUNS)} ({show(p, 0)}%)."})
    l, h = wilson(k, n)
    l2, h2 = l - 0.09, h
    if l2 > 0:
        wrong.append({"kind": "interval", "text": f"{pick(EVENTS)} in {k}/{n} {pick(NOUNS)} ({show(100 * k / n, 0)}%; 95% CI {show(100 * l2, 0)}% to {show(100 * h2, 0)}%)."})
    wrong.append({"kind": "zero event", "text": f"There were no complications (0 of {n}; 95% CI 0% to 0%)."})
    a, m, c, n2 = two()
    f, x = fisher(a, m, c, n2), chi(a, m, c, n2)
    if x[0] > 0.002 and not any(prints_p(v, show(x[0], 3)) for v in f[:2]):
        wrong.append({"kind": "p value", "text": f"Success was {a} of {m} after closed and {c} of {n2} after open treatment (Fisher’s exact test, p = {show(x[0], 3)})."})
    r, rl, rh = katz(a, m, c, n2)
    o = woolf(a, m, c, n2)[0]
    if abs(math.log(r / o)) > 0.3 and rh < 50:
        wrong.append({"kind": "odds ratio", "text": f"Success was seen in {a} of {m} closed and {c} of {n2} open cases (odds ratio {show(r, 2)}; 95% CI {show(rl, 2)} to {show(rh, 2)})."})
    d = abs(a / m - c / n2)
    wrong.append({"kind": "difference", "text": f"Success was {a}/{m} after closed and {c}/{n2} after open treatment (difference {show(100 * d + 8, 0)} percentage points)."})
    e, w = random.randint(8, 20), random.randint(2, 6)
    wrong.append({"kind": "p against interval", "text": f"Mean elevation was {e}° better after closed treatment (95% CI {e - w}° to {e + w}°; p = 0.{random.randint(15, 80)})."})
    parts = [random.randint(4, 30) for _ in range(4)]
    wrong.append({"kind": "total", "text": f"The {sum(parts) + pick([-1, 1, 2])} fractures comprised {parts[0]} grade I, {parts[1]} grade II, {parts[2]} grade III and {parts[3]} grade IV."})
    n3 = random.randint(9, 24)
    v = half_up(random.randint(9 * n3, 15 * n3) / n3 + 0.5 / n3, 2)
    if not any(prints(q / n3, f"{v:.2f}") for q in range(30 * n3)):
        wrong.append({"kind": "mean", "text": f"The mean age of the {n3} patients, in completed years, was {v:.2f}."})

out = {
    "source": f"Python, scipy {scipy.__version__}; written by reported-claims.py. All sentences are invented.",
    "sound": sound,
    "wrong": wrong,
    "alterations": alterations,
}
with open("reported-claims.json", "w") as file:
    json.dump(out, file, ensure_ascii=False, indent=0)
print(len(sound), len(wrong), len(alterations), sum(a["detectable"] for a in alterations))
