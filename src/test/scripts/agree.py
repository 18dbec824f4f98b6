"""Compares the numbers of the notebook, the data package, compute, Python and R for every sample."""
import json, os, sys

samples, work = sys.argv[1:3]
compared = failures = 0
tested = set()
HARM = ("p_above_d", "p_below_d", "p_above_minus_d", "p_below_minus_d", "p", "p_adjusted")


def same(what, one, other):
    global compared, failures
    compared += 1
    if one is None or other is None:
        agree = one is None and other is None
    else:
        agree = abs(one - other) <= 1e-8 * max(1.0, abs(one))
    if not agree:
        failures += 1
        print(f"{what}: {one} and {other}")


def number(text):
    return None if text == "NA" else float(text)


def ends(measure, name):
    return measure[name] if measure[name] else [None, None]


def session(name, package, answers, tables):
    """Adjusted p, guesses and voids: the report, compute, Python and R."""
    results = {n["about"]: a["result"] for n, a in zip(package["requests"], answers)}
    if "family" in results:
        request = next(n for n in package["requests"] if n["about"] == "family")["request"]
        reported = {m["measure"]: m["p_adjusted"] for m in package["measures"]}
        for measure, p in zip(request["given"]["measures"], results["family"]["p_adjusted"]):
            same(f"{name}, {measure['name']} adjusted, compute", reported[measure["name"]], p)
    guesses = package["guesses"]
    for i, which in enumerate(("p", "mid_p", "t")):
        if which in guesses:
            answer = results.get("guesses", results.get("guesses.levels"))
            same(f"{name}, guesses {which}, compute", guesses[which], answer[which])
        for tool, table in tables.items():
            found = (table.get("session guesses", []) + ["NA"] * 3)[i]
            same(f"{name}, guesses {which}, {tool}", guesses.get(which), number(found))
    waits = package.get("waits", {})
    for about, said, row, prefix in (
        ("waits", waits, "session waits", ""),
        ("waits by setup", waits.get("by_setup", {}), "session waits by setup", "setup_"),
    ):
        for i, which in enumerate(("difference", "p", "mid_p")):
            for tool, table in tables.items():
                found = table.get(row, ["NA"] * 3)[i]
                same(f"{name}, {about} {which}, {tool}", said.get(which), number(found))
            if which in said:
                tested.add(about)
                same(f"{name}, {about} {which}, compute", said[which], results["waits"][prefix + which])
    voids = package["voids"]
    if "voids" in results:
        same(f"{name}, void laps, compute", voids["laps"]["p"], results["voids"]["p"][0])
        same(f"{name}, voids, compute", voids["p"], results["voids"]["p"][1])
    for tool, table in tables.items():
        same(f"{name}, voids, {tool}", voids["p"], number(table["session voids"][0]))
        same(f"{name}, void laps, {tool}", voids["laps"]["p"], number(table["session void laps"][0]))


def where(name, package, answers, tables):
    """Where on the trail: the report, compute, Python and R."""
    found = package.get("where", {})
    line, sectors = found.get("line"), found.get("sectors", [])
    results = {n["about"]: a["result"] for n, a in zip(package["requests"], answers)}
    adjusted = [s["p_adjusted"] for s in sectors if s["p_adjusted"] is not None]
    expected = {"where sector, adjusted": adjusted} if found.get("tested") else {}
    if line:
        cumulative = line["cumulative"]
        expected["where piece"] = line["estimates"]
        expected["where piece, sums"] = cumulative["estimates"]
        expected["where piece, bands"] = cumulative["half_widths_95"]
        if line["p_adjusted"]:
            expected["where piece, adjusted"] = line["p_adjusted"]
        for field, numbers in (("estimates", line["estimates"]), ("p_adjusted", line["p_adjusted"] or [])):
            for one, other in zip(numbers, results["where.line"][field]):
                same(f"{name}, where line {field}, compute", one, other)
    if found.get("intervals_together"):
        expected["where sector"] = [s["estimate"] for s in sectors]
    for row, numbers in expected.items():
        tested.add("where")
        for tool, table in tables.items():
            again = table.get(row, [])
            same(f"{name}, {row}, how many, {tool}", len(numbers), len(again))
            for i, (one, other) in enumerate(zip(numbers, again)):
                same(f"{name}, {row} {i + 1}, {tool}", one, number(other))


def verdict(p, estimate, bounds):
    """A trend's verdict by its p and the one-sided p at D and -D."""
    real, big = p <= 0.05 + 1e-12, bounds[0 if estimate > 0 else 3] <= 0.05 + 1e-12
    if max(bounds[1], bounds[2]) <= 0.05 + 1e-12:
        return "real but small" if real else "no worthwhile trend"
    return "real and worthwhile" if real and big else "not settled: direction known" if real else "not settled"


def levels(place, measure, result, tables):
    """What the trend over levels has beside estimate, p and intervals: the report, compute, Python and R."""
    key = measure["measure"]
    expected = {", bend": [measure["bend"][f] for f in ("t", "p")] if measure["bend"] else [None] * 2}
    again = {", bend": [(result["bend"] or {}).get(f) for f in ("t", "p")]}
    for rows, one in ((expected, measure), (again, result)):
        rows[", per unit"] = [one["per_unit"]]
        for mean, letter in zip(one["means"], "ABCDEF"):  # the levels of a plan rise with their letters
            rows[", " + letter] = [mean["mean"], mean["standard_error"]] + mean["interval_95"]
        for pair in one["between"]:
            rows[", " + pair["pair"]] = [pair["estimate"]] + pair["interval_95"]
        if "middle_better" in measure:
            rows[", middle"], rows[", end"] = [one["middle_better"]], [one["still_better"]]
    tested.add("levels")
    for row, numbers in expected.items():
        for one, other in zip(numbers, again[row]):
            same(f"{place}{row}, compute", one, other)
        for tool, table in tables.items():
            if row == ", per unit":
                continue
            found = table.get(key + row, [])
            same(f"{place}{row}, how many, {tool}", len(numbers), len(found))
            for one, other in zip(numbers, found):
                same(f"{place}{row}, {tool}", one, number(other))
    for tool, table in tables.items():
        bounds = table.get(key + ", against D")
        if measure["role"] == "primary" and bounds:
            word = verdict(measure["p"], measure["estimate"], [float(b) for b in bounds])
            same(f"{place}, verdict {measure['verdict']} is {word} by {tool}", 1, int(word == measure["verdict"]))
            same(f"{place}, verdict, compute", 1, int(result["verdict"] == measure["verdict"]))


COUNT = {  # lines of a telling run, and the fields they give again
    "": ("answered", "correct", "p", "p_fewer"),
    ", really told": ("really_told", "limits_90", "limits_90"),
    ", distance": ("d_prime", "d_prime_interval_95", "d_prime_interval_95"),
}


def trials(name, package, answers, tables):
    """Right answers, with and without doubtful trials: the report, compute, Python and R."""
    run = package["telling_run"]
    results = {n["about"]: a["result"] for n, a in zip(package["requests"], answers)}
    for about, row, said in (("telling", "trials", run), ("telling.without", "without", run.get("without"))):
        if said is None:
            for tool, table in tables.items():
                same(f"{name}, {row}, how many, {tool}", 0, len(table.get(row, [])))
            continue
        tested.add(row)
        for end, fields in COUNT.items():
            for i, field in enumerate(fields):
                one = said[field][i - 1] if isinstance(said[field], list) else said[field]
                for tool, table in tables.items():
                    same(f"{name}, {row}{end} {field} {i}, {tool}", one, number(table[row + end][i]))
                if field not in ("answered", "correct"):
                    again = results[about][field]
                    same(f"{name}, {row}{end} {field} {i}, compute", one, again[i - 1] if isinstance(again, list) else again)
        words = {"compute": results[about]["verdict"], **{t: table[row + ", verdict"][0] for t, table in tables.items()}}
        for tool, word in words.items():
            same(f"{name}, {row}, verdict {said['verdict']} is {word} by {tool}", 1, int(word == said["verdict"]))


names = sorted(os.listdir(samples))
for name in names:
    notebook = json.load(open(f"{samples}/{name}/review.json", encoding="utf-8"))
    package = json.load(open(f"{work}/{name}.json", encoding="utf-8"))
    # The name of the program is no number: classes run without their jar call themselves "development".
    engines = notebook.pop("engine"), package.pop("engine")
    if not all(engines) or notebook != package:
        failures += 1
        print(f"{name}: the package gives another finding than the notebook")
    answers = json.load(open(f"{work}/{name}.answers", encoding="utf-8"))
    tables = {}
    for tool in ("python", "r"):
        lines = open(f"{work}/{name}.{tool}", encoding="utf-8").read().splitlines()
        tables[tool] = {l.split("\t")[0]: l.split("\t")[1:] for l in lines}
    if "telling_run" in package:
        trials(name, package, answers, tables)
        continue
    computed = {
        named["measure"]: answer["result"]
        for named, answer in zip(package["requests"], answers)
        if named["about"] in ("comparison", "many")
    }
    for measure in package["measures"]:
        key = measure["measure"]
        place = f"{name}, {key}"
        result = computed[key]
        # The line of a measure is the p without looks; that over the looks has a line of its own.
        if measure["role"] == "primary" and "looks" in package:
            tested.add("looks")
            for tool, table in tables.items():
                same(f"{place}, looks, {tool}", measure["p"], number(table["session looks"][0]))
            measure["p"] = package["looks"]["p_without_looks"]
        # Without a test no p is said, though a request still gives one.
        if measure["p"] is None:
            measure["p"] = result["p"]
            for pair, again in zip(measure.get("pairs", []), result.get("pairs", [])):
                pair["p_adjusted"] = again["p_adjusted"]
        same(place + ", p, compute", measure["p"], result["p"])
        if "between" in measure:
            levels(place, measure, result, tables)
        for pair, again in zip(measure.get("pairs", []), result.get("pairs", [])):
            same(f"{place}, {pair['pair']} adjusted, compute", pair["p_adjusted"], again["p_adjusted"])
        for tool, table in tables.items():
            found = [number(x) for x in table[key]]
            for pair in measure.get("pairs", []):
                what = f"{place}, {pair['pair']} adjusted, {tool}"
                row = [number(x) for x in table[f"{key}, {pair['pair']}"]]
                same(what, pair["p_adjusted"], row[0])
                limits = ends(pair, "interval_95") + (ends(pair["harm"], "interval") if "harm" in pair else [])
                if len(row) != 1 + len(limits):
                    same(f"{place}, {pair['pair']}, limits, {tool}", len(limits), len(row) - 1)
                for one, other in zip(limits, row[1:]):
                    same(f"{place}, {pair['pair']} interval, {tool}", one, other)
            adjusted = table.get(key + ", adjusted", ["NA"])
            same(f"{place}, adjusted, {tool}", measure.get("p_adjusted"), number(adjusted[0]))
            harm = measure.get("harm", {})
            row = table.get(key + ", harm", [])
            same(f"{place}, harm numbers, {tool}", len(HARM) if harm else 0, len(row))
            for name_of, other in zip(HARM, row):
                same(f"{place}, harm {name_of}, {tool}", harm[name_of], number(other))
            if len(found) == 1:
                same(f"{place}, p, {tool}", measure["p"], found[0])
                continue
            same(f"{place}, estimate, {tool}", measure["estimate"], found[0])
            same(f"{place}, p, {tool}", measure["p"], found[1])
            for i, level in enumerate(("interval_95", "interval_90")):
                for end in (0, 1):
                    expected = ends(measure, level)[end]
                    same(f"{place}, {level}, {tool}", expected, found[2 + 2 * i + end])
                    given = result[level] or [None, None]
                    same(f"{place}, {level}, compute", expected, given[end])
    session(name, package, answers, tables)
    where(name, package, answers, tables)
if tested - {"where"} != {"waits", "waits by setup", "looks", "levels", "trials", "without"}:
    failures += 1
    print("no session here has waits that are tested, none has looks, levels, trials, or trials with a wrong fit")
print(f"{compared} numbers of {len(names)} sessions compared, {failures} differ")
sys.exit(1 if failures or compared < 700 else 0)
