import array, bisect, csv, itertools, math, os, random, sys

folder = sys.argv[1] if len(sys.argv) > 1 else os.path.dirname(os.path.abspath(__file__))
WHOLE = 2 ** 24  # so many combinations are walked; beyond them the program drew DRAWS, and this draws OWN
DRAWS, OWN = 999_999, 100_000


def read(*path):
    return list(csv.DictReader(open(os.path.join(folder, *path), encoding="utf-8", newline="")))


def dot(v, w):
    return sum(a * b for a, b in zip(v, w))


def residual(v, q):
    for _ in range(2):
        for u in q:
            d = dot(v, u)
            v = [a - d * b for a, b in zip(v, u)]
    return v


def basis(use, degree):
    t = [(i - (len(use) - 1) / 2) / max(1, (len(use) - 1) / 2) for i in range(len(use))]
    q = []
    for d in range(degree + 1):
        v = residual([t[i] ** d if u else 0.0 for i, u in enumerate(use)], q)
        q.append([a / math.sqrt(dot(v, v)) for a in v])
    return q


def orders(rule):
    """Every admissible order of two setups; 0 is A."""
    block = int(rule["block"])
    if rule["patterns"]:
        blocks = [tuple(ord(c) - 65 for c in p) for p in sorted(set(rule["patterns"].split()))]
    else:
        blocks = [z for z in itertools.product((0, 1), repeat=block) if 2 * sum(z) == block]
    found = []
    for parts in itertools.product(blocks, repeat=int(rule["stints"]) // block):
        z = sum(parts, ())
        if rule["max_run"] and max(len(list(g)) for _, g in itertools.groupby(z)) > int(rule["max_run"]):
            continue
        if rule["min_trend_efficiency"]:
            t = [i - (len(z) - 1) / 2 for i in range(len(z))]
            y = [s - 0.5 for s in z]
            if 1 - dot(y, t) ** 2 / dot(t, t) / dot(y, y) < float(rule["min_trend_efficiency"]) - 1e-9:
                continue
        found.append(z)
    return found


# Student's t, chi squared

def beta(a, b, x):
    """Regularised incomplete beta function, by the continued fraction."""
    if x in (0.0, 1.0):
        return x
    if x > (a + 1) / (a + b + 2):
        return 1 - beta(b, a, 1 - x)
    front = math.exp(math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b) + a * math.log(x) + b * math.log1p(-x)) / a
    c, d = 1.0, 1 / (1 - (a + b) * x / (a + 1))
    h = d
    for m in range(1, 10_000):
        for n in (m * (b - m) * x / (a + 2 * m - 1) / (a + 2 * m), -(a + m) * (a + b + m) * x / (a + 2 * m) / (a + 2 * m + 1)):
            d, c = 1 / (1 + n * d), 1 + n / c
            h *= d * c
        if abs(d * c - 1) < 1e-16:
            break
    return front * h


def t_above(t, df):
    tail = beta(df / 2, 0.5, df / (df + t * t)) / 2
    return tail if t > 0 else 1 - tail


def t_quantile(tail, df):
    low, high = 0.0, 1.0
    while t_above(high, df) > tail:
        high *= 2
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if t_above(middle, df) > tail else (low, middle)
    return (low + high) / 2


def chi_above(x, df):
    a = 1.0 if df % 2 == 0 else 0.5
    tail = math.exp(-x / 2) if df % 2 == 0 else math.erfc(math.sqrt(x / 2))
    while a < df / 2:
        tail += math.exp(a * math.log(x / 2) - x / 2 - math.lgamma(a + 1)) if x > 0 else 0.0
        a += 1
    return tail


def holm(p):
    adjusted, before = [0.0] * len(p), 0.0
    for rank, i in enumerate(sorted(range(len(p)), key=lambda i: p[i])):
        before = adjusted[i] = min(1.0, max(before, (len(p) - rank) * p[i]))
    return adjusted


class Session:
    """The tables of one session's package; its letters go by the setups of the first plan."""

    def __init__(self, row):
        self.row, self.at = row, "sessions/" + row["number"]
        self.pooled = row["becomes"] == "pooled"
        self.rider = row["rider"].strip().lower()
        self.letters = row["setups"]
        self.units, self.rule = read(row["folder"], "units.csv"), read(row["folder"], "rule.csv")[0]
        self.measures = {m["measure"]: m for m in read(row["folder"], "measures.csv")}
        self.laps = read(row["folder"], "laps.csv")
        stints = read(row["folder"], "stints.csv")
        self.order = [self.letters.index(s["setup"]) for s in stints]
        flip = self.letters == "BA"
        self.all = [tuple(1 - s for s in z) for z in orders(self.rule)] if flip else orders(self.rule) if len(self.letters) == 2 else []
        self.days = {}

    def day(self, name):
        if name not in self.days:
            self.days[name] = Day(self, name)
        return self.days[name]

    def says(self, name, wanted):
        """What the session says of a measure beside the primary one, or None."""
        own = self.measures.get(name)
        same = own and all(own[f] == wanted[f] for f in ("kind", "unit", "scale", "better", "role"))
        if not same or own.get("summary", "mean") != wanted.get("summary", "mean"):
            return None
        size = [float(m["worthwhile"]) if m["worthwhile"] else None for m in (own, wanted)]
        day = self.day(name)
        return day if size[0] == size[1] and day.compared and 10 * self.missing(name) <= 3 * self.open else None

    def missing(self, name):
        """Stints that were ridden, are not void, and have no value; self.open counts all of those not void."""
        use, self.open, missing = self.day(name).use, 0, 0
        for i, known in enumerate(use):
            own = [l for l in self.laps if int(l["stint"]) == i + 1 and l["scored"] == "true" and l["ridden"] == "true"]
            void = [l for l in own if l["void"]]
            short = not known and void and any(l[name] and not l["void"] for l in own)
            if own and len(void) < len(own) and not short:
                self.open += 1
                missing += not known
        return missing


class Day:
    """One measure of one session: residuals, noise, and the sums of every order over the noise."""

    def __init__(self, session, name):
        units = [u for u in session.units if u["measure"] == name]
        self.session, self.use = session, [u["value"] != "" for u in units]
        self.known = sum(self.use)
        self.compared = self.known > 0
        if not self.compared:
            return
        self.ratio = units[0]["scale"] == "ratio"
        self.q = basis(self.use, {"none": 0, "line": 1, "curve": 2}[units[0]["drift"]])
        raw = [float(u["value"]) if u["value"] else 0.0 for u in units]
        mean = sum(raw) / self.known
        self.y = residual([a - mean if k else 0.0 for a, k in zip(raw, self.use)], self.q)
        squares, flat = dot(self.y, self.y), 1e-18 * self.known * max(map(abs, raw)) ** 2
        self.left = [sum(k and s == side for k, s in zip(self.use, session.order)) for side in (0, 1)]
        if len(session.letters) > 2:
            self.several(squares)
            return
        self.w = residual(self.signs(session.order), self.q)
        c0, self.df = dot(self.w, self.w), self.known - len(self.q) - 1
        self.compared = self.df > 0 and c0 > 1e-9 * self.known and squares > flat
        if not self.compared:
            return
        self.estimate = dot(self.w, self.y) / c0
        e = [a - self.estimate * b for a, b in zip(self.y, self.w)]
        self.sd = math.sqrt(dot(e, e) / self.df)
        self.error = self.sd / math.sqrt(c0)
        self.above = [0.0, self.estimate]
        self.noise = squares / (self.known - len(self.q))
        self.information = c0 / self.noise
        self.rows = None

    def signs(self, order):
        return [s - 0.5 if k else 0.0 for s, k in zip(order, self.use)]

    def sums(self):
        """z'Wy, z'Ww and z'Wz of every order, over the noise."""
        if self.rows is None:
            self.rows = []
            for order in self.session.all:
                z = self.signs(order)
                c = dot(z, z) - sum(dot(z, u) ** 2 for u in self.q)
                self.rows.append((dot(z, self.y) / self.noise, dot(z, self.w) / self.noise, c / self.noise))
        return self.rows

    def several(self, squares):
        """Three and more setups: how far each lies above the first, by least squares."""
        n = len(self.session.letters) - 1
        d = [residual([float(s == i + 1 and k) for s, k in zip(self.session.order, self.use)], self.q) for i in range(n)]
        m = [[dot(a, b) for b in d] + [dot(a, self.y)] for a in d]
        for i in range(n):
            pivot = max(range(i, n), key=lambda r: abs(m[r][i]))
            m[i], m[pivot] = m[pivot], m[i]
            m[i] = [v / m[i][i] for v in m[i]]
            for r in range(n):
                if r != i:
                    m[r] = [a - m[r][i] * b for a, b in zip(m[r], m[i])]
        self.above = [0.0] + [row[-1] for row in m]
        self.df = self.known - len(self.q) - n
        self.sd = math.sqrt(max(0.0, squares - sum(a * dot(v, self.y) for a, v in zip(self.above[1:], d))) / self.df)


class Curve:
    """One curve over all combinations of the days' orders, or over draws of them."""

    def __init__(self, days):
        self.days, c0 = days, sum(d.information for d in days)
        self.estimate = sum(d.information * d.estimate for d in days) / c0
        squares = sum((dot(d.y, d.y) - d.estimate ** 2 * dot(d.w, d.w)) / d.noise + (d.estimate - self.estimate) ** 2 * d.information for d in days)
        self.scale = math.sqrt(squares / sum(d.known for d in days) / c0)
        self.count = math.prod(len(d.session.all) for d in days)
        self.sampled, s = self.count > WHOLE, math.sqrt(c0)
        self.always, self.knots = 0, array.array("d")
        lists = [[(a - self.estimate * b, b, c) for a, b, c in d.sums()] for d in days]
        if self.sampled:
            draw = random.Random(1)
            rows = ([draw.choice(each) for each in lists] for _ in range(OWN))
            self.take(0.0, c0, c0, s, c0)
            for row in rows:
                self.take(*map(sum, zip(*row)), s, c0)
        else:
            # The first session's mirror images come with the joint mirror image.
            lists[0] = lists[0] and [r for r, z in zip(lists[0], days[0].session.all) if z[0] == days[0].session.all[0][0]]
            before = [(0.0, 0.0, 0.0)]
            for each in lists[:-1]:
                before = [(a + x, b + y, c + z) for a, b, c in before for x, y, z in each]
            for a, b, c in before:
                for x, y, z in lists[-1]:
                    self.take(a + x, b + y, c + z, s, c0)
        self.knots = sorted(self.knots)
        self.total = self.always + len(self.knots)

    def take(self, a, b, c, s, c0):
        """An order and its mirror image."""
        reach = s * math.sqrt(c) if c > 1e-9 * c0 else s
        if c <= 1e-9 * c0:
            a = b = 0.0
        for top, bottom in ((-a, reach - b), (a, reach + b)):
            if bottom <= 1e-9 * reach:
                self.always += 1
            else:
                off = top / bottom
                self.knots.append(self.estimate + (0.0 if abs(off) <= 1e-9 * self.scale else off))

    def above(self, shift):
        """One-sided p of "more than the shift"."""
        return (self.always + bisect.bisect_right(self.knots, shift + self.tie(shift))) / self.total

    def below(self, shift):
        return (self.always + len(self.knots) - bisect.bisect_left(self.knots, shift - self.tie(shift))) / self.total

    def tie(self, shift):
        return 1e-9 * max(self.scale, abs(shift - self.estimate))

    def p(self):
        return min(1.0, 2 * min(self.above(0.0), self.below(0.0)))

    def interval(self, level):
        j = math.floor((1 - level) / 2 * self.total + 1e-9) + 1 - self.always
        return (self.knots[j - 1], self.knots[len(self.knots) - j]) if j > 0 else None


class Mean:
    """Several riders: the mean of their means, each counted once, with its t."""

    sampled = False

    def __init__(self, means):
        k = len(means)
        self.estimate, self.df = sum(means) / k, k - 1
        sd = math.sqrt(sum((m - self.estimate) ** 2 for m in means) / self.df) if k > 1 else 0.0
        self.error = sd / math.sqrt(k)
        self.tested = k >= 4 and self.error > 1e-12 * abs(self.estimate)

    def above(self, shift):
        return t_above((self.estimate - shift) / self.error, self.df)

    def below(self, shift):
        return t_above((shift - self.estimate) / self.error, self.df)

    def p(self):
        return min(1.0, 2 * min(self.above(0.0), self.below(0.0)))

    def interval(self, level):
        half = t_quantile((1 - level) / 2, self.df) * self.error
        return self.estimate - half, self.estimate + half


# Holding numbers against the answer

answer = {row["number"]: row["value"] for row in read("answer.csv")}
done, wrong = set(), []


def is_(name, value, agrees=None):
    """One number: printed, and held against the answer."""
    done.add(name)
    there = answer.get(name)
    shown = "" if value is None else value if isinstance(value, str) else str(value).lower() if isinstance(value, bool) else format(value, ".17g")
    print(name + "\t" + shown)
    if there is None:
        wrong.append(name + " is not in the answer; here " + shown)
    elif agrees is None:
        number = isinstance(value, (int, float)) and not isinstance(value, bool) and there != ""
        same = abs(float(there) - value) <= 1e-8 * max(1.0, abs(value)) if number else there == shown
        if not same:
            wrong.append(f"{name}: {there} in the answer, {shown} here")
    elif not agrees(float(there) if there else None):
        wrong.append(f"{name}: {there} in the answer is further from {shown} than draws can be")


def slack(p):
    """Five standard errors of the draws of both sides."""
    return 5 * math.sqrt(max(p * (1 - p), 1 / OWN) * (1 / DRAWS + 1 / OWN))


def p_is(name, p, sampled):
    is_(name, p, (lambda there: there is not None and abs(there - p) <= slack(p)) if sampled else None)


def interval_is(name, pooled, level):
    ends = pooled.interval(level) if pooled else None
    if ends is None:
        is_(name, None)
        return
    for i, share in enumerate((pooled.above, pooled.below)):
        tail = (1 - level) / 2
        near = lambda there: there is not None and abs(share(there) - tail) <= slack(tail)
        is_(f"{name}/{i + 1}", ends[i], near if pooled.sampled else None)


def pooled_verdict(real, big, within):
    if within:
        return "real but small" if real else "no worthwhile difference"
    return "real and worthwhile" if real and big else "not settled: direction known" if real else "not settled"


def near_limit(*shares):
    return any(abs(s - 0.05) <= slack(0.05) for s in shares)


# The answer

first = {m["measure"]: m for m in read("measures.csv")}
primary = next(m for m in first.values() if m["role"] == "primary")
sessions = [Session(row) for row in read("sessions.csv") if row["folder"]]
pooled = [s for s in sessions if s.pooled]
two = bool(pooled) and len(pooled[0].letters) == 2


def margin(measure):
    size = float(measure["worthwhile"]) if measure["worthwhile"] else None
    return size if size is None or measure["scale"] == "raw" else math.log1p(size / 100)


is_("pooled_sessions", len(pooled))
if two:
    for s in sessions:
        own = Curve([s.day(primary["measure"])])
        is_(s.at + "/estimate", own.estimate)
        if len(s.all) <= 2 ** 22:
            interval_is(s.at + "/interval_95", own, 0.95)
riders = list(dict.fromkeys(s.rider for s in pooled))
by_rider = [[s.day(primary["measure"]) for s in pooled if s.rider == r] for r in riders]
known = []
for i, own in enumerate(by_rider):
    at, n = f"riders/{i + 1}/", len(own)
    done.add(at + "rider")
    is_(at + "sessions", n)
    sd = math.sqrt(sum(d.df * d.sd ** 2 for d in own) / sum(d.df for d in own))
    above = [sum(d.above[k] for d in own) / n for k in range(len(own[0].above))]
    if two:
        variance = [d.error ** 2 for d in own]
        mean = Mean([sum(d.estimate for d in own) / n])
        mean.error = math.sqrt(sum(variance)) / n
        mean.df = sum(variance) ** 2 / sum(v * v / d.df for v, d in zip(variance, own))
        known.append((mean.estimate, mean.error, sum(d.known for d in own) / n, sd))
        is_(at + "estimate", mean.estimate)
        is_(at + "standard_error", mean.error)
        interval_is(at + "interval_95", Curve(own) if n == 1 else mean, 0.95)
    is_(at + "noise_sd", sd)
    for k, a in enumerate(above):
        is_(f"{at}above_first/{k + 1}", a)
    by_rider[i] = (own, above)
d = margin(primary)
if two:
    these, at = Curve([s.day(primary["measure"]) for s in pooled]), "these_riders_on_these_days/"
    is_(at + "estimate", these.estimate)
    interval_is(at + "interval_95", these, 0.95)
    interval_is(at + "interval_90", these, 0.90)
    p_is(at + "p", these.p(), these.sampled)
    is_(at + "count", these.count)
    is_(at + "sampled", these.sampled)
    if these.sampled:
        done.update((at + "draws", at + "seed"))  # how the program drew
        p = float(answer[at + "p"])
        is_(at + "p_error", math.sqrt(p * (1 - p) / DRAWS))
    if len(riders) == 1 and answer.get("verdict") and d is not None:
        up, down = these.above(d), these.below(-d)
        bounds = these.p(), up if these.estimate > 0 else down, these.below(d), these.above(-d)
        real, big, within = bounds[0] <= 0.05, bounds[1] <= 0.05, max(bounds[2:]) <= 0.05
        word = pooled_verdict(real, big, within)
        is_("verdict", answer["verdict"] if these.sampled and near_limit(*bounds) else word)


def reml(y, v):
    """Weighted mean, its error, and the root of the scatter, where the restricted likelihood is largest."""

    def at(tau):
        w = [1 / (a + tau) for a in v]
        mean = dot(w, y) / sum(w)
        r = [(a - mean) ** 2 for a in y]
        value = -0.5 * (sum(math.log(a + tau) for a in v) + math.log(sum(w)) + dot(w, r))
        slope = -0.5 * (sum(w) - dot(w, w) / sum(w) - sum(a * a * b for a, b in zip(w, r)))
        return value, slope, mean, 1 / math.sqrt(sum(w)), math.sqrt(dot(w, r) / (len(y) - 1))

    middle = sum(y) / len(y)
    scale = sum((a - middle) ** 2 for a in y) / (len(y) - 1) + sum(v) / len(v)
    grid = [0.0] + [scale * 10 ** (i / 20 - 10) for i in range(1, 321)]
    best = max(range(len(grid)), key=lambda i: at(grid[i])[0])
    low, high = (0.0 if best <= 1 else grid[best - 1]), grid[min(best + 1, len(grid) - 1)]
    if at(low)[1] <= 0 and low == 0:
        return at(0.0)[2:]
    for _ in range(300):
        half = (low + high) / 2
        low, high = (half, high) if at(half)[1] > 0 else (low, half)
    return at((low + high) / 2)[2:]


if two and len(riders) > 1:
    at, k = "riders_in_general/", len(riders)
    uneven = any(max(c) > 3 * min(c) * (1 + 1e-9) for c in ([r[2] for r in known], [r[3] for r in known]))
    general = Mean([r[0] for r in known])
    if uneven:
        general.estimate, error, root = reml([r[0] for r in known], [r[1] ** 2 for r in known])
        general.error = error * max(1.0, root)
    is_(at + "method", "modified hartung knapp" if uneven else "equal weight t")
    is_(at + "riders", k)
    is_(at + "estimate", general.estimate)
    interval_is(at + "interval_95", general, 0.95)
    interval_is(at + "interval_90", general, 0.90)
    if answer.get("verdict") and d is not None:
        (low, high), (least, most) = general.interval(0.95), general.interval(0.90)
        is_("verdict", "no variation" if low == high else pooled_verdict(low > 0 or high < 0, least > d or most < -d, least > -d and most < d))
if not two and len(riders) > 1 and any(n.startswith("agreement/") for n in answer):
    ranks = []
    for _, above in by_rider:
        ranks.append([sum(o < a for o in above) + (sum(o == a for o in above) + 1) / 2 for a in above])
    setups, centre = len(ranks[0]), (len(ranks[0]) + 1) / 2
    between = sum(sum(r[j] - centre for r in ranks) ** 2 for j in range(setups))
    chi = (setups - 1) * between / sum((v - centre) ** 2 for r in ranks for v in r)
    is_("agreement/kendall_w", chi / len(ranks) / (setups - 1))
    is_("agreement/p", chi_above(chi, setups - 1))


def together(measures, alone=False):
    """p of every measure from (sum of a)^2 over sum of c; the step-down maximum of several jointly."""
    days = [[m[i] for m in measures] for i in range(len(pooled)) if any(m[i] for m in measures)]
    lists, seen = [], [0.0] * (2 * len(measures))
    for day in days:
        session = next(x for x in day if x).session
        rows = [sum(([s[0], s[2]] for s in each), []) for each in zip(*[x.sums() if x else [(0.0, 0.0, 0.0)] * len(session.all) for x in day])]
        lists.append(rows)
        seen = [a + b for a, b in zip(seen, rows[session.all.index(tuple(session.order))])]
    size = lambda sums: [sums[i] ** 2 / sums[i + 1] if sums[i + 1] > 0 else 0.0 for i in range(0, len(sums), 2)]
    limit = [v * (1 - 1e-9) - 1e-18 for v in size(seen)]
    ranks = sorted(range(len(limit)), key=lambda i: -limit[i])
    count, total = [0] * len(limit), 0

    def take(sums):
        largest = 0.0
        values = size(sums)
        for i in reversed(ranks):
            largest = max(largest, values[i])
            count[i] += largest >= limit[i]

    if math.prod(map(len, lists)) > WHOLE:
        draw, total = random.Random(2), OWN + 1
        take(seen)
        for _ in range(OWN):
            take([sum(c) for c in zip(*[draw.choice(rows) for rows in lists])])
    else:
        before = [[0.0] * len(seen)]
        for rows in lists[:-1]:
            before = [[a + b for a, b in zip(x, y)] for x in before for y in rows]
        total = len(before) * len(lists[-1])
        for x in before:
            for y in lists[-1]:
                take([a + b for a, b in zip(x, y)])
    adjusted, highest = [0.0] * len(limit), 0.0
    for i in ranks:
        highest = adjusted[i] = max(highest, count[i] / total)
    return adjusted


others = []
for name, wanted in first.items() if two else ():
    says = [s.says(name, wanted) for s in pooled]
    if wanted["role"] != "primary" and any(says):
        others.append((name, wanted, says))
watched = sum(m["role"] == "watch for harm" and m["worthwhile"] != "" for m in first.values())
family, harms = [], []
for i, (name, wanted, says) in enumerate(others):
    at, days = f"other_measures/{i + 1}/", [x for x in says if x]
    if len(riders) == 1:
        found, tested = Curve(days), True
    else:
        means = [[x.estimate for x in days if x.session.rider == r] for r in riders]
        found = Mean([sum(m) / len(m) for m in means if m])
        tested = found.tested
    is_(at + "measure", name)
    is_(at + "role", wanted["role"])
    is_(at + "sessions", len(days))
    is_(at + "estimate", found.estimate)
    for level in (0.95, 0.90):
        interval_is(f"{at}interval_{round(level * 100)}", found if tested else None, level)
    if not tested:
        continue
    p_is(at + "p", found.p(), found.sampled)
    if wanted["role"] == "secondary":
        family.append((at, says, found))
    if wanted["role"] == "watch for harm" and wanted["worthwhile"]:
        size = margin(wanted)
        fewest = min(sum(x.left[side] for x in days) for side in (0, 1)) if len(riders) == 1 else 3
        harms.append((at, found, found.above(size), found.below(-size), found.below(size), found.above(-size), fewest, wanted))
if family:
    measures = [says for _, says, _ in family]
    same = all(len({tuple(m[i].use) for m in measures if m[i]}) <= 1 for i in range(len(pooled)))
    if len(riders) > 1:
        adjusted = holm([found.p() for _, _, found in family])
    else:
        adjusted = together(measures) if same else holm([together([m])[0] for m in measures])
    for (at, _, found), p in zip(family, adjusted):
        p_is(at + "p_adjusted", p, len(riders) == 1 and math.prod(len(s.all) for s in pooled) > WHOLE)
both = [min(1.0, 2 * min(up, down)) for _, _, up, down, _, _, _, _ in harms]
for (at, found, up, down, not_more, not_less, fewest, wanted), p, adjusted in zip(harms, both, holm(both + [1.0] * (watched - len(both)))):
    p_is(at + "harm/p", p, found.sampled)
    p_is(at + "harm/p_adjusted", adjusted, found.sampled)
    said = lambda shown, out: "harm of D or more shown" if shown else "harm of D or more ruled out" if out else "not settled"
    more = said(adjusted <= 0.05 + 1e-9 and up <= down, fewest >= 3 and not_more <= 0.05)
    less = said(adjusted <= 0.05 + 1e-9 and up > down, fewest >= 3 and not_less <= 0.05)
    words = (less, more) if wanted["better"] == "higher" else (more, less)
    for which, word in zip(("second_against_first", "first_against_second"), words):
        close = found.sampled and near_limit(adjusted, not_more, not_less)
        is_(at + "harm/" + which, answer[at + "harm/" + which] if close else word)

left = [name for name in answer if name not in done]
wrong += [name + " is in the answer, and not computed here" for name in left]
for each in wrong:
    print("DIFFERS: " + each)
print(f"{len(done)} numbers and words computed again, {len(wrong)} differ")
sys.exit(1 if wrong else 0)
