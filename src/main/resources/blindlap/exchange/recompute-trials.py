import csv, json, math, os, sys

folder = sys.argv[1] if len(sys.argv) > 1 else os.path.dirname(os.path.abspath(__file__))


def read(name):
    return list(csv.DictReader(open(folder + "/" + name, encoding="utf-8")))


plan = json.load(open(folder + "/plan.json", encoding="utf-8"))
run, rule = plan["telling_run"], read("rule.csv")[0]
task, laps, matters = run["task"].replace(" ", "-"), int(rule["trial"]), float(run["matters"])
chance = 1 / 3 if task == "triangle" else 1 / 2
stints, fits = read("stints.csv"), {r["stint"]: r["fitted"] for r in read("helper.csv") if r["fitted"]}
ridden = {r["stint"]: r for r in read("laps.csv")}
null = json.load(open(folder + "/key.json", encoding="utf-8"))["null_run"]


def differed(setups):
    """The lap that was to be named, from 1 within its trial."""
    if task == "two-choice":
        names = [s["name"] for s in plan["setups"]]
        return 1 + setups.index("AB"[names.index(run["more"])])
    return 1 + [setups.count(s) for s in setups].index(1) if task == "triangle" else (2 if setups[1] != setups[0] else 3)


def answered(part):
    """Every lap ridden, none void, a lap named."""
    rode = [ridden.get(r["stint"]) for r in part]
    return all(l and l["ridden"] == "true" and not l["void"] for l in rode) and part[-1]["guess"] not in ("", "-")


def clean(part):
    """What was drawn was on, and the rider knew nothing of it."""
    wrong = [r for r in part if null is None and fits.get(r["stint"], r["setup"]) != r["setup"]]
    return not wrong and not any(r["blind_broken"] for r in part)


trials = [stints[i : i + laps] for i in range(0, len(stints), laps)]
assert all("".join(r["setup"] for r in t) in rule["sequences"].split() for t in trials)
counted = [t for t in trials if answered(t)]


def tail(k, n, p, up):
    """Binomial probability of k or more right of n, or of k or fewer."""
    some = range(k, n + 1) if up else range(0, k + 1)
    return math.fsum(math.comb(n, i) * p**i * (1 - p) ** (n - i) for i in some)


def solve(f, low, high):
    """Where a function that rises passes nought."""
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if f(middle) < 0 else (low, middle)
    return (low + high) / 2


def limits(k, n, out):
    """Clopper and Pearson: out is what is left on either side."""
    low = 0.0 if k == 0 else solve(lambda p: tail(k, n, p, True) - out, 0.0, 1.0)
    high = 1.0 if k == n else solve(lambda p: out - tail(k, n, p, False), 0.0, 1.0)
    return low, high


def told(share):
    return max(0.0, (share - chance) / (1 - chance))


def phi(x):
    return math.erfc(-x / math.sqrt(2)) / 2


def right(d):
    """Share of right answers at a distance d'."""
    if task == "two-choice":
        return phi(d / math.sqrt(2))
    if task == "duo-trio":
        a, b = phi(d / math.sqrt(2)), phi(d / math.sqrt(6))
        return 1 - a - b + 2 * a * b
    step, total = 0.002, 0.0  # Simpson's rule over a half normal
    for i in range(4501):
        z = i * step
        f = (phi(-z * math.sqrt(3) + d * math.sqrt(2 / 3)) + phi(-z * math.sqrt(3) - d * math.sqrt(2 / 3))) * math.exp(-z * z / 2)
        total += f * (1 if i in (0, 4500) else 4 if i % 2 else 2)
    return 2 * total * step / 3 / math.sqrt(2 * math.pi)


def distance(share):
    if share >= 1:
        return "NA"
    return 0.0 if share <= chance else solve(lambda d: right(d) - share, 0.0, 40.0)


def line(name, numbers):
    print(name + "\t" + "\t".join(n if isinstance(n, str) else repr(float(n)) for n in numbers))


def count(name, part):
    n, k = len(part), sum(differed([r["setup"] for r in t]) == int(t[-1]["guess"]) for t in part)
    p, fewer = tail(k, n, chance, True), tail(k, n, chance, False)
    low, high = limits(k, n, 0.05)
    least = next((i for i in range(n + 1) if tail(i, n, chance, True) <= 0.05), None)
    if least is None:
        verdict = "this plan could not show anything"
    elif k >= least:
        verdict = "can tell"
    else:
        cannot = fewer > 0.05 and told(high) < matters
        verdict = "cannot tell as often as would matter" if cannot else "not settled"
    line(name, [n, k, p, fewer])
    line(name + ", really told", [told(k / n), told(low), told(high)])
    line(name + ", distance", [distance(k / n)] + [distance(share) for share in limits(k, n, 0.025)])
    line(name + ", verdict", [verdict])


count("trials", counted)
rest = [t for t in counted if clean(t)]
if rest and len(rest) < len(counted):
    count("without", rest)
