import csv, itertools, math, os, sys

folder = sys.argv[1] if len(sys.argv) > 1 else os.path.dirname(os.path.abspath(__file__))


def read(name):
    return list(csv.DictReader(open(folder + "/" + name, encoding="utf-8")))


def dot(v, w):
    return sum(a * b for a, b in zip(v, w))


rule, rows = read("rule.csv")[0], read("units.csv")
setups, stints, block = int(rule["setups"]), int(rule["stints"]), int(rule["block"])
# Of a steps day every setup is a level, which stands where two setups have -1/2 and 1/2.
levels = [float(r["level"]) for r in read("levels.csv")] if os.path.exists(folder + "/levels.csv") else []
at = [(v - sum(levels) / setups) / (max(levels) - min(levels)) for v in levels] or [-0.5, 0.5]


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


def walked(columns):
    """For every order the sums of v[stint] * by[setup], one for each pair (v, by) of columns: summed up by block."""
    rows, whole = blocks(), range(stints // block)
    sums = [
        [(row, [sum(v[b * block + i] * by[s] for i, s in enumerate(row)) for v, by in columns]) for row in rows]
        for b in whole
    ]
    free = not rule["max_run"] and not rule["min_trend_efficiency"]
    for parts in itertools.product(*sums):
        if free or admissible(tuple(s for row, _ in parts for s in row)):
            yield map(sum, zip(*[found for _, found in parts]))


def basis(use, out):
    """Orthonormal columns of what is taken out: a drift of some degree, and covariates."""
    degree, covariates = out
    n = len(use)
    t = [(i - (n - 1) / 2) / max(1, (n - 1) / 2) for i in range(n)]
    columns = [[t[i] ** d if use[i] else 0.0 for i in range(n)] for d in range(degree + 1)]
    for x in covariates:
        mean = sum(a for a, u in zip(x, use) if u) / sum(use)
        column = [a - mean if u else 0.0 for a, u in zip(x, use)]
        columns.append([a / max(map(abs, column)) for a in column])
    q = []
    for column in columns:
        v = residual(column, q)
        size = math.sqrt(sum(a * a for a in v))
        q.append([a / size for a in v])
    return q


def residual(v, q):
    for _ in range(2):
        for u in q:
            d = sum(a * b for a, b in zip(v, u))
            v = [a - d * b for a, b in zip(v, u)]
    return v


def rounding(y, mean, use):
    """How far a sum may be off because the values themselves are rounded: ties forgive it."""
    return sum(use) * math.ulp(max(abs(a + mean) for a, u in zip(y, use) if u)) / 2


def two(y, order, use, out, ratio, harm=None, harms=None):
    q = basis(use, out)
    mean = sum(a for a, u in zip(y, use) if u) / sum(use)
    y = [a - mean if u else 0.0 for a, u in zip(y, use)]
    z0 = [at[s] if u else 0.0 for s, u in zip(order, use)]
    w = residual(z0, q)
    c0 = sum(a * a for a in w)
    estimate = sum(a * b for a, b in zip(w, y)) / c0
    e = [a - estimate * b for a, b in zip(residual(y, q), w)]
    n, ss = sum(use), sum(a * a for a in e)
    back = math.exp if ratio else (lambda x: x)
    if ss <= 1e-18 * n * max(abs(a + mean) for a, u in zip(y, use) if u) ** 2:
        return [back(estimate), 1.0, "NA", "NA", "NA", "NA"]
    s, scale = math.sqrt(c0), max(math.sqrt(ss / n) / math.sqrt(c0), rounding(y, mean, use) * 1e9)
    knots, always = [], 0
    for size, a, b, *along_q in walked([(use, [a * a for a in at]), (e, at), (w, at)] + [(u, at) for u in q]):
        c = size - sum(a * a for a in along_q)
        known = c > 1e-9 * c0
        a, b = (a / math.sqrt(c), b / math.sqrt(c)) if known else (0.0, 0.0)
        if s - b <= 1e-9 * s:
            always += 1
            continue
        k = estimate - a / (s - b)
        knots.append(estimate if abs(k - estimate) <= 1e-9 * scale else k)
    knots.sort()
    total, tie = always + len(knots), 1e-9 * max(scale, abs(estimate))
    plus = always + sum(k <= tie for k in knots)
    minus = always + sum(k >= -tie for k in knots)
    def beyond(d):
        """One-sided p at a difference: "B is greater than A by more" and "by less"."""
        tie = 1e-9 * max(scale, abs(d - estimate))
        return [(always + sum(k <= d + tie for k in knots)) / total, (always + sum(k >= d - tie for k in knots)) / total]

    if harms is not None:
        harms += beyond(harm) + beyond(-harm)
    result = [back(estimate), min(1.0, 2 * min(plus, minus) / total)]
    for level in (0.95, 0.90):
        j = math.floor((1 - level) / 2 * total + 1e-9) + 1 - always
        bounded = j > 0 and 2 * j <= len(knots) + 1
        result += [back(knots[j - 1]), back(knots[len(knots) - j])] if bounded else ["NA", "NA"]
    return result


def fit(y, order, use, q):
    """Squared length explained by the setups, and each pair's difference over its unit error."""
    d = [residual([1.0 if o == s and u else 0.0 for o, u in zip(order, use)], q) for s in range(1, setups)]
    n = len(d)
    m = [[dot(a, b) for b in d] + [float(a is b) for b in d] + [dot(a, y)] for a in d]
    for i in range(n):  # Gauss and Jordan: inverse and solution side by side
        pivot = max(range(i, n), key=lambda r: abs(m[r][i]))
        m[i], m[pivot] = m[pivot], m[i]
        if abs(m[i][i]) <= 1e-9 * len(use):
            return 0.0, [0.0] * (setups * (setups - 1) // 2), []  # cannot tell the setups apart
        m[i] = [v / m[i][i] for v in m[i]]
        for r in range(n):
            if r != i:
                m[r] = [a - m[r][i] * b for a, b in zip(m[r], m[i])]
    effect, inverse = [m[i][-1] for i in range(n)], [m[i][n:-1] for i in range(n)]
    found, effects = [], []
    for a, b in itertools.combinations(range(setups), 2):
        c = [(s == b) - (s == a) for s in range(1, setups)]
        size = sum(c[i] * c[j] * inverse[i][j] for i in range(n) for j in range(n))
        effects.append((dot(c, effect), math.sqrt(size)))
        found.append(abs(effects[-1][0]) / math.sqrt(size))
    return sum(e * dot(a, y) for e, a in zip(effect, d)), found, effects


def reach(level, df, many=setups):
    """P(range of so many <= q S) = level, as q / sqrt(2): trapezoids in z and ln S, then secants; t of two."""
    z = [i / 8 - 8.5 for i in range(137)]
    below = [math.erfc(-v / math.sqrt(2)) / 2 for v in z]
    weight = [many * math.exp(-v * v / 2) / math.sqrt(2 * math.pi) / 8 for v in z]
    step, scales = 0.1 / math.sqrt(2 * df), []
    for i in range(-150, 100):
        u = i * step
        size = math.log(2) + df / 2 * math.log(df / 2) - math.lgamma(df / 2) + df * u - df / 2 * math.exp(2 * u)
        if size > -37:
            scales.append((math.exp(u), math.exp(size) * step))

    def miss(q):
        inside = 0.0
        for s, density in scales:
            w = q * s
            inside += density * sum(
                a * (b - math.erfc((w - c) / math.sqrt(2)) / 2) ** (many - 1) for a, b, c in zip(weight, below, z)
            )
        return inside - level

    low, high = 1.0, 4.0
    while miss(high) < 0:
        low, high = high, 2 * high
    before, now = (low, miss(low)), (high, miss(high))
    while abs(now[0] - before[0]) > 1e-12 * now[0] and now[1] != before[1]:
        q = now[0] - now[1] * (now[0] - before[0]) / (now[1] - before[1])
        before, now = now, (q, miss(q))
    return now[0] / math.sqrt(2)


def apart(y, order, use, out, shares):
    """Tukey's and Kramer's interval of every pair that holds on each share of days."""
    q = basis(use, out)
    mean = sum(a for a, u in zip(y, use) if u) / sum(use)
    top = max(abs(a) for a, u in zip(y, use) if u)
    y = residual([a - mean if u else 0.0 for a, u in zip(y, use)], q)
    inside, _, effects = fit(y, order, use, q)
    df = sum(use) - len(q) - setups + 1
    left = dot(y, y) - inside
    if left <= 1e-18 * sum(use) * top ** 2:
        return [["NA", "NA"] * len(shares) for _ in effects]
    wide = [reach(level, df) * math.sqrt(left / df) for level in shares]
    return [[d + s * w * size for w in wide for s in (-1, 1)] for d, size in effects]


def many(y, order, use, out):
    """p of any difference, then p of each pair adjusted for their number (largest |t|)."""
    q = basis(use, out)
    mean = sum(a for a, u in zip(y, use) if u) / sum(use)
    off = rounding(y, 0.0, use)
    y = residual([a - mean if u else 0.0 for a, u in zip(y, use)], q)
    total = dot(y, y)

    def statistics(z):
        inside, pairs, _ = fit(y, z, use, q)
        left = math.sqrt(max(total - inside, total * 1e-15))
        return inside, [t / left for t in pairs]

    inside, pairs = statistics(order)
    counts = [0, 0] + [0] * len(pairs)
    loose = max(1e-9, 2 * off * math.sqrt(sum(use) / max(total - inside, total * 1e-15)))
    # All orders that differ only by renaming have one F and one largest |t|.
    for z in orders():
        first = [s for i, s in enumerate(z) if s not in z[:i]]
        if first == sorted(first):
            f, t = statistics(z)
            counts[0] += 1
            counts[1] += math.sqrt(f) >= math.sqrt(inside) * (1 - loose)
            for i, each in enumerate(pairs):
                counts[2 + i] += max(t) >= each * (1 - loose) - 1e-12
    return [c / counts[0] for c in counts[1:]]


def bend(y, order, use, out):
    """Partial t of the bent levels after drift and levels, and the share of orders with one as large."""
    q = basis(use, out)
    mean = sum(a for a, u in zip(y, use) if u) / sum(use)
    wy = residual([a - mean if u else 0.0 for a, u in zip(y, use)], q)
    squares, cubes, total = sum(a ** 2 for a in at), sum(a ** 3 for a in at), dot(wy, wy)
    bent = [a * a - squares / setups - a * cubes / squares for a in at]
    df = sum(use) - len(q) - 2

    products = ([a * a for a in at], [a * b for a, b in zip(at, bent)], [b * b for b in bent])
    columns = [(use, by) for by in products] + [(wy, at), (wy, bent)] + [(u, by) for u in q for by in (at, bent)]

    def fitted(sums):
        x2, both, v2, x, v, *along_q = sums
        px, pv = along_q[::2], along_q[1::2]
        xx, xv, vv = x2 - dot(px, px), both - dot(px, pv), v2 - dot(pv, pv)
        share = 1 / xx if xx > 1e-9 * x2 else 0.0
        own, up, left = vv - xv * xv * share, v - x * xv * share, total - x * x * share
        if own <= 1e-9 * v2:
            return 0.0, left
        return up / math.sqrt(own) / math.sqrt(max(left - up * up / own, total * 1e-15) / max(df, 1)), left

    seen, left = fitted(sum(a * by[s] for a, s in zip(v, order)) for v, by in columns)
    if df < 1 or left <= 1e-18 * sum(use) * max(abs(a + mean) for a, u in zip(y, use) if u) ** 2:
        return ["NA", "NA"]
    loose = 2 * rounding(y, 0.0, use) / math.sqrt(left / (df + 1))
    least = abs(seen) * (1 - loose) - loose if loose > 1e-9 else abs(seen) * (1 - 1e-9)
    hits = [abs(fitted(sums)[0]) >= least for sums in walked(columns)]
    return [seen, sum(hits) / len(hits)]


def each_level(y, order, use, out, lower):
    """Means by one regression on levels and drift, their pairs, and the levels that beat both ends or end the trend."""
    ridden = sorted({s for s, u in zip(order, use) if u}, key=lambda s: levels[s])
    degree, covariates = out
    other = [[i ** d for i in range(stints)] for d in range(1, degree + 1)] + covariates
    columns = [[float(s == r) for s in order] for r in ridden]
    for x in other:
        mean = sum(a for a, u in zip(x, use) if u) / sum(use)
        top = max(abs(a - mean) for a, u in zip(x, use) if u)
        columns.append([(a - mean) / top for a in x])
    columns = [[a if u else 0.0 for a, u in zip(c, use)] for c in columns]
    mean, n = sum(a for a, u in zip(y, use) if u) / sum(use), len(columns)
    y = [a - mean if u else 0.0 for a, u in zip(y, use)]
    m = [[dot(a, b) for b in columns] + [float(a is b) for b in columns] + [dot(a, y)] for a in columns]
    for i in range(n):  # Gauss and Jordan, as above
        pivot = max(range(i, n), key=lambda r: abs(m[r][i]))
        m[i], m[pivot] = m[pivot], m[i]
        m[i] = [v / m[i][i] for v in m[i]]
        for r in range(n):
            if r != i:
                m[r] = [a - m[r][i] * b for a, b in zip(m[r], m[i])]
    left = [a - sum(m[i][-1] * columns[i][j] for i in range(n)) for j, a in enumerate(y)]
    df, k = sum(use) - n, len(ridden)
    sd = math.sqrt(dot(left, left) / df)
    alone, together = reach(0.95, df, 2), reach(0.95, df, k)
    error = [[sd * math.sqrt(m[a][n + a] + (m[b][n + b] - 2 * m[a][n + b] if a != b else 0)) for b in range(k)] for a in range(k)]
    means, pairs = {}, {}
    for i, s in enumerate(ridden):
        one, e = mean + m[i][-1], error[i][i]
        means["ABCDEF"[s]] = [one, e, one - alone * e, one + alone * e]
    for a, b in itertools.combinations(range(k), 2):
        d, e = m[b][-1] - m[a][-1], error[a][b]
        pairs["ABCDEF"[ridden[a]] + "-" + "ABCDEF"[ridden[b]]] = [d, d - together * e, d + together * e]
    sign = 1 if lower else -1
    best = min(range(1, k - 1), key=lambda i: sign * m[i][-1], default=0)
    far = reach(0.90, df, 2) if setups == 3 else together
    beats = k == setups and all(sign * (m[e][-1] - m[best][-1]) > far * error[e][best] for e in (0, k - 1))
    first = min(range(k), key=lambda i: sign * m[i][-1])
    return means, pairs, levels[ridden[best]] if beats else "NA", levels[ridden[first]]


def family(measures):
    """Adjusted p of the secondary measures: step-down maximum, or Holm where the stints differ."""
    order = measures[0][1]
    if setups > 2 or any(m[2] != measures[0][2] for m in measures):
        p = [two(*m, False)[1] if levels else many(*m)[0] if setups > 2 else alone(m) for m in measures]
        adjusted, before = [0.0] * len(p), 0.0
        for rank, i in enumerate(sorted(range(len(p)), key=lambda i: p[i])):
            before = adjusted[i] = min(1.0, max(before, (len(p) - rank) * p[i]))
        return adjusted
    parts, observed = [size_of(m) for m in measures], []
    for r in parts:
        observed.append(r(order))
    ranks, counts, total = sorted(range(len(parts)), key=lambda i: -observed[i]), [0] * len(parts), 0
    for z in orders():
        total, largest = total + 1, 0.0
        for i in reversed(ranks):
            largest = max(largest, parts[i](z))
            counts[i] += largest >= observed[i] * (1 - 1e-9) - 1e-15
    adjusted, before = [0.0] * len(parts), 0.0
    for i in ranks:
        before = adjusted[i] = max(before, counts[i] / total)
    return adjusted


def size_of(measure):
    """(z'Wy)^2 / (z'Wz y'Wy) of an order, as a function of the order."""
    y, _, use, out = measure[:4]
    q = basis(use, out)
    mean = sum(a for a, u in zip(y, use) if u) / sum(use)
    e = residual([a - mean if u else 0.0 for a, u in zip(y, use)], q)
    ss = dot(e, e)
    flat = ss <= 1e-18 * sum(use) * max(abs(a) for a, u in zip(y, use) if u) ** 2

    def size(z):
        signs = [a - 0.5 if u else 0.0 for a, u in zip(z, use)]
        c = dot(signs, signs) - sum(dot(signs, u) ** 2 for u in q)
        return 0.0 if flat or c <= 1e-9 else dot(signs, e) ** 2 / (c * ss)

    return size


def along(columns, order, use, out):
    """Differences of all pieces, their running sums, and half the width of the band of these."""
    q = basis(use, out)
    w = residual([s - 0.5 if u else 0.0 for s, u in zip(order, use)], q)
    c0, estimates, running, left = dot(w, w), [], [0.0] * stints, []
    for y in columns:
        mean = sum(a for a, u in zip(y, use) if u) / sum(use)
        v = residual([a - mean if u else 0.0 for a, u in zip(y, use)], q)
        estimates.append(dot(w, v) / c0)
        running = [r + a - estimates[-1] * b for r, a, b in zip(running, v, w)]
        left.append(running)
    sums, squares, shares = list(itertools.accumulate(estimates)), [dot(r, r) for r in left], []
    for z in orders():
        signs = [a - 0.5 if u else 0.0 for a, u in zip(z, use)]
        c = dot(signs, signs) - sum(dot(signs, u) ** 2 for u in q)
        largest = max(dot(signs, r) ** 2 / s for r, s in zip(left, squares))
        shares.append(largest / c if c > 1e-9 * sum(use) / 4 else 0.0)
    if len(shares) < 200 and (stints, len(shares)) != (8, 50):
        return estimates, sums, ["NA"] * len(sums)  # too few orders for a band that holds
    share = sorted(shares, reverse=True)[math.floor(0.05 * len(shares) + 1e-9)]
    return estimates, sums, [math.sqrt(share / (1 - share) * s / c0) for s in squares]


def alone(measure):
    size = size_of(measure)
    observed = size(measure[1])
    hits = [size(z) >= observed * (1 - 1e-9) - 1e-15 for z in orders()]
    return sum(hits) / len(hits)


def guesses(order, said):
    """One-sided p and mid-p of right less wrong guesses, of levels of where they lay; those held fixed, the order varied."""
    score = [{"A": -1, "B": 1, "low": -1, "high": 1}.get(g, 0) for g in said]
    t = sum(at[s] * g for s, g in zip(order, score))
    every = [sums for (sums,) in walked([(score, at)])]
    more, same = sum(v > t + 1e-9 for v in every), sum(abs(v - t) <= 1e-9 for v in every)
    return [(more + same) / len(every), (more + same / 2) / len(every)] + ([t] if levels else [])


def waits(order, seconds):
    """Real swaps less dummy ones, and the slowest setup to fit less the quickest: difference, p, mid-p each."""
    use = [w is not None for w in seconds]
    n, known = sum(use), [w for w in seconds if w is not None]
    q = basis(use, (1, []))  # a constant and a straight line are taken out
    w = residual([s - sum(known) / n if u else 0.0 for s, u in zip([s or 0.0 for s in seconds], use)], q)
    if dot(w, w) <= 1e-18 * n * max(map(abs, known)) ** 2:
        w = [0.0] * len(w)
    slack = max(1e-9 * math.sqrt(dot(w, w)), n * math.ulp(max(map(abs, known))))

    def real(z):
        x = [(z[i] != z[i - 1]) - 0.5 if u else 0.0 for i, u in enumerate(use)]
        size, told = dot(x, x) - sum(dot(x, u) ** 2 for u in q), dot(x, w)
        return (0.0, 0.0) if size <= 1e-9 * n / 4 else (told / math.sqrt(size), told / size)

    def apart(z):
        squares, _, effects = fit(w, z, use, q)
        return math.sqrt(max(0.0, squares)), max((abs(d) for d, _ in effects), default=None)

    both = []
    for statistic in (real, apart):
        seen, difference = statistic(order)
        every = [statistic(z)[0] for z in orders()]
        more, same = sum(v > seen + slack for v in every), sum(abs(v - seen) <= slack for v in every)
        both.append([difference, (more + same) / len(every), (more + same / 2) / len(every)])
    return both


def uneven(order, void):
    """Share of orders whose voids fall at least as unevenly on the setups."""
    def squares(z):
        return sum(sum(v for v, s in zip(void, z) if s == a) ** 2 for a in range(setups))

    if not any(void):
        return [1.0]
    observed = squares(order)
    every = [squares(z) >= observed for z in orders()]
    return [sum(every) / len(every)]


def looked(order, y, use, degree, summary, ratio):
    """Smallest level at which a look, or the end unless a look stopped the day, marks the ridden order."""
    kept = {}
    for r in read("looks.csv"):
        known = kept.setdefault(int(r["after_stint"]), (r["settled"] == "true", {}))[1]
        if r["value"]:
            v = float(r["value"])
            known.setdefault(int(r["stint"]), []).append(math.log(v) if ratio else v)
    short = any(r["in_the_day"] != "true" for r in stint_rows)
    days, last = [], {}
    for n in sorted(kept):
        last = {}
        for stint, v in kept[n][1].items():
            if summary != "median":
                last[stint] = sum(v) / len(v)
            elif len(v) == len(scored[stint - 1]):
                last[stint] = (sorted(v)[(len(v) - 1) // 2] + sorted(v)[len(v) // 2]) / 2
        days.append((n / stints, [last.get(i + 1) for i in range(stints)]))
    if not (short and any(settled for settled, _ in kept.values())):
        end = [v if u else None for v, u in zip(y, use)]
        days.append((1.0, [last.get(i + 1) if i < max(kept) else end[i] for i in range(stints)]))
    every = [z for z in orders() if z[0] == 0]  # a mirror image gives the same
    own = every.index(order if order[0] == 0 else tuple(1 - s for s in order))
    ranked = []
    for share, values in days:
        there = [v is not None for v in values]
        q = basis(there, (degree, [])) if sum(there) > degree + 1 else []
        mean = sum(v for v in values if v is not None) / max(1, sum(there))
        centred = [v - mean if u else 0.0 for v, u in zip(values, there)]
        top = max(map(abs, centred)) or 1.0
        e, found = residual([v / top for v in centred], q), []
        for z in every:
            signs = [s - 0.5 if u else 0.0 for s, u in zip(z, there)]
            c = dot(signs, signs) - sum(dot(signs, u) ** 2 for u in q)
            found.append(abs(dot(signs, e)) / math.sqrt(c) if q and c > 1e-9 * sum(there) / 4 else 0.0)
        by = sorted(range(len(every)), key=lambda i: -found[i])
        groups = [[by[0]]]
        for a, b in zip(by, by[1:]):
            if found[a] - found[b] > 1e-9 * found[by[0]]:
                groups.append([])
            groups[-1].append(b)
        ranked.append((share, groups))

    def marked(level):
        low, high = 0.0, 40.0
        while high - low > 1e-13:
            z = (low + high) / 2
            low, high = (z, high) if math.erfc(z / math.sqrt(2)) > level else (low, z)
        done = set()
        for share, groups in ranked:
            room = math.floor(2 * len(every) * math.erfc(high / math.sqrt(2 * share)) + 1e-9) // 2 - len(done)
            for group in groups:
                new = [i for i in group if i not in done]
                if room <= 0 or len(new) > room:
                    break
                done.update(new)
                room -= len(new)
            if own in done:
                return True
        return False

    def halved(low, high):
        while high - low > 1e-12:
            middle = (low + high) / 2
            low, high = (low, middle) if marked(middle) else (middle, high)
        return high

    low, high = 0.0, 0.3
    if not marked(high):
        low, high = 0.3, 1.0
        for i in range(1, 28):
            level = 0.3 + 0.7 * i / 28
            if marked(level):
                high = level
                break
            low = level
    p = least = halved(low, high)
    half = 0.25 / len(every)
    for i in range(1, 41):
        if p - i * half > 0 and marked(p - i * half):
            least = p - i * half
    return [p if least == p else halved(max(0.0, least - half), least)]


def line(name, numbers):
    print(name + "\t" + "\t".join(n if n == "NA" else repr(float(n)) for n in numbers))


def taken(measure):
    """The covariates that are taken out of a measure; a stint that lacks one is masked."""
    all_rows = read("taken_out.csv") if os.path.exists(folder + "/taken_out.csv") else []
    mine = [r for r in all_rows if r["measure"] == measure]
    return [[r for r in mine if r["covariate"] == c] for c in dict.fromkeys(r["covariate"] for r in mine)]


stint_rows, laps = read("stints.csv"), read("laps.csv")
declared = {r["measure"]: r for r in read("measures.csv")}
watched = [m for m, r in declared.items() if r["role"] == "watch for harm" and r["worthwhile"]]
order = tuple(ord(r["setup"]) - 65 for r in stint_rows)
scored = [
    [l for l in laps if l["stint"] == r["stint"] and l["scored"] == l["ridden"] == "true"] for r in stint_rows
]
# A recorded time with a void sector on its way is void like its lap, whatever else the lap says.
times = read("timed.csv") if os.path.exists(folder + "/timed.csv") else []
gone = {(r["measure"], r["stint"], r["lap_in_stint"]) for r in times if r["counts"] == "recording" and r["void"] == "true"}


def voids(measure):
    return [[bool(l["void"]) or (measure, l["stint"], l["lap_in_stint"]) in gone for l in s] for s in scored]


secondary, harmed = {}, {}
looks = read("looks.csv") if os.path.exists(folder + "/looks.csv") else []
stopped = any(r["settled"] == "true" for r in looks) and any(r["in_the_day"] != "true" for r in stint_rows)
for measure in dict.fromkeys(r["measure"] for r in rows):
    mine = [r for r in rows if r["measure"] == measure]
    use = [r["value"] != "" for r in mine]
    if not any(use):
        continue  # nobody gave a value
    y = [float(r["value"]) if r["value"] else 0.0 for r in mine]
    covariates = [[r["value"] for r in g] for g in taken(measure)]
    covered = [all(v) for v in zip(*covariates)] if covariates else [True] * stints
    out = (["none", "line", "curve"].index(mine[0]["drift"]), [[float(v or 0) for v in c] for c in covariates])
    lost = voids(measure)
    void = [bool(s) and all(s) for s in lost]
    # A median that lacks a lap for a void has no value, and does not count as missing.
    short = [any(v) and any(l[measure] and not w for l, w in zip(s, v)) for s, v in zip(scored, lost)]
    ratio = mine[0]["scale"] == "ratio"
    there = [u for u, s, v, h, c in zip(use, scored, void, short, covered) if s and not v and c and (u or not h)]
    primary = declared[measure]["role"] == "primary"
    tested = sum(not u for u in there) <= 0.3 * len(there) and (primary or not stopped)
    if setups == 2 or levels:
        harm, harms = None, None
        if tested and (measure in watched or levels and primary and declared[measure]["worthwhile"]):
            size = float(declared[measure]["worthwhile"])
            harm, harms = math.log1p(size / 100) if ratio else size, []
        line(measure, two(y, order, use, out, ratio, harm, harms))
        if harms and measure in watched:
            harmed[measure] = harms
        elif harms:
            line(measure + ", against D", harms)
        if levels:
            bent = bend(y, order, use, out)
            line(measure + ", bend", bent)
            better = declared[measure]["better"]
            means, apart_by, middle, first = each_level(y, order, use, out, better == "lower")
            back = (lambda v: [math.exp(a) for a in v]) if ratio else list
            for letter, (mean, error, low, high) in means.items():
                line(measure + ", " + letter, back([mean]) + [error] + back([low, high]))
            for pair, numbers in apart_by.items():
                line(measure + ", " + pair, back(numbers))
            if primary and better != "neither":
                estimate, p = two(y, order, use, out, False)[:2]
                end = max(levels) if (estimate < 0) == (better == "lower") else min(levels)
                line(measure + ", middle", [middle if bent[1] != "NA" and bent[1] <= 0.05 + 1e-12 else "NA"])
                line(measure + ", end", [first if p <= 0.05 + 1e-12 and first == end else "NA"])
        if primary and looks:
            line("session looks", looked(order, y, use, out[0], declared[measure].get("summary"), ratio))
    else:
        found = many(y, order, use, out)
        line(measure, found[:1])
        shares = [0.95] + ([1 - 0.05 / len(watched)] if measure in watched else [])
        back = math.exp if ratio else float
        for (a, b), p, ends in zip(
            itertools.combinations("ABCDEF"[:setups], 2), found[1:], apart(y, order, use, out, shares)
        ):
            line(measure + ", " + a + "-" + b, [p] + [e if e == "NA" else back(e) for e in ends])
    if declared[measure]["role"] == "secondary" and tested:
        secondary[measure] = (y, order, use, out)
if secondary:
    for measure, p in zip(secondary, family(list(secondary.values()))):
        line(measure + ", adjusted", [p])
both = {m: min(1.0, 2 * min(p[0], p[3])) for m, p in harmed.items()}
before = 0.0
for rank, measure in enumerate(sorted(both, key=both.get)):
    before = min(1.0, max(before, (len(watched) - rank) * both[measure]))
    line(measure + ", harm", harmed[measure] + [both[measure], before])
parts = {}
for r in read("way.csv") if os.path.exists(folder + "/way.csv") else []:
    parts.setdefault(r["part"], {}).setdefault(int(r["number"]), []).append(r)
for part, columns in parts.items():
    told = []
    for mine in columns.values():
        use = [r["value"] != "" for r in mine]
        degree = ["none", "line", "curve"].index(mine[0]["drift"])
        if any(use) and mine[0]["tested"] == "true":
            told.append(([float(r["value"] or 0) for r in mine], order, use, (degree, [])))
    if told:
        line("where " + part + ", adjusted", family(told))
    if told and len(told) == len(columns) and all(m[2] == told[0][2] for m in told):
        found = along([m[0] for m in told], *told[0][1:])
        for name, numbers in zip(("", ", sums", ", bands"), found):
            line("where " + part + name, numbers)
said = [r["guess"] if r["in_the_day"] == "true" else "" for r in stint_rows]
if (setups == 2 or levels) and any(said):
    line("session guesses", guesses(order, said))
timed = {r["stint"]: r for r in read("waits.csv")} if os.path.exists(folder + "/waits.csv") else {}
waited = [float(r["wait"]) if r["counts"] == "true" else None for r in (timed.get(s["stint"], {"counts": ""}) for s in stint_rows)]
reals = {a != b for a, b, w in zip(order[1:], order, waited[1:]) if w is not None}
if sum(w is not None for w in waited) >= 8 and len(reals) == 2:
    kind, setup = waits(order, waited)
    line("session waits", kind)
    if setup[0] is not None:
        line("session waits by setup", setup)
lost = voids(next(m for m, r in declared.items() if r["role"] == "primary"))
line("session voids", uneven(order, [bool(s) and all(s) for s in lost]))
line("session void laps", uneven(order, [sum(s) for s in lost]))
