import csv, itertools, math, sys

folder = sys.argv[1]
rule = next(csv.DictReader(open(folder + "/rule.csv", encoding="utf-8")))
rows = list(csv.DictReader(open(folder + "/units.csv", encoding="utf-8")))
setups, stints, block = int(rule["setups"]), int(rule["stints"]), int(rule["block"])


def blocks():
    if rule["patterns"]:
        return [tuple(ord(c) - 65 for c in p) for p in sorted(set(rule["patterns"].split()))]
    found = []

    def grow(part, left):
        if len(part) == block:
            found.append(tuple(part))
        for s in range(setups):
            if left[s]:
                left[s] -= 1
                grow(part + [s], left)
                left[s] += 1

    grow([], [block // setups] * setups)
    return found


def admissible(z):
    if rule["max_run"]:
        if max(len(list(g)) for _, g in itertools.groupby(z)) > int(rule["max_run"]):
            return False
    if rule["min_trend_efficiency"]:
        n = len(z)
        t = [i - (n - 1) / 2 for i in range(n)]
        y = [s - 0.5 for s in z]
        dot = sum(a * b for a, b in zip(y, t)) ** 2 / sum(a * a for a in t)
        if 1 - dot / sum(a * a for a in y) < float(rule["min_trend_efficiency"]) - 1e-9:
            return False
    return True


def orders():
    for parts in itertools.product(blocks(), repeat=stints // block):
        z = tuple(s for part in parts for s in part)
        if admissible(z):
            yield z


def basis(use, degree):
    n = len(use)
    t = [(i - (n - 1) / 2) / max(1, (n - 1) / 2) for i in range(n)]
    q = []
    for d in range(degree + 1):
        v = [t[i] ** d if use[i] else 0.0 for i in range(n)]
        v = residual(v, q)
        size = math.sqrt(sum(a * a for a in v))
        q.append([a / size for a in v])
    return q


def residual(v, q):
    for _ in range(2):
        for u in q:
            d = sum(a * b for a, b in zip(v, u))
            v = [a - d * b for a, b in zip(v, u)]
    return v


def two(y, order, use, degree, ratio):
    q = basis(use, degree)
    mean = sum(a for a, u in zip(y, use) if u) / sum(use)
    y = [a - mean if u else 0.0 for a, u in zip(y, use)]
    z0 = [s - 0.5 if u else 0.0 for s, u in zip(order, use)]
    w = residual(z0, q)
    c0 = sum(a * a for a in w)
    estimate = sum(a * b for a, b in zip(w, y)) / c0
    e = [a - estimate * b for a, b in zip(residual(y, q), w)]
    n, ss = sum(use), sum(a * a for a in e)
    back = math.exp if ratio else (lambda x: x)
    if ss <= 1e-18 * n * max(abs(a + mean) for a, u in zip(y, use) if u) ** 2:
        return [back(estimate), 1.0, "NA", "NA", "NA", "NA"]
    s, scale = math.sqrt(c0), math.sqrt(ss / n) / math.sqrt(c0)
    knots, always = [], 0
    for order in orders():
        z = [a - 0.5 if u else 0.0 for a, u in zip(order, use)]
        c = sum(a * a for a in z) - sum(sum(a * b for a, b in zip(z, u)) ** 2 for u in q)
        a = b = 0.0
        if c > 1e-9 * c0:
            a = sum(p * r for p, r in zip(z, e)) / math.sqrt(c)
            b = sum(p * r for p, r in zip(z, w)) / math.sqrt(c)
        if s - b <= 1e-9 * s:
            always += 1
            continue
        k = estimate - a / (s - b)
        knots.append(estimate if abs(k - estimate) <= 1e-9 * scale else k)
    knots.sort()
    total, tie = always + len(knots), 1e-9 * max(scale, abs(estimate))
    plus = always + sum(k <= tie for k in knots)
    minus = always + sum(k >= -tie for k in knots)
    result = [back(estimate), min(1.0, 2 * min(plus, minus) / total)]
    for level in (0.95, 0.90):
        j = math.floor((1 - level) / 2 * total + 1e-9) + 1 - always
        bounded = j > 0 and 2 * j <= len(knots) + 1
        result += [back(knots[j - 1]), back(knots[len(knots) - j])] if bounded else ["NA", "NA"]
    return result


def explained(y, order, use, q):
    own = []
    for s in range(1, setups):
        v = residual([1.0 if o == s and u else 0.0 for o, u in zip(order, use)], q + own)
        size = math.sqrt(sum(a * a for a in v))
        if size > 1e-9:
            own.append([a / size for a in v])
    return sum(sum(a * b for a, b in zip(y, v)) ** 2 for v in own)


def many(y, order, use, degree):
    q = basis(use, degree)
    mean = sum(a for a, u in zip(y, use) if u) / sum(use)
    y = residual([a - mean if u else 0.0 for a, u in zip(y, use)], q)
    # All orders that differ only by renaming have one F, so those that begin with A, then B, do.
    seen, observed = [0, 0], explained(y, order, use, q)
    for z in orders():
        first = [s for i, s in enumerate(z) if s not in z[:i]]
        if first == sorted(first):
            seen[0] += 1
            seen[1] += explained(y, z, use, q) >= observed * (1 - 1e-9)
    return seen[1] / seen[0]


for measure in dict.fromkeys(r["measure"] for r in rows):
    mine = [r for r in rows if r["measure"] == measure]
    use = [r["value"] != "" for r in mine]
    y = [float(r["value"]) if r["value"] else 0.0 for r in mine]
    order = tuple(ord(r["setup"]) - 65 for r in mine)
    degree = ["none", "line", "curve"].index(mine[0]["drift"])
    if setups == 2:
        found = two(y, order, use, degree, mine[0]["scale"] == "ratio")
    else:
        found = [many(y, order, use, degree)]
    print(measure + "\t" + "\t".join(n if n == "NA" else repr(float(n)) for n in found))
