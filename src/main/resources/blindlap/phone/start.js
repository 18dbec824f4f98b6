// The starter's page: which lap starts? One big button that is Start, then Stop, at the same place.
// The time is kept and not shown; there are no scores here.

import { button, clock, el, runningTime } from "./dom.js";
import * as days from "./day.js";
import { openPage, otherTheme, question } from "./page.js";
import { doubtful, started, stopped, takenUp, typedTime } from "./watch.js";
import { say } from "./words.js";

const EVENTS = ["TRAFFIC", "CRASH", "PUNCTURE", "MECHANICAL", "WRONG_LINE", "STOPPED"];
const CONDITIONS = { traffic: 3, wind: 3, surface: 3, light: 3 };

const starter = (app) => {
  const link = app.link;
  const watches = {};
  const doubts = {};
  let ahead = null;
  let knows = false;

  const now = () => days.standing(link.day, link.box.seen, link.acts());
  const sheetNow = () => days.starterSheet(link.day, now(), ahead);
  const at = (sheet) => ({ stint: String(sheet.lap.stint), lap: String(sheet.lap.lap) });
  const say2 = (act, words) => {
    link.say(act);
    app.tell(words || "");
  };

  const head = (sheet) => {
    const of = days.shape(link.day);
    const lap = sheet.lap;
    const next = lap && days.after(link.day, now(), lap);
    const after = !next ? "" : next.stint === lap.stint ? say("phone.next.same", next.lap) : say("phone.next", link.day.codes[next.stint - 1]);
    const lines = lap
      ? [of.trial ? say("trial.headline", days.trialOf(of, lap.stint), of.stints / of.trial, days.placeOf(of, lap.stint), of.trial) : say("stint", lap.stint, of.stints), of.per === 1 ? "" : say("phone.lap.of", lap.lap, of.per), after]
      : sheet.number ? [say("warm.up", sheet.number, sheet.of), "", ""] : ["", "", ""];
    return el("header", {},
      el("div", { class: "code", "aria-label": say("phone.code", sheet.code) }, sheet.code || "–"),
      el("div", { class: "lines" }, el("b", {}, lines[0]), el("span", {}, lines[1]), el("span", {}, lines[2])));
  };

  const watchOf = (sheet, name) => sheet.watches[name];

  const start = (sheet, name) => {
    const wall = Date.now();
    watches[days.key(sheet.lap) + name] = started(wall, performance.now());
    delete doubts[days.key(sheet.lap) + name];
    say2({ do: "watch-start", ...at(sheet), measure: name, at: String(wall) });
  };
  const wallStart = (sheet, name) => {
    const watch = watchOf(sheet, name);
    // What the laptop told is by its clock; what was started here and not sent yet by this phone's.
    return watch.here ? Number(watch.at) : Number(watch.at) - (link.offset() || 0);
  };
  const begun = (sheet, name) => {
    const kept = watches[days.key(sheet.lap) + name];
    const wall = wallStart(sheet, name);
    return kept && Math.abs(kept.wall - wall) < 1000 ? kept : takenUp(wall);
  };
  const stop = (sheet, name) => {
    const said = stopped(begun(sheet, name), Date.now(), performance.now());
    if (doubtful(said)) {
      doubts[days.key(sheet.lap) + name] = true;
    }
    say2({
      do: "time", ...at(sheet), measure: name, started: said.started, stopped: said.stopped,
      elapsed_ms: said.elapsed_ms, typed: null, by: "STARTER", knows_key: knows,
    }, say(doubtful(said) ? "phone.doubtful" : "watch.hidden"));
  };
  const runOn = (sheet, name) => {
    const kept = watches[days.key(sheet.lap) + name];
    if (kept) {
      say2({ do: "watch-run-on", ...at(sheet), measure: name, at: String(kept.wall) });
    }
  };
  const typeTime = (sheet, name) =>
    question("type-" + name, say("type.title"), () => {
      const field = el("input", { type: "text", inputmode: "decimal", id: "typed", "aria-label": say("type.title"), autocomplete: "off" });
      return [field, el("div", { class: "row" },
        button(say("type.button"), () => {
          const seconds = typedTime(field.value);
          if (!seconds) {
            app.tell(say("time.form", field.value));
            return;
          }
          const wall = String(Date.now());
          app.shut();
          delete doubts[days.key(sheet.lap) + name];
          say2({ do: "time", ...at(sheet), measure: name, started: wall, stopped: wall, elapsed_ms: "0", typed: seconds, by: "STARTER", knows_key: knows }, say("watch.hidden"));
        }, "filled", { id: "typed-keep" }),
        button(say("phone.back"), app.shut, "", { id: "back" }))];
    });

  const watch = (sheet, name, first) => {
    const shown = watchOf(sheet, name);
    const big = first ? "big-watch" : "";
    const running = shown.state === "RUNNING";
    const since = running ? wallStart(sheet, name) : 0;
    const line = el("p", { class: "running" },
      el("span", {}, running ? say("phone.running", clock(since)) : say("watch." + shown.state)),
      running ? el("b", { class: "time", "data-since": String(since) }, runningTime(Date.now() - since)) : el("b", {}, " "));
    const press = running
      ? button(say("watch.stop"), () => stop(sheetNow(), name), "filled " + big, { id: "watch-" + name })
      : shown.state === "READY"
        ? button(say("watch.start"), () => start(sheetNow(), name), "filled " + big, { id: "watch-" + name, disabled: blocked(sheet) })
        : next(sheet, first, name, big);
    const below = running
      ? button(say("watch.false"), () => say2({ do: "watch-reset", ...at(sheetNow()), measure: name }), "", { id: "false-" + name })
      : shown.state === "STOPPED"
        ? button(say("watch.undo"), () => runOn(sheetNow(), name), "", { id: "undo-" + name, disabled: !watches[days.key(sheet.lap) + name] })
        : button(say("watch.false"), () => {}, "unseen", { disabled: true, "aria-hidden": "true" });
    const doubt = doubts[days.key(sheet.lap) + name]
      ? button(say("type.title"), () => app.ask(typeTime(sheetNow(), name)), "quiet", { id: "type-" + name })
      : null;
    return el("section", { class: "watch" }, first && link.day.timed.length === 1 ? null : el("h2", {}, name), line, press, below, doubt);
  };

  // A lap that may not start: the bike is back with the helper, as far as this phone can know.
  const blocked = (sheet) => link.signal() && (sheet.stage === "HAND_OVER" || sheet.locked);

  const next = (sheet, first, name, big) =>
    button(first ? say("phone.go.on") : say("watch.again"), () => {
      if (!first) {
        start(sheetNow(), name);
        return;
      }
      ahead = days.after(link.day, now(), sheet.lap) || ahead;
      app.draw();
    }, "filled long " + big, { id: first ? "go-on" : "again-" + name, disabled: first && !days.after(link.day, now(), sheet.lap) });

  // What a void is of: a lap, or a whole trial.
  const voiding = (key, sheet, words) =>
    sheet.trial ? say("trial." + key, sheet.trial.number, words) : say(key, sheet.number, words);
  const voided = (sheet) => sheet.trial ? say("trial.done.void", sheet.trial.number) : say("phone.voided", sheet.number);

  const voids = (sheet) =>
    el("section", {},
      el("h2", {}, say("phone.spoiled.title")),
      el("div", { class: "three" }, ...EVENTS.map((event) =>
        button(say("event." + event), () => app.ask(voidDialog(event)), sheet.voided ? "" : "", { id: "event-" + event }))),
      sheet.voided ? el("p", { class: "said" }, voided(sheet)) : null);

  const voidDialog = (event) => {
    const sheet = sheetNow();
    return question("void-" + event, voiding("void.follows", sheet, say("event." + event)), () => [
      el("div", { class: "row" },
        button(voiding("void.do", sheet), () => { app.shut(); say2({ do: "void", ...at(sheet), event, words: "" }, voided(sheet)); }, "filled", { id: "void-do" }),
        button(say("void.not"), app.shut, ""))]);
  };

  const voidBack = (sheet) =>
    sheet.voided
      ? button(say("take.back", voiding("void.name", sheet)), () => say2({ do: "void-back", ...at(sheet), event: now().voids[days.key(sheet.lap)] }), "quiet", { id: "void-back" })
      : null;

  const conditions = (sheet) =>
    el("section", { class: "conditions" },
      el("h2", {}, say("conditions")),
      ...Object.entries(CONDITIONS).map(([name, many]) =>
        el("div", { class: "condition", role: "group", "aria-label": say("condition." + name) },
          el("b", {}, say("condition." + name)),
          el("div", { class: "three" }, ...Array.from({ length: many }, (none, i) => {
            const words = say(name + "." + i);
            const chosen = sheet.conditions[name] === words;
            return button(words, () => say2({ do: "conditions", ...at(sheetNow()), name, words }), chosen ? "chosen" : "", {
              "aria-pressed": chosen ? "true" : "false", id: "condition-" + name + "-" + i });
          })))));

  const covariates = (sheet) => {
    const asked = sheet.lap ? days.covariatesOf(link.day, now(), sheet.lap, ["STARTER", "TESTER"]) : [];
    return asked.length === 0 ? null : el("section", {}, ...asked.map((each) => {
      const field = el("input", { type: "text", inputmode: "decimal", id: ["cov", each.name, each.stint, each.lap].join("-"), value: each.said, autocomplete: "off" });
      field.addEventListener("change", () => {
        const typed = field.value.trim().replace(",", ".");
        if (typed !== "" && !/^-?\d{1,9}(\.\d{1,9})?$/.test(typed)) {
          app.tell(say("covariate.no.number", each.name, field.value));
          return;
        }
        say2({ do: "covariate", name: each.name, stint: String(each.stint), lap: String(each.lap), value: typed || null });
      });
      return el("label", { class: "field" }, el("b", {}, each.title), " ", el("span", { class: "second" }, each.who), field);
    }));
  };

  const knowing = () => {
    const tick = el("input", { type: "checkbox", id: "knows" });
    tick.checked = knows;
    tick.addEventListener("change", () => {
      knows = tick.checked;
      app.tell(knows ? say("timekeeper.knows") : "");
    });
    return el("label", { class: "tick" }, tick, " ", say("timekeeper"));
  };

  const caution = () => el("p", { class: "caution" }, el("b", {}, say("caution") + " "), say("phone.caution"));

  const lapPage = (sheet) => [
    sheet.stage === "HAND_OVER" || sheet.locked
      ? el("p", { class: "second" }, link.signal() ? say("phone.starter.wait") : say("phone.starter.blind", sheet.code))
      : null,
    ...(sheet.stage === "CAP" ? [el("p", { class: "big" }, say("cap.reached", sheet.most)), el("p", {}, say("phone.starter.cap"))] : link.day.timed.map((name, i) => watch(sheet, name, i === 0))),
    link.day.timed.length === 0 ? el("p", {}, say("phone.starter.no.watch")) : null,
    voids(sheet),
    voidBack(sheet),
    covariates(sheet),
    conditions(sheet),
    knowing(),
    button(say("phone.theme"), otherTheme, "quiet", { id: "theme" }),
    caution(),
  ];

  const plain = { ALL_RIDDEN: "phone.all.ridden", OVER: "phone.over", WARM_UP: "phone.starter.warm.up", HAND_OVER: "phone.starter.warm.up" };

  return {
    key: () => {
      const sheet = sheetNow();
      // The rider is done with laps up to here: what was gone ahead of is past.
      if (ahead && sheet.lap && days.key(sheet.lap) !== days.key(ahead)) {
        ahead = null;
      }
      return [sheet.stage, sheet.lap, sheet.locked, sheet.watches, sheet.voided, sheet.conditions, link.signal(), knows, ahead, doubts, link.box.away.length];
    },
    build: () => {
      const sheet = sheetNow();
      const settling = sheet.stage === "SETTLING";
      const parts = !sheet.lap
        ? [el("p", { class: "big" }, say(plain[sheet.stage] || "phone.over")), caution()]
        : settling ? [el("p", { class: "big" }, say("settling")), caution()] : lapPage(sheet);
      return {
        head: head(sheet),
        main: el("div", { class: "sheet" }, app.said ? el("p", { class: "said", role: "status" }, app.said) : null, ...parts.filter((part) => part)),
        button: null,
      };
    },
    update: () => {
      for (const time of document.querySelectorAll(".time[data-since]")) {
        const words = runningTime(Date.now() - Number(time.dataset.since));
        if (time.textContent !== words) {
          time.textContent = words;
        }
      }
    },
    open: () => say("phone.tell.nobody"),
  };
};

openPage("starter", starter);
