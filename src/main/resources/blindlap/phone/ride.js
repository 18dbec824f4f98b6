// The rider's page: what was that lap like? One lap at a time, in the words and the order of the
// window's page; times are neither asked nor shown before the scores are given, nor after.

import { button, el, holdButton } from "./dom.js";
import * as days from "./day.js";
import { lineScale } from "./scale.js";
import { openPage, otherTheme, question } from "./page.js";
import { doubtful, started, stopped, takenUp } from "./watch.js";
import { say } from "./words.js";

const SURENESS = ["HUNCH", "FAIRLY_SURE", "CERTAIN"];
const EVENTS = ["TRAFFIC", "CRASH", "PUNCTURE", "MECHANICAL", "WRONG_LINE", "STOPPED"];

const rider = (app) => {
  const link = app.link;
  const hand = { done: null, again: null };
  const undo = [];
  const watches = {};
  let onLap = "";
  let choosing = false;
  let timing = false;
  // What the line scales show: a scale is made anew only where something else stands now.
  let lines = {};

  const now = () => days.standing(link.day, link.box.seen, link.acts());
  const sheetNow = () => {
    const sheet = days.sheet(link.day, now(), hand);
    const lap = sheet.lap ? days.key(sheet.lap) : sheet.stage;
    if (lap !== onLap) {
      onLap = lap;
      undo.length = 0;
      choosing = false;
    }
    return sheet;
  };
  // How the lap of a sheet stands now; the sheet itself where the page has gone on to another lap.
  const still = (sheet) => {
    const current = sheetNow();
    return current.lap && days.key(current.lap) === days.key(sheet.lap) ? current : sheet;
  };
  const at = (sheet) => ({ stint: String(sheet.lap.stint), lap: String(sheet.lap.lap) });

  const answer = (act, name, back) => {
    link.say(act);
    if (back) {
      undo.push({ name, act: back });
    }
    app.tell("");
  };

  const score = (sheet, name, value) => {
    lines[name] = value;
    const was = sheet.values[name] === undefined ? null : sheet.values[name];
    if (was === value) {
      return;
    }
    answer({ do: "score", ...at(sheet), measure: name, value }, name, {
      do: "score-back", ...at(sheet), measure: name, from: value, to: was,
    });
  };

  const guess = (sheet, given, name) => {
    const was = sheet.guess;
    if (link.day.trial && !sheet.done) {
      // An answer stands only once its trial is ridden: the lap is said first, and its sheet stays.
      link.say({ do: "ridden", ...at(sheet) });
      hand.again = sheet.lap;
    }
    const act = { stint: String(sheet.lap.stint), ...given };
    answer({ do: "guess", ...act }, name, { do: "guess-back", stint: act.stint, from: given, to: was });
  };

  const headline = (sheet) => {
    const of = days.shape(link.day);
    if (sheet.stage === "HAND_OVER" || sheet.stage === "WARM_UP" || sheet.lap) {
      if (!sheet.lap) {
        return [say("warm.up", sheet.number, sheet.of), "", ""];
      }
      if (of.trial) {
        const trial = say("trial.headline", days.trialOf(of, sheet.lap.stint), of.stints / of.trial, days.placeOf(of, sheet.lap.stint), of.trial);
        return [trial, "", link.day.plate || say("plate")];
      }
      const second = of.per === 1 ? "" : say("phone.lap.of", sheet.lap.lap, of.per);
      return [say("stint", sheet.lap.stint, of.stints), second, link.day.plate || say("plate")];
    }
    return ["", "", ""];
  };

  const head = (sheet) => {
    const lines = headline(sheet);
    return el("header", {},
      el("div", { class: "code", "aria-label": say("phone.code", sheet.code) }, sheet.code || "–"),
      el("div", { class: "lines" }, el("b", {}, lines[0]), el("span", {}, lines[1]), el("span", {}, lines[2])));
  };

  const caution = () => el("p", { class: "caution" }, el("b", {}, say("caution") + " "), say("phone.caution"));

  const covariates = (sheet) => {
    const asked = days.covariatesAsked(link.day, now(), sheet, ["RIDER"]);
    return asked.length === 0
      ? null
      : el("section", {},
          el("p", { class: "second" }, say(sheet.stage === "DONE" ? "covariate.done" : "covariate.before")),
          ...asked.map((each) => covariateField(each)));
  };

  const covariateField = (each) => {
    const field = el("input", { type: "text", inputmode: "decimal", id: ["cov", each.name, each.stint, each.lap].join("-"), value: each.said, autocomplete: "off" });
    let said = each.said;
    field.addEventListener("change", () => {
      const typed = field.value.trim().replace(",", ".");
      if (typed !== "" && !/^-?\d{1,9}(\.\d{1,9})?$/.test(typed)) {
        app.tell(say("covariate.no.number", each.name, field.value));
        return;
      }
      if (typed !== said) {
        const was = said;
        said = typed;
        answer(
          { do: "covariate", name: each.name, stint: String(each.stint), lap: String(each.lap), value: typed || null },
          each.name,
          { do: "covariate", name: each.name, stint: String(each.stint), lap: String(each.lap), value: was || null },
        );
      }
    });
    return el("label", { class: "field" }, el("b", {}, each.title), " ", el("span", { class: "second" }, each.who), field);
  };

  const handOver = (sheet) => {
    const stint = sheet.lap ? sheet.lap.stint : 0;
    const parts = [covariates(sheet)];
    if (link.day.alone) {
      parts.push(el("p", { class: "big" }, say("phone.alone")));
    } else if (!link.signal()) {
      parts.push(
        el("p", { class: "big" }, stint === 0 ? say("phone.plate.warm.up") : say("phone.plate", sheet.code)),
        el("p", { class: "second" }, say("phone.plate.why")),
        el("div", { class: "row" },
          button(say("phone.yes"), () => answer({ do: "plate", stint: String(stint) }), "", { id: "plate-yes" }),
          button(say("phone.no"), () => app.tell(say("phone.plate.not")), "", { id: "plate-no" })));
    } else if (sheet.helper) {
      parts.push(
        el("p", { class: "big" }, say("hand.over")),
        el("p", { class: "second" }, say("hand.over.waits")),
        hold(say("hand.over.without"), stint),
        el("p", { class: "second" }, say("hand.over.without.note")));
    } else {
      parts.push(
        el("p", { class: "big" }, say("hand.over")),
        hold(say("hand.over.button"), stint),
        el("p", { class: "second" }, say("hand.over.note")));
    }
    return [...parts, moreOnly(), caution()];
  };

  const hold = (words, stint) =>
    holdButton(words, () => answer({ do: "handed-over", stint: String(stint) }), () => app.tell(say("hand.over.short")), say("hand.over.let.go"));

  const watchRow = (sheet, name) => {
    const watch = sheet.watches[name];
    const place = { ...at(sheet), measure: name };
    const start = () => {
      const wall = Date.now();
      watches[onLap + name] = started(wall, performance.now());
      answer({ do: "watch-start", ...place, at: String(wall) }, name, { do: "watch-reset", ...place });
    };
    const stop = () => {
      // What the laptop told is by its clock; what was started here and is not sent by this phone's.
      const wall = watch.here ? Number(watch.at) : Number(watch.at) - (link.offset() || 0);
      const kept = watches[onLap + name];
      const said = stopped(kept && Math.abs(kept.wall - wall) < 1000 ? kept : takenUp(wall), Date.now(), performance.now());
      answer(
        { do: "time", ...place, started: said.started, stopped: said.stopped, elapsed_ms: said.elapsed_ms, typed: null, by: "RIDER", knows_key: false },
        name, { do: "watch-run-on", ...place, at: said.started });
      app.tell(say(doubtful(said) ? "phone.doubtful" : "watch.hidden"));
    };
    const press = { READY: ["watch.start", start], RUNNING: ["watch.stop", stop], STOPPED: ["watch.again", start] }[watch.state];
    return el("div", { class: "watch" },
      el("b", {}, name), el("span", { class: "second" }, say("watch." + watch.state)),
      el("div", { class: "row" },
        button(say(press[0]), press[1], "", { disabled: sheet.locked && watch.state === "READY" }),
        watch.state === "RUNNING" ? button(say("watch.false"), () => answer({ do: "watch-reset", ...place }), "quiet") : null));
  };

  const lineQuestion = (sheet, each) =>
    el("section", { class: "question" },
      el("h2", {}, each.name),
      lineScale({
        id: "q-" + each.name,
        name: each.name,
        low: each.low,
        high: each.high,
        value: sheet.values[each.name],
        words: (step) => (step < 0 ? say("scale.untouched") : say("scale.step." + step, each.low, each.high)),
        given: (value) => score(still(sheet), each.name, value),
      }));

  const categoryQuestion = (sheet, each) =>
    el("section", { class: "question" },
      el("h2", {}, each.name),
      el("div", { class: "categories", role: "group", "aria-label": each.name },
        ...[1, 2, 3, 4, 5, 6, 7, 8, 9].map((number) =>
          button(String(number), () => score(still(sheet), each.name, String(number)), sheet.values[each.name] === String(number) ? "chosen" : "", {
            "aria-pressed": sheet.values[each.name] === String(number) ? "true" : "false",
            id: "q-" + each.name + "-" + number,
          }))),
      el("p", { class: "ends" }, el("span", {}, each.low), el("span", {}, each.high)));

  const countQuestion = (sheet, each) => {
    const value = sheet.values[each.name];
    const step = (by) => {
      const current = still(sheet);
      score(current, each.name, String(Math.max(0, Number(current.values[each.name] || 0) + by)));
    };
    return el("section", { class: "question count" },
      el("h2", {}, each.name),
      el("div", { class: "counter" },
        button("−", () => step(-1), "", { "aria-label": each.name + ": " + say("count.fewer"), id: "less-" + each.name }),
        el("output", {}, value === undefined ? "–" : value),
        button("+", () => step(1), "", { "aria-label": each.name + ": " + say("count.more"), id: "more-" + each.name })));
  };

  const KINDS = { LINE: lineQuestion, CATEGORY: categoryQuestion, COUNT: countQuestion };

  const guessQuestion = (sheet) => {
    const given = sheet.guess;
    if (given && given.setup !== null && given.sureness === null && !choosing) {
      const name = link.day.setups[Number(given.setup) - 1];
      // The same three boxes ask how sure; the title goes back to the choice.
      return el("section", { class: "question" },
        button(say(link.day.trial ? "trial.answered" : "phone.guessed", name), () => { choosing = true; app.draw(); }, "title", { id: "guess-title" }),
        el("div", { class: "three" }, ...SURENESS.map((each) =>
          button(say("sure." + each), () => guess(still(sheet), { setup: given.setup, sureness: each, cue: given.cue }, say("sure.name")), "", { id: "sure-" + each }))));
    }
    const chosen = given ? (given.setup === null ? 0 : Number(given.setup)) : -1;
    const box = (index, words) =>
      button(words, () => { choosing = false; guess(still(sheet), { setup: index === 0 ? null : String(index), sureness: null, cue: given ? given.cue : "" }, say("guess.name")); },
        chosen === index ? "chosen" : "", { "aria-pressed": chosen === index ? "true" : "false", id: "guess-" + index });
    const trial = link.day.trial;
    const title = trial ? trial.question : say("guess");
    const boxes = link.day.setups.map((words, index) => box(index + 1, words));
    return el("section", { class: "question" },
      el("h2", {}, given && given.sureness ? title + ": " + say("sure." + given.sureness) : title),
      trial ? el("p", { class: "second" }, say("trial.pick")) : null,
      el("div", { class: "three" }, ...(trial ? boxes.slice(Number(trial.first) - 1) : [...boxes, box(0, say("guess.none"))])),
      given ? button(given.cue ? say("phone.cue.given", given.cue) : say("cue"), () => app.ask(cueDialog(sheet)), "quiet", { id: "cue" }) : null);
  };

  const typed = (name, title, start, done, hint) =>
    question(name, title, () => {
      const field = el("textarea", { rows: "3", id: "typed", maxlength: "1000", "aria-label": title });
      field.value = start();
      return [
        hint ? el("p", { class: "second" }, hint) : null,
        field,
        el("div", { class: "row" },
          button(say("phone.keep"), () => { const words = field.value.trim(); app.shut(); done(words); }, "filled", { id: "typed-keep" }),
          button(say("phone.back"), app.shut, "", { id: "back" })),
      ];
    });

  // What is asked belongs to the lap it was opened on, also if the page has gone on meanwhile.
  const noteDialog = (sheet) => typed("note", say("note"), () => sheet.note, (words) => {
    if (words !== sheet.note) {
      answer({ do: "note", ...at(sheet), text: words }, say("note.name"), { do: "note-back", ...at(sheet), from: words, to: sheet.note });
    }
  });
  const cueDialog = (sheet) => typed("cue", say("cue"), () => sheet.guess.cue, (words) => {
    const given = still(sheet).guess || sheet.guess;
    guess(still(sheet), { setup: given.setup, sureness: given.sureness, cue: words }, say("cue.name"));
  });
  const sawDialog = () => typed("saw", say(link.day.masked ? "labels.out" : "blind.broken"), () => "", (words) => {
    if (words) {
      const stint = String(Math.max(1, sheetNow().lap ? sheetNow().lap.stint : days.latestStint(now())));
      answer({ do: "saw", stint, what: words });
      app.tell(say(link.day.masked ? "labels.out.done" : "blind.broken.done", stint));
    }
  }, say(link.day.masked ? "labels.out.what" : "blind.broken.what"));
  const notFitDialog = typed("not-fit", say("phone.not.fit"), () => "", (words) => {
    answer({ do: "not-fit", stint: String(days.latestStint(now())), words });
  }, say("phone.not.fit.follows"));
  const capDialog = (sheet) => typed("cap", say("cap.question"), () => "", (words) => {
    if (words) {
      answer({ do: "past-cap", stint: String(sheet.lap.stint), reason: words });
    } else {
      app.tell(say("cap.why"));
    }
  }, say("cap.why"));

  const spoiledDialog = (sheet) => question("spoiled", say("spoiled.title"), () => [
    el("div", { class: "three" }, ...EVENTS.map((event) => button(say("event." + event), () => app.ask(voidDialog(event, sheet)), "", { id: "event-" + event }))),
    el("div", { class: "row" }, button(say("phone.back"), app.shut, "", { id: "back" })),
  ]);
  // What a void is of: a lap, or a whole trial.
  const voiding = (key, sheet, words) =>
    sheet.trial ? say("trial." + key, sheet.trial.number, words) : say(key, sheet.number, words);
  const voidDialog = (event, sheet) =>
    question("void-" + event, voiding("void.follows", sheet, say("event." + event)), () => [
      el("div", { class: "row" },
        button(voiding("void.do", sheet), () => {
          app.shut();
          const place = at(sheet);
          // The page stays on this lap before the notebook knows: going on would drop the way back.
          hand.again = null;
          hand.done = sheet.lap;
          answer({ do: "void", ...place, event, words: "" }, voiding("void.name", sheet), { do: "void-back", ...place, event });
          app.draw();
        }, "filled", { id: "void-do" }),
        button(say("void.not"), app.shut, "", { id: "back" })),
    ]);

  const moreDialog = question("more", say("more"), () => [
    el("div", { class: "column" },
      undo.length ? button(say("take.back", undo[undo.length - 1].name), takeBack, "", { id: "take-back" }) : null,
      button(say(link.day.masked ? "labels.out" : "blind.broken"), () => app.ask(sawDialog()), "", { id: "saw" }),
      button(say("phone.not.fit"), () => app.ask(notFitDialog), "", { id: "not-fit" }),
      button(say("phone.theme"), otherTheme, "quiet", { id: "theme" }),
      button(say("phone.back"), app.shut, "", { id: "back" })),
    caution(),
  ]);

  const takeBack = () => {
    const last = undo.pop();
    app.dialog = null;
    if (last) {
      if (last.act.do === "void-back") {
        hand.done = null;
        hand.again = { stint: Number(last.act.stint), lap: Number(last.act.lap) };
      }
      link.say(last.act);
    }
    app.shown = "";
    app.draw();
  };

  const done = () => {
    const sheet = sheetNow();
    const open = days.openAtDone(link.day, sheet).map((each) => (each.word ? say(each.word, each.of) : each.name));
    if (open.length > 0) {
      const unanswered = sheet.trial && sheet.guessAsked && !sheet.guess;
      const asks = unanswered ? say("trial.done.open", open.join("; "), sheet.trial.number) : say("done.open", open.join("; "));
      app.ask(question("open", asks, () => [
        el("div", { class: "row" }, button(say("done.as.it.is"), () => { app.shut(); asDone(sheet); }, "filled", { id: "done-anyway" }), button(say("done.back"), app.shut, "", { id: "back" })),
      ]));
      return;
    }
    asDone(sheet);
  };
  const asDone = (sheet) => {
    hand.again = null;
    hand.done = sheet.lap;
    undo.length = 0;
    link.say({ do: "ridden", ...at(sheet) });
    app.shown = "";
    app.draw();
  };
  const goOn = () => {
    hand.done = null;
    app.shown = "";
    app.draw();
  };

  const small = (sheet) =>
    el("div", { class: "row small" },
      button(sheet.note ? say("phone.note.given") : say("phone.note"), () => app.ask(noteDialog(sheet)), "", { id: "note" }),
      sheet.trial && (sheet.trial.answered || sheet.trial.voided) ? null : button(say("phone.spoiled"), () => app.ask(spoiledDialog(sheet)), "", { id: "spoiled" }),
      button(say("phone.more"), () => app.ask(moreDialog), "", { id: "more" }));

  const moreOnly = () => el("div", { class: "row small" }, button(say("phone.more"), () => app.ask(moreDialog), "", { id: "more" }));

  const scored = (sheet) => {
    const timed = Object.keys(sheet.watches);
    return [
      sheet.locked ? el("p", { class: "second" }, say("watch.locked")) : null,
      timed.length
        ? el("details", { class: "watches", open: timing, ontoggle: (event) => { timing = event.target.open; } },
            el("summary", {}, say("phone.i.time")), ...timed.map((name) => watchRow(sheet, name)))
        : null,
      sheet.trial && !sheet.guessAsked && link.day.questions.length === 0 ? el("p", { class: "big" }, link.day.trial.before) : null,
      ...link.day.questions.map((each) => KINDS[each.kind](sheet, each)),
      sheet.guessAsked ? guessQuestion(sheet) : null,
      small(sheet),
    ];
  };

  const reopen = () => {
    const lap = days.reopenable(days.shape(link.day), now());
    return lap && !hand.again
      ? button(say("again", days.lapName(link.day, lap, say)), () => { hand.again = lap; hand.done = null; app.shown = ""; app.draw(); }, "quiet", { id: "again" })
      : null;
  };

  const doneWords = (sheet) => {
    const trial = sheet.trial;
    return !trial
      ? say(link.day.alone ? "done.words.alone" : "done.words")
      : say("trial.done." + (trial.voided ? "void" : !trial.ends ? "lap" : trial.answered ? "answered" : "unanswered"), trial.number);
  };

  const STAGES = {
    HAND_OVER: (sheet) => [handOver(sheet), null],
    WARM_UP: () => [[el("p", { class: "big" }, say("warm.up.words")), moreOnly(), caution()], button(say("warm.up.button"), () => answer({ do: "warm-up" }), "filled main", { id: "main" })],
    SETTLING: () => [[el("p", { class: "big" }, say("settling")), moreOnly(), caution()], button(say("settling.button"), settled, "filled main", { id: "main" })],
    SCORED: (sheet) => [scored(sheet), button(say("done.button", days.lapName(link.day, sheet.lap, say)), done, "filled main", { id: "main" })],
    DONE: (sheet) => [
      [el("p", { class: "big" }, doneWords(sheet)), covariates(sheet), reopen(), moreOnly(), caution()],
      button(say(days.nextLap(days.shape(link.day), now()) ? "next.button" : "next.end"), goOn, "filled main", { id: "main" }),
    ],
    CAP: (sheet) => [
      [el("p", { class: "big" }, say("cap.reached", sheet.most)), el("p", {}, say("cap.lead")), button(say("cap.button"), () => app.ask(capDialog(sheet)), "", { id: "past-cap" }), moreOnly()],
      null,
    ],
    ALL_RIDDEN: () => [[el("p", { class: "big" }, say("all.ridden")), el("p", {}, say("phone.all.ridden")), reopen(), moreOnly()], null],
    OVER: () => [[el("p", { class: "big" }, say("phone.over"))], null],
  };

  const settled = () => link.say({ do: "ridden", ...at(sheetNow()) });

  return {
    key: () => {
      const sheet = sheetNow();
      const isLine = (name) => link.day.questions.some((each) => each.kind === "LINE" && each.name === name);
      const others = Object.entries(sheet.values).filter(([name]) => !isLine(name));
      const moved = Object.keys({ ...lines, ...sheet.values }).filter((name) => isLine(name) && lines[name] !== sheet.values[name]);
      return [sheet.stage, onLap, sheet.locked, sheet.helper, sheet.number, sheet.most, others, moved, sheet.guess, choosing, sheet.note !== "",
        sheet.watches, sheet.stage === "HAND_OVER" ? link.signal() : "", undo.length > 0, link.box.away.length];
    },
    build: () => {
      const sheet = sheetNow();
      lines = { ...sheet.values };
      const [main, filled] = STAGES[sheet.stage](sheet);
      return {
        head: head(sheet),
        main: el("div", { class: "sheet" }, app.said ? el("p", { class: "said", role: "status" }, app.said) : null, ...main.flat().filter((part) => part)),
        button: filled,
      };
    },
    update: () => {},
    open: () => {
      const sheet = sheetNow();
      if (sheet.stage !== "SCORED") {
        return "";
      }
      const open = days.openAnswers(link.day, sheet).length;
      return open === 0 ? say("open.none") : open === 1 ? say("open.one") : say("open.many", open);
    },
  };
};

openPage("rider", rider);
