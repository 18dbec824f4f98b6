"""Checks the session of a data package without Blindlap. Python 3.8 or later, nothing to install.

    python3 verify.py [FOLDER or session.txt] [--compare NUMBER]

Without a folder it takes the one that it lies in. It prints one line a check and ends with 0 if all
hold, 1 if one does not, 2 if it was called wrongly, 3 if a file cannot be read. NUMBER is a
fingerprint that somebody was given, its first 16 digits or more: without one a session that was
written anew as a whole, tables and hashes included, passes every check.

It shares no line with Blindlap. What it does is written in docs/sealing.md and docs/file-format.md.
"""
import csv, hashlib, io, json, math, os, re, sys, unicodedata
from datetime import datetime, timezone
from decimal import Decimal
from fractions import Fraction
from itertools import groupby

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
EDITION = 3  # of the method by which units.csv follows from the laps
# Steps of a session; what is below the first of these is a day that is being ridden.
COMMITTED, RIDING, CUT_SHORT, DAY_CLOSED, REVIEW_CLOSED, UNSEALED, REPORTED, ABANDONED = range(8)
BAD = (ArithmeticError, AttributeError, LookupError, RecursionError, TypeError, ValueError, csv.Error)
failed = []


def say(what, name, words):
    line = "%-12s%s: %s" % (what, name, words)
    print("".join(c if c.isprintable() else "?" for c in line))  # a text may hold what a terminal obeys
    if what == "FAILED":
        failed.append(name)


def check(name, question):
    """Asks one question: words if it holds, else a Wrong with what does not."""
    try:
        words = question()
    except Wrong as wrong:
        say("FAILED", name, str(wrong))
    except FileNotFoundError:
        say("FAILED", name, "it is missing")
    except BAD as broken:
        say("FAILED", name, "it is not of the form that docs/file-format.md gives (%s)" % type(broken).__name__)
    else:
        what, words = words if isinstance(words, tuple) else ("ok", words)
        say(what, name, words)
        return True
    return False


class Wrong(Exception):
    pass


def hold(holds, words):
    if not holds:
        raise Wrong(words)


def sha256(data):
    return hashlib.sha256(data).hexdigest()


def prefixed(*fields):
    """LP of docs/sealing.md."""
    data = [f.to_bytes(8, "big") if isinstance(f, int) else f if isinstance(f, bytes) else f.encode("utf-8") for f in fields]
    return b"".join(len(d).to_bytes(8, "big") + d for d in data)


# Entries, their spelling and their chains


def once(pairs):
    hold(len(dict(pairs)) == len(pairs), "a field stands twice")
    return dict(pairs)


def no_number(text):
    raise Wrong("a number stands outside quotes: " + text[:20])


def parse(text):
    return json.loads(text, object_pairs_hook=once, parse_int=no_number, parse_float=no_number, parse_constant=no_number)


def canonical(value):
    """The one spelling of RFC 8785 for what entries hold."""
    if isinstance(value, dict):
        fields = sorted(value, key=lambda name: name.encode("utf-16-be"))
        return "{" + ",".join(canonical(f) + ":" + canonical(value[f]) for f in fields) + "}"
    if isinstance(value, list):
        return "[" + ",".join(map(canonical, value)) + "]"
    if isinstance(value, str):
        hold(unicodedata.normalize("NFC", value) == value, "a text is not in Unicode normal form C")
    return json.dumps(value, ensure_ascii=False)


def instant(text):
    """Nanoseconds since 1970."""
    whole, _, part = text.rstrip("Z").partition(".")
    if whole.count(":") == 1:
        whole += ":00"
    seconds = datetime.strptime(whole, "%Y-%m-%dT%H:%M:%S").replace(tzinfo=timezone.utc).timestamp()
    return int(seconds) * 10**9 + int((part + "0" * 9)[:9])


class Entry:
    def __init__(self, text):
        self.text, self.hash = text, sha256(text.encode("utf-8"))
        e = parse(text)
        self.session, self.notebook, self.number = e["session"], e["notebook"], int(e["number"])
        self.previous, self.kind, self.body = e["previous"], e["kind"], e["body"]
        self.seen = {s["notebook"]: (int(s["number"]), s["hash"]) for s in e["seen"]}
        self.tree, self.place = e, (self.notebook, self.number)
        phone = e.get("by_phone")
        self.client = phone["client"] if phone else ""
        self.knew = int(phone["knew"]) if phone and "knew" in phone else None
        self.when = instant(phone["given"]) + int(phone["offset_ms"]) * 10**6 if phone else instant(e["at"])

    def named(self):
        return "%s, number %d of notebook %s" % (self.kind, self.number, self.notebook[:8])

    def before(self):
        """Places of the entries that its writer had seen last."""
        own = [(self.notebook, self.number - 1)] if self.number > 1 else []
        return own + [(notebook, number) for notebook, (number, _) in self.seen.items()]


def session_file(data):
    data = data[3:] if data.startswith(b"\xef\xbb\xbf") else data
    data = data.replace(b"\r\n", b"\n").rstrip(b"\n")
    above, last = data[: data.rindex(b"\n") + 1], data[data.rindex(b"\n") + 1 :]
    lines, end = above.decode("utf-8").split("\n")[:-1], parse(last.decode("utf-8"))
    hold(parse(lines[0])["form"] == "blindlap-session-1", "it is not the file of a session that this script knows")
    entries = [Entry(line) for line in lines[1:]]

    def whole():
        hold(end["sha256"] == sha256(above), "its last line gives another hash than the lines above it")
        hold(int(end["entries"]) == len(entries), "its last line counts other entries than there are")
        return "%d entries give the hash in its last line" % len(entries)

    check("session file", whole)
    return parse(lines[0])["session"], entries


def spelling(session, entries):
    for entry in entries:
        form = "blindlap-entry-2" if "by_phone" in entry.tree else "blindlap-entry-1"
        hold(entry.tree["form"] == form, "%s has the form %s" % (entry.named(), entry.tree["form"]))
        hold(entry.session == session, "%s is of another session" % entry.named())
        hold(canonical(entry.tree) == entry.text, "%s is spelt otherwise than canonical JSON" % entry.named())
    return "every text is spelt in the one way that has its hash"


def chains(entries):
    by_place = {e.place: e for e in entries}
    hold(len(by_place) == len(entries), "two entries have one place")
    for entry in entries:
        before = by_place.get((entry.notebook, entry.number - 1))
        hold(entry.number == 1 or before, "the entry before %s is missing" % entry.named())
        hold(entry.previous == (before.hash if before else "0" * 64), "the entry before %s was changed" % entry.named())
        for notebook, (number, digest) in entry.seen.items():
            there = by_place.get((notebook, number))
            hold(there and there.hash == digest, "an entry that %s had seen was changed or is missing" % entry.named())
        hold(entry.before() or entry.kind == "PlanCommitted", "%s has no beginning" % entry.named())
    return "each entry names the hash of the one before it, in %d chain(s)" % len({e.notebook for e in entries})


def past(entry, by_place):
    """The places of an entry and of everything its writer had seen."""
    found, open_ = set(), [entry.place]
    while open_:
        place = open_.pop()
        if place in by_place and place not in found:
            found.add(place)
            open_ += by_place[place].before()
    return found


def causal(entries):
    """docs/file-format.md, "Order"."""
    by_place = {e.place: e for e in entries}
    of = lambda kind: [e for e in entries if e.kind == kind]

    def saw(entry, kind):
        return any(by_place[p].kind == kind for p in past(entry, by_place) if p != entry.place)

    opened = set().union(*[past(e, by_place) for e in of("SealOpened")] or [set()])
    closings = [e for e in of("ReviewClosed") if saw(e, "DayClosed") and not saw(e, "ReviewClosed")]
    part = {}
    if closings:
        closing = min(closings, key=lambda e: (e.place not in opened, e.place))
        openings = [e for e in of("SealOpened") if closing.place in past(e, by_place) and not saw(e, "SealOpened")]
        if openings:
            part.update((p, 1) for p in past(min(openings, key=lambda e: e.place), by_place))
        part.update((p, 0) for p in past(closing, by_place))
    left, standing, sorted_ = {e.place: e for e in entries}, set(), []
    waiting = {e.place: {p for p in e.before() if p in by_place} for e in entries}
    followers = {}
    for place, needs in waiting.items():
        for need in needs:
            followers.setdefault(need, []).append(place)
    ready = {p for p in left if not waiting[p]}
    while ready:
        place = min(ready, key=lambda p: (part.get(p, 2), p))
        ready.remove(place)
        sorted_.append(left[place])
        standing.add(place)
        for follower in followers.get(place, []):
            if waiting[follower] <= standing:
                ready.add(follower)
    hold(len(sorted_) == len(entries), "entries name one another as predecessors")
    return sorted_


# What the entries add up to


class Said:
    """What an entry says of the value of a measure and lap."""

    def __init__(self, entry, speaks, value, whose, source, against=(), decided=False):
        self.entry, self.speaks, self.value, self.whose, self.source = entry, speaks, value, whose, source
        self.replaces, self.against, self.decided = set(), list(against), decided


class Day:
    """Entries in causal order, folded: docs/file-format.md, "What happens to entries that come too late"."""

    def __init__(self, entries):
        self.entries, self.step, self.plan, self.opened, self.closing, self.cut = entries, COMMITTED, None, None, None, None
        self.ridden, self.laps, self.voids, self.guesses, self.broken = set(), set(), {}, {}, {}
        self.answered, self.covariates, self.recordings, self.sector_voids, self.shown = set(), {}, [], {}, {}
        self.slots, self.newest, self.known, self.given, self.masks = {}, {}, {}, [], None
        for entry in entries:
            self.look(entry)
            if self.plan is None or self.can_be(entry):
                act = getattr(self, "on_" + entry.kind, None)
                if act is None or act(entry, entry.body) is not False:
                    self.move(entry.kind)

    def move(self, kind):
        begins = "BikeHandedOver PlateRead WarmUpRidden LapRidden ScoreGiven WatchStarted TimeTaken".split()
        if kind in begins and self.step == COMMITTED:
            self.step = RIDING
        elif kind == "DayCutShort" and self.step < DAY_CLOSED:
            self.step = CUT_SHORT
        elif kind == "DayClosed" and self.step < DAY_CLOSED:
            self.step = DAY_CLOSED
        elif kind == "ReviewClosed" and self.step == DAY_CLOSED or kind == "PlainDayImported" and self.step == COMMITTED:
            self.step = REVIEW_CLOSED
        elif kind == "SealOpened" and self.step == REVIEW_CLOSED:
            self.step = UNSEALED
        elif kind == "ReportWritten" and self.step == UNSEALED:
            self.step = REPORTED
        elif kind == "SessionAbandoned":
            self.step = ABANDONED

    # What writers had seen

    def look(self, entry):
        seen = dict(self.known.get((entry.notebook, entry.number - 1), {}))
        for notebook, (number, _) in entry.seen.items():
            for other, up_to in list(self.known.get((notebook, number), {}).items()) + [(notebook, number)]:
                seen[other] = max(seen.get(other, 0), up_to)
        seen.pop(entry.notebook, None)
        self.known[entry.place] = seen

    def saw(self, writer, other):
        if writer.knew is not None:  # said by a phone without signal
            if other.client == writer.client and other.notebook == writer.notebook and other.number < writer.number:
                return True
            if other.notebook == writer.notebook:
                return other.number <= writer.knew
            return self.known.get((writer.notebook, writer.knew), {}).get(other.notebook, 0) >= other.number
        if writer.notebook == other.notebook:
            return other.number < writer.number
        return self.known[writer.place].get(other.notebook, 0) >= other.number

    @staticmethod
    def same_hand(a, b):
        apart = lambda e: e.client if e.knew is not None else ""
        return a.notebook == b.notebook and apart(a) == apart(b)

    # What can be, given the plan

    def can_be(self, entry):
        body, kind = entry.body, entry.kind
        if "stint" in body and not 0 <= int(body["stint"]) <= self.stints and kind not in ("StintHandled", "StintMounted"):
            return False
        if kind == "CovariateSaid":
            told = [c for c in self.plan.get("covariates", []) if c["name"] == body["covariate"]]
            return bool(told) and (told[0]["per"] == "lap") == ("lap" in body) and ("lap" not in body or self.is_lap(body))
        if "lap" in body and not self.is_lap(body):
            return False
        if "measure" in body and body["measure"] not in self.measures:
            return False
        value = body.get("typed") if kind == "TimeTaken" else body.get("value")
        if "measure" in body and value is not None and not self.admits(self.measures[body["measure"]], Decimal(value)):
            return False
        if kind == "GuessGiven" and self.trial:
            first = 2 if self.task == "duo-trio" else 1
            return int(body["stint"]) % self.trial == 0 and body["setup"] is not None and first <= int(body["setup"]) <= self.trial
        if kind == "GuessGiven" and body["setup"] is not None:
            return 1 <= int(body["setup"]) <= (2 if "steps_day" in self.plan else len(self.plan["setups"]))
        return kind != "DayCutShort" or 0 <= int(body["last_stint"]) <= self.stints

    def is_lap(self, body):
        return 1 <= int(body["stint"]) <= self.stints and 1 <= int(body["lap"]) <= self.per_stint

    @staticmethod
    def admits(measure, value):
        kind = measure["kind"]
        if kind in ("lap time", "sector time"):
            return 0 < value <= 86400
        least, most = {"line scale": (0, 100), "category scale": (1, 9), "count": (0, 9999)}[kind]
        return least <= value <= most and (kind == "line scale" or value == value.to_integral_value())

    def open(self):
        return self.step < REVIEW_CLOSED

    def place(self, body):
        place = (int(body["stint"]), int(body["lap"]))
        self.laps.add(place)
        return place

    def is_newest(self, entry, of):
        """False for what a phone said late of something of which a later saying stands."""
        if entry.knew is not None and of in self.newest and entry.when < self.newest[of]:
            return False
        self.newest[of] = entry.when
        return True

    # Kinds of entries

    def on_PlanCommitted(self, entry, body):
        if self.plan is not None:
            return False
        self.commit, self.home, plan = body, entry.notebook, parse(body["plan"])
        self.plan, self.stints, self.laps_of = plan, int(plan["stints"]), plan["laps"]
        self.settling, self.scored = int(plan["laps"]["settling"]), int(plan["laps"]["scored"])
        hold(1 <= self.stints <= 1000 and 0 <= self.settling <= 1000 and 1 <= self.scored <= 1000, "the plan is too large")
        self.per_stint = self.settling + self.scored
        self.measures = {m["name"]: m for m in plan["measures"]}
        run = plan.get("telling_run")
        self.task = run["task"].replace(" ", "-") if run else None
        self.trial = {"triangle": 3, "duo-trio": 3, "two-choice": 2}[self.task] if run else 0
        self.blinding = plan["blinding"]
        self.level = self.blinding.get("level", "helper" if self.blinding["blinded"] else "open")

    def on_FingerprintGiven(self, entry, body):
        self.given.append(body)

    def on_LapRidden(self, entry, body):
        if not self.open():
            return False
        self.ridden.add(self.place(body))
        self.done(int(body["stint"]))

    def done(self, stint):
        laps = {(stint, lap) for lap in range(1, self.per_stint + 1)}
        if stint in self.guesses and laps <= self.ridden:
            self.answered.add(stint)

    def on_NoteWritten(self, entry, body):
        if not self.open():
            return False
        self.place(body)

    on_ConditionsNoted = on_NoteWritten

    def on_LapVoided(self, entry, body):
        last = -(-int(body["stint"]) // self.trial) * self.trial if self.trial else 0
        if not self.open() or last in self.guesses or last in self.answered:
            return False
        self.voids[self.place(body)] = body["event"]

    def on_VoidWithdrawn(self, entry, body):
        if not self.open():
            return False
        self.voids.pop(self.place(body), None)

    def on_GuessGiven(self, entry, body):
        stint = int(body["stint"])
        spoilt = self.trial and any((s, 1) in self.voids for s in range(stint - self.trial + 1, stint + 1))
        if not self.open() or spoilt:
            return False
        if self.is_newest(entry, ("guess", stint)):
            self.guesses[stint] = body
            self.done(stint)

    def on_GuessTakenBack(self, entry, body):
        if not self.open():
            return False
        if self.is_newest(entry, ("guess", int(body["stint"]))):
            self.guesses.pop(int(body["stint"]), None)

    def on_CovariateSaid(self, entry, body):
        at = (body["covariate"], int(body["stint"]), int(body.get("lap", 0)))
        if not self.open():
            return False
        if self.is_newest(entry, at):
            self.covariates[at] = None if body["value"] is None else Decimal(body["value"])

    def on_BlindBroken(self, entry, body):
        if not self.open():
            return False
        self.broken[int(body["stint"])] = True

    def on_DayCutShort(self, entry, body):
        if self.step >= DAY_CLOSED or self.cut is not None:
            return False
        self.cut = int(body["last_stint"])

    def on_DayClosed(self, entry, body):
        return self.step < DAY_CLOSED

    def on_ReviewClosed(self, entry, body):
        if self.step != DAY_CLOSED:
            return False
        self.closing = entry

    def on_SealOpened(self, entry, body):
        if self.step != REVIEW_CLOSED:
            return False
        self.opened = body

    def on_SetupShown(self, entry, body):
        if not self.open() or int(body["stint"]) in self.shown:
            return False
        self.shown[int(body["stint"])] = int(body["setup"]) - 1

    def on_RecordingBroughtIn(self, entry, body):
        if not self.open():
            return False
        self.recordings = [r for r in self.recordings if r["sha256"] != body["sha256"]] + [body]

    def gates(self):
        return [g["name"] for g in (self.plan.get("trail_version") or {"gates": []})["gates"]]

    def on_SectorVoided(self, entry, body):
        if not self.open() or body["from"] not in self.gates():
            return False
        voids = self.sector_voids.setdefault((int(body["stint"]), int(body["lap"])), set())
        (voids.discard if entry.kind == "SectorVoidWithdrawn" else voids.add)(self.gates().index(body["from"]))

    on_SectorVoidWithdrawn = on_SectorVoided

    # Values: docs/file-format.md, "Values that stand twice"

    def on_ScoreGiven(self, entry, body):
        whose = None if "time" in self.measures[body["measure"]]["kind"] else "rider"
        source = ["screen", "paper", "file"].index(body["source"])
        return self.value(entry, body, Said(entry, body["value"] is not None, self.number(body["value"]), whose, source))

    def on_WatchStarted(self, entry, body):
        return self.value(entry, body, Said(entry, False, None, None, 0))

    on_WatchReset = on_WatchStarted

    def on_TimeTaken(self, entry, body):
        wall, steady = instant(body["stopped"]) - instant(body["started"]), int(body["monotonic_ns"])
        seconds = Decimal(steady) / 10**9 if abs(wall - steady) <= 200 * 10**6 else None
        seconds = seconds if body["typed"] is None else Decimal(body["typed"])
        whose = body["timed_by"] if body["timed_by"] in ("starter", "rider") else None
        return self.value(entry, body, Said(entry, seconds is not None, seconds, whose, 0))

    def on_ScoreCorrected(self, entry, body):
        seen = self.standing(self.seen(entry, body))
        timed = "time" in self.measures[body["measure"]]["kind"]
        of = min(seen, key=self.rank) if seen else Said(entry, False, None, None if timed else "rider", 2)
        return self.value(entry, body, Said(entry, True, self.number(body["value"]), of.whose, of.source))

    def on_ValueChosen(self, entry, body):
        known = self.everything(self.standing(self.seen(entry, body)))
        wanted = self.number(body["value"])
        mine, others = [s for s in known if s.value == wanted], [s for s in known if s.value != wanted]
        reason = body["reason"].strip().lower().startswith("typing error")
        may = self.level in ("prepared", "helper") and body["decided_by"].strip() and reason
        if not (self.open() and may and mine and others):
            return False
        of = min(mine, key=self.rank)
        now = Said(entry, True, of.value, of.whose, of.source, others, True)
        slot = self.slot(body)
        now.replaces = {s.entry.place for s in slot if self.saw(entry, s.entry)}
        slot.append(now)

    @staticmethod
    def number(text):
        return None if text is None else Decimal(text)

    def slot(self, body):
        return self.slots.setdefault((int(body["stint"]), int(body["lap"]), body["measure"]), [])

    def seen(self, entry, body):
        return [s for s in self.slot(body) if self.saw(entry, s.entry)]

    @staticmethod
    def standing(said):
        gone = set().union(*[s.replaces for s in said] or [set()])
        return [s for s in said if s.speaks and s.entry.place not in gone]

    @staticmethod
    def everything(standing):
        return [each for s in standing for each in [s] + s.against]

    def rank(self, s):
        record_of = self.blinding.get("record_of", "starter")
        whose = 2 if s.whose is None else 0 if s.whose == record_of else 1
        e = s.entry
        return (not s.decided, whose, s.source, e.notebook != self.home, e.notebook, e.when, e.number)

    def value(self, entry, body, now):
        if not self.open():
            return False
        self.place(body)
        slot = self.slot(body)
        known = self.everything(self.standing(self.seen(entry, body)))
        differ = any(s.value != known[0].value for s in known)
        replaced = [s for s in slot if not differ and self.saw(entry, s.entry) or self.same_hand(s.entry, entry)]
        now.replaces = {s.entry.place for s in replaced}
        for choice in replaced:
            if choice.against:
                now.against += [choice] + choice.against
        slot.append(now)

    # What tables say of it

    def recorded(self, measure):
        return measure.get("timed_by", "watch") != "watch"

    def lap_value(self, lap, measure):
        """The value of a lap that counts, and whether the lap or a sector on its way is void."""
        void = lap in self.voids
        if not self.recorded(measure):
            standing = self.standing(self.slots.get(lap + (measure["name"],), []))
            return (min(standing, key=self.rank).value if standing else None), void
        passes = {(int(l["stint"]), int(l["lap"])): l["passes"] for r in self.recordings for l in r["laps"]}.get(lap, [])
        first, last = 0, len(passes) - 1
        if measure["kind"] == "sector time" and "from_gate" in measure:
            first, last = self.gates().index(measure["from_gate"]), self.gates().index(measure["to_gate"])
        elif measure["kind"] != "lap time":
            return None, void
        if not 0 <= first < last < len(passes) or passes[first]["seconds"] is None or passes[last]["seconds"] is None:
            return None, void
        seconds = Decimal(passes[last]["seconds"]) - Decimal(passes[first]["seconds"])
        if seconds <= 0:
            return None, void
        return seconds, void or any(first <= at < last for at in self.sector_voids.get(lap, ()))

    def units(self, measure):
        """One value a stint on the scale of the analysis, None where there is none or it is masked."""
        values = self.stint_values(measure)
        columns = [column for _, column in self.taken_out(measure, values)]
        return [v if all(c[i] is not None for c in columns) else None for i, v in enumerate(values)]

    def stint_values(self, measure):
        values, blind = [], self.level in ("prepared", "helper")
        for stint in range(1, self.stints + 1):
            found = []
            for lap in range(self.settling + 1, self.per_stint + 1):
                value, void = self.lap_value((stint, lap), measure)
                # Whoever knows what is on could void at will: then void laps count like all others.
                if (stint, lap) in self.ridden and value is not None and not (void and blind):
                    found.append(math.log(value) if measure["scale"] == "ratio" else float(value))
            if measure.get("summary", "mean") == "median":
                found = sorted(found) if len(found) == self.scored else []
                found = found[(len(found) - 1) // 2 : len(found) // 2 + 1] if found else []
            values.append(math.fsum(found) / len(found) if found else None)
        return values

    def taken_out(self, measure, values):
        """The covariates that are taken out, a value a stint; where one was not said the stint is masked."""
        columns = []
        for covariate in self.plan.get("covariates", []):
            laps = range(self.settling + 1, self.per_stint + 1) if covariate["per"] == "lap" else [0]
            column = []
            for stint in range(1, self.stints + 1):
                said = [self.covariates.get((covariate["name"], stint, lap)) for lap in laps]
                said = [float(v) for v in said if v is not None]
                column.append(math.fsum(said) / len(said) if said else None)
            if any(v is not None and c is not None for v, c in zip(values, column)):
                columns.append((covariate["name"], column))
        while True:
            use = [v is not None and all(c[i] is not None for _, c in columns) for i, v in enumerate(values)]
            own = usable(use, {"none": 0, "line": 1, "curve": 2}[measure["drift"]], columns)
            if len(own) == len(columns):
                return columns
            columns = own


def usable(use, degree, columns):
    """Columns that are neither constant nor explained by drift and those before them, on the stints in use."""
    n, basis, own = len(use), [], []

    def new(column, share):
        before = sum(a * a for a in column)
        for _ in range(2):
            for q in basis:
                overlap = sum(a * b for a, b in zip(q, column))
                column = [a - overlap * b for a, b in zip(column, q)]
        left = sum(a * a for a in column)
        if left <= share * before:
            return False
        basis.append([a / math.sqrt(left) for a in column])
        return True

    for power in range(degree + 1):
        new([(2 * i / max(1, n - 1) - 1) ** power if use[i] else 0.0 for i in range(n)], 1e-20)
    for name, column in columns:
        known = [column[i] for i in range(n) if use[i]]
        mean = math.fsum(known) / len(known) if known else 0.0
        centred = [column[i] - mean if use[i] else 0.0 for i in range(n)]
        largest = max(map(abs, centred), default=0.0)
        if largest > 1e-12 * max(map(abs, known), default=0.0) and new([c / largest for c in centred], 1e-9):
            own.append((name, column))
    return own


# Plan, key and draw: docs/sealing.md

KEY = re.compile(
    r"blindlap-key-1\nalgorithm=([^\n]+)\norder=([A-Z]+)\ncodes=([0-9,]+)\nseed=([0-9a-f]{64})\nnonce=([0-9a-f]{64})\nsealed=([^\n]{64})\n"
)
SEALED = re.compile(r"null-run=(no|yes) ridden=([-A-Z]) warm-up=([A-Z]) *")


def plan_text(session, day):
    text, key = day.commit["plan"], day.commit["key"]
    hold(canonical(day.plan) == text, "the stored plan is spelt otherwise than canonical JSON")
    if key is not None:
        hold(key["session"] == session, "the sealed key is of another session")
        hold(key["plan_sha256"] == sha256(text.encode("utf-8")), "the sealed key was made for another plan than the stored one")
    return "the stored plan is the one that its key was " + ("sealed" if key else "covered" if day.commit.get("covered") else "left out") + " for"


def codes(day):
    given = [int(code) for code in day.commit["codes"]]
    hold(len(given) == day.stints, "there are %d codes for %d stints" % (len(given), day.stints))
    hold(len(set(given)) == len(given), "a code stands twice")
    drawn = day.commit["key"] is not None or day.commit.get("covered", False)
    hold(all(100 <= c <= 999 for c in given) if drawn else given == list(range(1, day.stints + 1)), "a code is none")
    return "one for each of %d stints, none twice" % day.stints


class Key:
    def __init__(self, text):
        form = KEY.fullmatch(text)
        hold(form, "the opened key is not of its form")
        self.algorithm, self.order, listed, self.seed, self.nonce, self.sealed = form.groups()
        self.codes = listed.split(",")
        part = SEALED.fullmatch(self.sealed)
        hold(part and (part.group(1) == "yes") == (part.group(2) != "-"), "the sealed part is not of its form")
        self.null_run, self.warm_up = None if part.group(2) == "-" else part.group(2), part.group(3)


def key_fits(day, key):
    letters = LETTERS[: len(day.plan["setups"])]
    hold(len(key.order) == day.stints, "the order has %d letters for %d stints" % (len(key.order), day.stints))
    hold(set(key.order + key.warm_up + (key.null_run or "A")) <= set(letters), "a letter names no setup of the plan")
    hold(key.codes == day.commit["codes"], "its codes are not those of the commit")
    shown = {0: key.warm_up, **{i + 1: letter for i, letter in enumerate(key.order)}}
    for stint, setup in day.shown.items():
        hold(LETTERS[setup] == shown[stint], "the rider was shown another setup for stint %d" % stint)
    seen = ", and all %d setups that were shown" % len(day.shown) if day.shown else ""
    null = " It is a null run: %s was ridden under every name." % key.null_run if key.null_run else ""
    return "opened key, sealed part and codes fit the plan%s.%s" % (seen, null)


def plan_fingerprint(day, key):
    plan = day.commit["plan"].encode("utf-8")
    listed = ",".join(key.codes)
    fields = [plan, key.sealed, key.algorithm, key.order, listed, bytes.fromhex(key.seed), bytes.fromhex(key.nonce)]
    return sha256(prefixed("blindlap-plan-fingerprint-1", *fields))


def stream(seed):
    i = 0
    while True:
        yield int(sha256(seed + i.to_bytes(8, "big"))[:16], 16)
        i += 1


def below(n, words):
    k = max(1, -(-(n - 1).bit_length() // 64))
    top = 2 ** (64 * k)
    while True:
        v = 0
        for _ in range(k):
            v = v << 64 | next(words)
        if v < top - top % n:
            return v % n


def ways(left):
    """How many sequences hold every letter as often as it is left."""
    return math.factorial(sum(left)) // math.prod(map(math.factorial, left))


def block(setups, length, patterns, words):
    if patterns:
        return patterns[below(len(patterns), words)]
    left, text = [length // setups] * setups, ""
    index = below(ways(left), words)
    while sum(left):
        for setup in range(setups):
            if left[setup]:
                rest = left[:setup] + [left[setup] - 1] + left[setup + 1 :]
                if index < ways(rest):
                    left, text = rest, text + LETTERS[setup]
                    break
                index -= ways(rest)
    return text


def admissible(order, longest, least):
    if longest is not None and max(len(list(run)) for _, run in groupby(order)) > longest:
        return False
    if least is None:
        return True
    n = len(order)  # doubled places and signs keep everything whole
    t, z = [2 * i - n + 1 for i in range(n)], [1 if letter == "B" else -1 for letter in order]
    kept = 1 - Fraction(sum(a * b for a, b in zip(z, t)) ** 2, n * sum(a * a for a in t))
    return kept >= least - Fraction(1, 10**9)


def replayed(day, key):
    rule, trials = day.plan["protocol"], bool(day.trial)
    hold(key.algorithm == ("blindlap-trials-1" if trials else "blindlap-draw-1"), "the draw %s is not that of the plan" % key.algorithm)
    setups, length = len(day.plan["setups"]), int(rule["block"] or day.stints)
    hold(length > 0 and day.stints % length == 0, "the blocks do not fill the day")
    patterns = sorted(set(rule["patterns"]))
    longest = None if rule["max_run"] is None else int(rule["max_run"])
    least = None if rule["min_trend_efficiency"] is None else Fraction(rule["min_trend_efficiency"])
    hold(trials or day.stints <= 60, "no rule is drawn for more than 60 stints")
    words = stream(bytes.fromhex(key.seed))
    for _ in range(400000):  # a rule that needs more than 20 000 on average is never drawn
        order = "".join(block(setups, length, patterns, words) for _ in range(day.stints // length))
        if admissible(order, longest, least):
            hold(order == key.order, "the seed draws another order under the rule of the plan")
            return "the seed draws the order of the key again under the rule of the plan"
    raise Wrong("the seed draws no order under the rule of the plan")


def review_fingerprint(session, day, closing):
    heads = {n: (number, digest) for n, (number, digest) in closing.seen.items()}
    if closing.number > 1:
        heads[closing.notebook] = (closing.number - 1, closing.previous)
    fields = [f for n in sorted(heads) for f in (n, heads[n][0], bytes.fromhex(heads[n][1]))]
    plan = bytes.fromhex(day.commit["fingerprint"])
    return sha256(prefixed("blindlap-review-fingerprint-1", session, plan, *fields))


def grouped(digits):
    return " ".join(digits[i : i + 8] for i in range(0, 64, 8))


# The package round the session


LATER = {"bikes", "helper_waits", "timed_by", "times", "definition", "worthwhile_reason", "ballast_g", "mass"}


def earlier(there, stored):
    """A plan without the fields that plans of the first notebooks did not have."""
    if isinstance(there, dict) and isinstance(stored, dict):
        return {f: earlier(v, stored.get(f)) for f, v in there.items() if f in stored or f not in LATER}
    if isinstance(there, list) and isinstance(stored, list) and len(there) == len(stored):
        return [earlier(a, b) for a, b in zip(there, stored)]
    return there


# Codes that tables show by a picture or their number: controls, marks of direction, what is no character.
ODD = re.compile(
    "[\\x00-\\x08\\x0b\\x0c\\x0e-\\x1f\\x7f-\\x9f\\u2028\\u2029\\u061c\\u200e\\u200f\\u202a-\\u202e\\u2066-\\u2069\\ufdd0-\\ufdef"
    + "".join(chr(plane * 0x10000 + last) for plane in range(17) for last in (0xFFFE, 0xFFFF))
    + "]|\\r(?!\\n)"
)


class Package:
    def __init__(self, folder):
        self.folder, self.compared = folder, {"session.txt", "datapackage.json"}

    def bytes(self, name):
        with open(os.path.join(self.folder, name), "rb") as file:
            return file.read()

    def has(self, name):
        return os.path.exists(os.path.join(self.folder, name))

    def json(self, name):
        self.compared.add(name)
        return json.loads(self.bytes(name).decode("utf-8"))

    def table(self, name):
        self.compared.add(name)
        return list(csv.DictReader(io.StringIO(self.bytes(name).decode("utf-8"), newline="")))

    def hashes(self):
        described = self.json("datapackage.json")
        listed = {r["path"]: r for r in described["resources"]}
        if "proof" not in described:
            return "not checked", "an older program wrote no hashes, or they were taken out"
        for name, resource in listed.items():
            hold(self.has(name), "%s is missing" % name)
            data = self.bytes(name)
            hold("sha256:" + sha256(data) == resource["hash"] and len(data) == resource["bytes"], "%s was changed" % name)
        more = sorted(set(os.listdir(self.folder)) - set(listed) - {"datapackage.json"})
        return "%d files give the hashes in datapackage.json" % len(listed) + ("; not part of it: " + ", ".join(more) if more else "")

    def proof(self, day):
        proof = self.json("datapackage.json").get("proof")
        if proof is None:
            return "not checked", "datapackage.json names none"
        heads = {}
        for e in day.entries:
            heads[e.notebook] = max(heads.get(e.notebook, (0, "")), (e.number, e.hash))
        stated = {h["notebook"]: (h["number"], h["hash"]) for h in proof["heads"]}
        hold(stated == heads, "datapackage.json names other last entries of the chains")
        hold(proof["plan_fingerprint"] == day.commit["fingerprint"], "datapackage.json states another fingerprint of the plan")
        review = day.closing.body["fingerprint"] if day.closing else None
        hold(proof.get("review_fingerprint") == review, "datapackage.json states another fingerprint of the review")
        return "datapackage.json states fingerprints and last entries of this session"

    def plan(self, day):
        self.compared.add("plan.json")
        there = self.bytes("plan.json").decode("utf-8")
        if there != day.commit["plan"]:
            hold(earlier(parse(there), day.plan) == day.plan, "it is not the stored plan")
            return "it is the stored plan, with fields that it did not have yet, as an earlier program wrote it"
        return "it is the stored plan, byte for byte"

    def key(self, session, day, key):
        there = self.json("key.json")
        last = day.stints if day.cut is None else day.cut
        wanted = {"session": session, "algorithm": key.algorithm, "order": key.order, "codes": list(map(int, key.codes)),
                  "seed": key.seed, "nonce": key.nonce, "warm_up": key.warm_up, "null_run": key.null_run, "last_stint": last}
        for field, value in wanted.items():
            hold(there[field] == value, "%s is not that of the session" % field)
        return "every field is that of the session's opened key"

    def laps(self, day, key):
        rows = {(int(r["stint"]), int(r["lap_in_stint"])): r for r in self.table("laps.csv")}
        hold(set(rows) == day.laps, "it has other laps than the session")
        for lap, row in sorted(rows.items()):
            at = "stint %d, lap %d: " % lap
            hold(row["code"] == key.codes[lap[0] - 1] and row["setup"] == key.order[lap[0] - 1], at + "code or setup is another")
            hold(row["ridden"] == str(lap in day.ridden).lower(), at + "ridden is another")
            hold(row["void"] == day.voids.get(lap, ""), at + "void is another")
            for name, measure in day.measures.items():
                cell, value = row[self.cell(name)], day.lap_value(lap, measure)[0]
                hold((Decimal(cell) if cell else None) == value, "%s%s is %s, by the entries %s" % (at, name, cell or "empty", value))
        return "codes, setups, voids and values of %d laps are those of the entries" % len(rows)

    @staticmethod
    def cell(text):
        """A text as tables have it, safe from spreadsheets that run cells: docs/file-format.md."""
        shown = ODD.sub(lambda odd: chr(0x2400 + ord(odd[0])) if odd[0] < " " else "\u2421" if odd[0] == "\x7f" else "\u2039U+%04X\u203a" % ord(odd[0]), text)
        runs = re.fullmatch(r"(?s)'*[=+\-@\t\r\n].+", shown) and not re.fullmatch(r"[+-]\d+(?:[.,]\d+)?", shown)
        return "'" + shown if runs else shown

    def rule(self, day):
        """What the scripts read of the plan: a row of another rule would give another p."""
        row, rule, setups = self.table("rule.csv")[0], day.plan["protocol"], day.plan["setups"]
        hold((row["setups"], row["stints"]) == (str(len(setups)), str(day.stints)), "rule.csv has other setups or stints")
        if day.trial:
            hold((row["trial"], row["sequences"].split()) == (str(day.trial), sorted(rule["patterns"])), "rule.csv has other trials")
        else:
            wanted = [rule["block"] or str(day.stints), " ".join(rule["patterns"]), rule["max_run"], rule["min_trend_efficiency"]]
            found = [row[c] for c in ("block", "patterns", "max_run", "min_trend_efficiency")]
            hold(found == [w or "" for w in wanted], "rule.csv has another rule")
        rows = {r["measure"]: r for r in self.table("measures.csv")}
        hold(set(rows) == set(map(self.cell, day.measures)), "measures.csv has other measures")
        for name, measure in day.measures.items():
            row, wanted = rows[self.cell(name)], measure["worthwhile"]
            same = all(row[c] == measure[c] for c in ("kind", "role", "better", "drift", "scale"))
            hold(same and row.get("summary", "mean") == measure.get("summary", "mean"), "measures.csv has another %s" % name)
            hold(day.number(row["worthwhile"] or None) == day.number(wanted), "measures.csv has another worthwhile of %s" % name)
        one = day.plan.get("steps_day") or (day.plan.get("telling_run") or {}).get("one_setting")
        if one:
            levels = [Decimal(x["value"]) for s in setups for x in s["settings"] if x["name"] == one["setting"]]
            hold([Decimal(r["level"]) for r in self.table("levels.csv")] == levels, "levels.csv has other levels")
        return "rule, measures and levels are those of the stored plan"

    def stints(self, day, key):
        rows = self.table("stints.csv")
        hold(len(rows) == day.stints, "it has %d rows for %d stints" % (len(rows), day.stints))
        for i, row in enumerate(rows):
            stint, last = i + 1, day.stints if day.cut is None else day.cut
            hold((row["stint"], row["code"], row["setup"]) == (str(stint), key.codes[i], key.order[i]), "stint %d: code or setup is another" % stint)
            hold(row["guess"] == self.guess(day, stint), "stint %d: the guess is another" % stint)
            hold(bool(row["blind_broken"]) == (stint in day.broken), "stint %d: blind_broken is another" % stint)
            hold(row["in_the_day"] == str(stint <= last).lower(), "stint %d: in_the_day is another" % stint)
        return "codes, setups and guesses of %d stints are those of the entries" % day.stints

    @staticmethod
    def guess(day, stint):
        if stint not in day.guesses:
            return ""
        named = day.guesses[stint]["setup"]
        if named is None or day.trial:
            return named or "-"
        return ["low", "high"][int(named) - 1] if "steps_day" in day.plan else LETTERS[int(named) - 1]

    def helper(self, day):
        """What was on, stint by stint, by the helper's opened records: the form of docs/file-format.md alone."""
        if day.level != "helper":
            return "not checked", "what was mounted without a helper is held by its hash alone"
        ids, records = [setup["id"] for setup in day.plan["setups"]], []
        for listed in sorted(day.opened["helper_records"], key=lambda r: int(r["stint"])):
            try:
                record = json.loads(listed["record"])
            except ValueError:
                continue  # words on paper, read by people
            if isinstance(record, dict) and record.get("form") == "blindlap-helper-entry-1":
                records.append((int(listed["stint"]), record))
        fitted = {stint: record["fitted"] for stint, record in records if stint <= day.stints}
        for _, record in records:
            fitted.update((int(c["stint"]), c["fitted"]) for c in record.get("corrections", []))
        rows = {int(r["stint"]): r["fitted"] for r in self.table("helper.csv")}
        for stint, setup in fitted.items():
            letter = LETTERS[ids.index(setup)]
            hold(rows.get(stint) == letter, "stint %d: %s was on, by the opened record %s" % (stint, rows.get(stint) or "nothing", letter))
        if not fitted:
            return "no opened record of the helper's page says what was on"
        return "what was on is that of %d opened records of the helper's page, warm-up included" % len(fitted)

    def trials(self, day, key):
        rows = self.table("trials.csv")
        hold(len(rows) == day.stints // day.trial, "it has other trials than the plan")
        for number, row in enumerate(rows):
            stints = range(number * day.trial + 1, (number + 1) * day.trial + 1)
            drawn, answer = key.order[stints[0] - 1 : stints[-1]], day.guesses.get(stints[-1])
            counts = answer and all((s, 1) in day.ridden and (s, 1) not in day.voids for s in stints)
            wanted = ["", "", "", "false"]
            if counts:
                differed = str(self.differed(day, drawn))
                wanted = [differed, answer["setup"], str(differed == answer["setup"]).lower(), "true"]
            found = [row[c] for c in ("differed", "named", "right", "counts")]
            hold(found == wanted, "trial %d: %s, by the entries %s" % (number + 1, found, wanted))
        return "%d trials are those of order and answers" % len(rows)

    @staticmethod
    def differed(day, drawn):
        if day.task == "two-choice":
            more = day.plan["telling_run"]["more"]
            return 1 + drawn.index("A" if day.plan["setups"][0]["name"] == more else "B")
        return 2 + (drawn[1] == drawn[0]) if day.task == "duo-trio" else 1 + [drawn.count(s) for s in drawn].index(1)

    def units(self, day, key):
        edition = self.json("finding.json").get("edition", 1)
        rows = {(r["measure"], int(r["stint"])): r for r in self.table("units.csv")}
        if edition != EDITION:
            self.compared -= {"units.csv"}
            return "not checked", "the package is of edition %s of the method, this script of %d" % (edition, EDITION)
        hold(len(rows) == len(day.measures) * day.stints, "it has other rows than measures and stints")
        count = 0
        for name, measure in day.measures.items():
            for i, value in enumerate(day.units(measure)):
                row, at = rows[self.cell(name), i + 1], "%s, stint %d: " % (name, i + 1)
                hold((row["setup"], row["drift"], row["scale"]) == (key.order[i], measure["drift"], measure["scale"]), at + "setup, drift or scale is another")
                hold((row["value"] == "") == (value is None), at + "a value is there on one side only")
                if value is not None:
                    hold(abs(float(row["value"]) - value) <= 1e-9 * max(1, abs(value)), at + "%s, by the entries %r" % (row["value"], value))
                    count += 1
            self.taken_out(day, name, measure)
        return "%d values follow from the entries" % count

    def taken_out(self, day, name, measure):
        if not day.plan.get("covariates"):
            return
        rows = [r for r in self.table("taken_out.csv") if r["measure"] == self.cell(name)]
        found = {(r["covariate"], int(r["stint"])): r["value"] for r in rows}
        columns = day.taken_out(measure, day.stint_values(measure))
        wanted = {(self.cell(c), i + 1): v for c, column in columns for i, v in enumerate(column)}
        hold(set(found) == set(wanted), "taken_out.csv takes other covariates out of %s" % name)
        for at, value in wanted.items():
            cell = found[at]
            same = cell == "" if value is None else cell and abs(float(cell) - value) <= 1e-9 * max(1, abs(value))
            hold(same, "taken_out.csv, %s, stint %d: %s, by the entries %s" % (at + (cell, value)))


# Everything in turn


def unopened(day):
    words = "still covered" if day.commit.get("covered") else "still sealed"
    return "not yet", "order, sealed part and codes are %s; the fingerprint is what the file states" % words


def stated(number, wanted, words):
    hold(number == wanted, "the file states " + grouped(wanted) + ", but its entries give " + grouped(number))
    return "%s give %s" % (words, grouped(number))


def of_plan(day, key):
    if key is not None:
        return stated(plan_fingerprint(day, key), day.commit["fingerprint"], "plan, order and all that was sealed")
    if day.commit["key"] is None and not day.commit.get("covered"):
        return stated(sha256(day.commit["plan"].encode("utf-8")), day.commit["fingerprint"], "the plan's bytes alone")
    return unopened(day)


def of_review(session, day):
    if day.closing is None:
        return "not yet", "the review is not closed"
    number = review_fingerprint(session, day, day.closing)
    return stated(number, day.closing.body["fingerprint"], "all entries that the closing had seen")


def noted(session, day):
    """What the file notes of numbers that were given: a note proves nothing, but it may contradict."""
    numbers = {day.commit["fingerprint"]}
    numbers |= {review_fingerprint(session, day, e) for e in day.entries if e.kind == "ReviewClosed"}
    values = [g["value"] for g in day.given if "value" in g]
    hold(set(values) <= numbers, "somebody is noted to have received a number that this file does not give")
    to = ", ".join(sorted({g["to"] for g in day.given}))
    return "note", "noted as given to %s; ask for the number and use --compare" % to if to else "nobody is noted to have received a fingerprint"


def compare(session, day, typed, whole):
    digits = re.sub(r"[\s:-]", "", typed).lower()
    plan = "plan, order and codes" if day.opened else "the plan (order and codes are still closed)"
    numbers = {day.commit["fingerprint"]: "the fingerprint of " + plan}
    for e in day.entries:
        if e.kind == "ReviewClosed":
            numbers[review_fingerprint(session, day, e)] = "the fingerprint of the closed review"
    found = [words for number, words in numbers.items() if number.startswith(digits)]
    hold(found, "NO. This file does not give the number")
    hold(whole, "it is %s as stated, but a check above failed" % found[0])
    return "yes, it is " + found[0]


def session_checks(session, entries, package, typed):
    hold(entries and check("entries", lambda: spelling(session, entries)), "the rest needs its entries")
    check("chains", lambda: chains(entries))
    sorted_ = causal(entries)
    check("order of entries", lambda: hold(sorted_ == entries, "the entries stand in another order than the causal one") or "they stand in causal order")
    day = Day(sorted_)
    hold(day.plan is not None, "no entry commits a plan")
    check("plan", lambda: plan_text(session, day))
    check("codes", lambda: codes(day))
    key = Key(day.opened["key"]) if day.opened else None
    if key is not None:
        check("key", lambda: key_fits(day, key))
        check("replayed order", lambda: replayed(day, key))
    check("fingerprint of the plan", lambda: of_plan(day, key))
    check("fingerprint of the review", lambda: of_review(session, day))
    check("noted as given", lambda: noted(session, day))
    if package is not None:
        tables(session, day, key, package)
    for number in typed:
        whole = not failed
        check("compare", lambda: compare(session, day, number, whole))


def tables(session, day, key, package):
    check("last entries", lambda: package.proof(day))
    # A package without a key names no setup: only what stands in it by code is there to look at.
    if key is not None and package.has("key.json"):
        check("plan.json", lambda: package.plan(day))
        check("key.json", lambda: package.key(session, day, key))
        check("rule.csv", lambda: package.rule(day))
        check("laps.csv", lambda: package.laps(day, key))
        check("stints.csv", lambda: package.stints(day, key))
        check("helper.csv", lambda: package.helper(day))
        if day.trial:
            check("trials.csv", lambda: package.trials(day, key))
        check("units.csv", lambda: package.units(day, key))
    left = sorted(n for n in os.listdir(package.folder) if n.endswith((".csv", ".json")) and n not in package.compared)
    if left:
        say("not checked", "tables", "held by their hash alone: %s" % ", ".join(left))


def main(arguments):
    sys.stdout.reconfigure(errors="backslashreplace")
    here, typed = os.path.dirname(os.path.abspath(__file__)), []
    places = []
    while arguments:
        word = arguments.pop(0)
        if word == "--compare" and arguments:
            typed.append(arguments.pop(0))
        else:
            places.append(word)
    short = [t for t in typed if not re.fullmatch(r"[0-9a-f]{16,64}", re.sub(r"[\s:-]", "", t).lower())]
    if len(places) > 1 or any(p.startswith("-") for p in places) or short:
        print(__doc__.split("\n\n")[1].strip(), file=sys.stderr)
        print("NUMBER is 16 to 64 digits 0-9 and a-f of a fingerprint, in quotes where blanks stand in it.", file=sys.stderr)
        return 2
    place = places[0] if places else here
    package = Package(place) if os.path.isdir(place) else None
    try:
        with open(os.path.join(place, "session.txt") if package else place, "rb") as file:
            data = file.read()
        if package and (package.has("datapackage.json") or package.has("key.json")):
            check("files", package.hashes)
        elif package:
            say("not checked", "files", "beside the session there is no package")
            package = None
        try:
            session, entries = session_file(data)
            session_checks(session, entries, package, typed)
        except Wrong as wrong:
            say("FAILED", "session", str(wrong))
        except BAD as broken:
            say("FAILED", "session", "session.txt cannot be read to its end (%s)" % type(broken).__name__)
    except OSError as trouble:
        print("%s cannot be read: %s. Nothing was changed." % (trouble.filename, trouble.strerror), file=sys.stderr)
        return 3
    say("not checked", "helper's records", "that the helper's opened records equal their ciphertexts (needs the phrase and AES-GCM)")
    if not typed:
        say("not checked", "from outside", "whether this is the session that was ridden: only a number that somebody was given before tells (--compare)")
    print("%d check(s) FAILED: %s" % (len(failed), ", ".join(failed)) if failed else "All checks hold.")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
