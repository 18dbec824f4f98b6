"""A field's numbers, those of compute and those of R's lm, side by side.
   field.py table FIELD.json            the stints that count, as a table for field.R
   field.py request FIELD.json          the calculation request
   field.py agree FIELD.json R ANSWER   compares; 1 if anything differs"""
import json, sys

what, field = sys.argv[1], json.load(open(sys.argv[2], encoding="utf-8"))
days = field["request"]["given"]["days"]
degrees = {"none": 0, "line": 1, "curve": 2}

if what == "table":
    print("day,stint,degree,c1,c2,setup,value")
    for d, day in enumerate(days):
        beside = day.get("covariates", [])
        for i, (letter, value) in enumerate(zip(day["order"], day["values"])):
            more = [c[i] for c in beside] + [0] * (2 - len(beside))
            if value is not None and None not in more:
                setup = day["setups"][ord(letter) - 65]
                print(f"{d},{i},{degrees[day['drift']]},{more[0]},{more[1]},{setup},{value!r}")
elif what == "request":
    print(json.dumps(field["request"]))
else:
    rows = [line.rstrip("\n").split("\t") for line in open(sys.argv[3], encoding="utf-8")]
    r = {row[0]: [None if v == "NA" else float(v) for v in row[1:]] for row in rows}
    answer = json.load(open(sys.argv[4], encoding="utf-8"))["result"]
    compared = failures = 0

    def same(name, *numbers):
        global compared, failures
        for one, other in zip(numbers, numbers[1:]):
            compared += 1
            # R's quantile of the studentised range is good to about 1e-8.
            if (one is None) != (other is None) or one is not None and abs(one - other) > 1e-6 * max(1, abs(one)):
                failures += 1
                print(f"{name}: {numbers} DIFFERS")

    same("df", field["df"], answer["df"], r["field"][0])
    same("residual_sd", field["residual_sd"], answer["residual_sd"], r["field"][1])
    for i, name in enumerate(("f", "df1", "df2", "p")):
        same(name, *((a or {}).get(name) for a in (field["agreement"], answer["agreement"])), r["agreement"][i])
    computed = {p["pair"]: p for p in answer["pairs"]}
    for pair in field["against_reference"] + field["between_others"]:
        a, b = sorted((pair["first"], pair["second"]))
        sign = 1 if a == pair["first"] else -1
        estimate, se, low, high = r[f"{a} {b}"]
        other = computed[f"{a}-{b}"]
        same(f"{a} {b} se", other["se"], se)
        ends = other["interval_95"] or [None, None]
        for name, one, two in (("estimate", other["estimate"], estimate), ("low", ends[0], low), ("high", ends[1], high)):
            same(f"{a} {b} {name}", one, two)
        if not field["withheld"]:
            said = pair["interval_95"] or [None, None]
            mine = (None, None, None) if estimate is None else (sign * estimate, *sorted((sign * low, sign * high)))
            for name, one, two in zip(("estimate", "low", "high"), (pair["estimate"], *said), mine):
                same(f"{a} {b} {name} as said", one, two)
        elif pair["estimate"] is not None:
            failures += 1
            print(f"{a} {b}: told although the days do not agree DIFFERS")
    print(f"{compared} numbers compared, {failures} differ")
    sys.exit(failures > 0)
