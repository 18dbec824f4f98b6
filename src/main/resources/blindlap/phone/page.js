// What both pages have alike: who may see them, the two state lines, what was not taken, a question
// that is asked once.

import { button, clock, el } from "./dom.js";
import { openLink } from "./link.js";
import { lapName } from "./day.js";
import { has, readWords, say } from "./words.js";

const minutes = (since) => Math.max(0, Math.floor((Date.now() - since) / 60000));

// Opens the page of a role. `view` is told the link once and gives { key, build, update }.
export const openPage = async (role, view) => {
  const root = document.getElementById("page");
  theme(localTheme());
  try {
    await readWords();
  } catch (none) {
    root.replaceChildren(el("p", {}, "The laptop does not answer. Come closer and load this page again, or use paper."));
    return;
  }
  const app = { link: null, dialog: null, said: "", view: null, shown: "", root, footer: emptyFooter() };
  let drawing = false;
  // Nothing is made anew under a finger: a touch ends on what it began on.
  let held = false;
  const lift = () => setTimeout(() => {
    held = false;
    app.draw();
  }, 40);
  document.addEventListener("pointerdown", () => { held = true; }, true);
  document.addEventListener("pointerup", lift, true);
  document.addEventListener("pointercancel", lift, true);
  // Nor can a press hit what was not there a moment ago: new buttons at an old place wait a little.
  const early = (event) => {
    if (document.body.classList.contains("fresh")) {
      event.preventDefault();
      event.stopPropagation();
    }
  };
  for (const kind of ["click", "pointerdown"]) {
    root.addEventListener(kind, early, true);
  }
  app.draw = () => {
    if (!app.link || drawing || held) {
      return;
    }
    drawing = true;
    try {
      draw(app);
    } finally {
      drawing = false;
    }
  };
  let opener = "";
  app.ask = (make) => {
    if (make && !app.dialog) {
      opener = document.activeElement ? document.activeElement.id : "";
    }
    if (make) {
      app.said = "";
    }
    app.dialog = make;
    app.shown = "";
    app.draw();
  };
  // Who closes a question is back where it was opened.
  app.shut = () => {
    app.ask(null);
    const back = opener && document.getElementById(opener);
    if (back) {
      back.focus();
    }
  };
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && app.dialog) {
      app.shut();
    }
  });
  app.tell = (words) => {
    app.said = words;
    app.draw();
  };
  app.link = await openLink(role, app.draw);
  app.view = view(app);
  app.draw();
};

const localTheme = () => {
  try {
    return localStorage.getItem("blindlap-theme") || "sun";
  } catch (none) {
    return "sun";
  }
};

export const theme = (name) => {
  document.documentElement.dataset.theme = name;
  try {
    localStorage.setItem("blindlap-theme", name);
  } catch (none) {
    // A page that may not keep anything is light each time it is opened.
  }
};

export const otherTheme = () => theme(document.documentElement.dataset.theme === "dark" ? "sun" : "dark");

const gate = (link) => {
  if (link.taken) {
    return "taken";
  }
  if (link.asking) {
    return "loading";
  }
  if (link.refused && !link.day) {
    return "refused";
  }
  if (link.box.access === "out") {
    return "out";
  }
  if (!link.key) {
    return "scan";
  }
  if (link.box.access === "waiting") {
    return "waiting";
  }
  return link.day && link.box.seen ? "" : "loading";
};

const draw = (app) => {
  const stop = gate(app.link);
  const key = JSON.stringify([stop, stop || app.dialog ? "" : app.view && app.view.key(), app.dialog ? app.dialog.name : "", app.said]);
  if (key !== app.shown) {
    const focus = document.activeElement && document.activeElement.id;
    const asked = stop ? "" : app.dialog ? app.dialog.name : "";
    // What is half typed stays as it is typed: in a question, and in the field under way.
    const half = app.asked === asked ? document.getElementById(asked ? "typed" : focus) : null;
    const typed = half && half.value && half.value !== half.defaultValue ? half.value : "";
    app.asked = asked;
    app.shown = key;
    const before = places(app.root);
    const name = half ? half.id : "";
    put(app, stop ? gatePage(app, stop) : page(app));
    if (before && before !== places(app.root)) {
      fresh();
    }
    if (typed && document.getElementById(name)) {
      document.getElementById(name).value = typed;
    }
    const again = focus && document.getElementById(focus);
    if (again) {
      again.focus();
    } else if (app.dialog) {
      const first = app.root.querySelector(".asked textarea, .asked input, .asked button");
      if (first) {
        first.focus();
      }
    }
  }
  if (!stop && app.view) {
    app.view.update();
  }
  stateLine(app);
};

// Which buttons stand on the page, in order.
const places = (root) => Array.from(root.querySelectorAll("button"), (each) => each.id + each.textContent).join("|");

const MOMENT = 300;
let freshly = 0;
const fresh = () => {
  clearTimeout(freshly);
  document.body.classList.add("fresh");
  freshly = setTimeout(() => document.body.classList.remove("fresh"), MOMENT);
};

// The state lines stay where they are, so that what changes in them is read out.
const put = (app, { parts, button: filled }) => {
  const { root, footer } = app;
  if (footer.parentNode !== root) {
    root.replaceChildren(footer);
  }
  Array.from(root.children).filter((each) => each !== footer).forEach((each) => each.remove());
  footer.before(...parts);
  Array.from(footer.children).slice(1).forEach((each) => each.remove());
  if (filled) {
    footer.append(filled);
  }
};

const gatePage = (app, stop) => ({ parts: [
  el("main", { class: "gate" },
    el("h1", {}, "Blindlap"),
    el("p", { role: "status" }, say("phone.gate." + stop)),
    stop === "scan" ? el("p", { class: "second" }, say("phone.private")) : null,
    stop === "out" ? el("section", { class: "away" }, ...app.link.unsent().map((each) => el("p", {}, el("b", {}, described(app, each.act))))) : null,
    away(app)),
], button: null });

const page = (app) => {
  const built = app.view.build();
  return { parts: [
    built.head,
    el("main", {}, app.dialog && app.said ? el("p", { class: "said", role: "status" }, app.said) : null, app.dialog ? app.dialog(app) : null, app.dialog ? null : away(app), app.dialog ? null : built.main),
  ], button: app.dialog ? null : built.button };
};

const emptyFooter = () =>
  el("footer", {},
    el("div", { id: "state", class: "state", role: "status", "aria-live": "polite" }, el("b", { id: "state1" }, " "), el("span", { id: "state2" }, " ")));

// Always two lines high, so that nothing moves when the connection goes or comes.
const stateLine = (app) => {
  const link = app.link;
  const first = document.getElementById("state1");
  const second = document.getElementById("state2");
  if (!first || !second) {
    return;
  }
  const waiting = link.unsent();
  const [one, two] = lines(app, waiting);
  write(first, one);
  write(second, two);
  document.getElementById("state").classList.toggle("kept", waiting.length > 0);
};

const write = (element, words) => {
  if (element.textContent !== words) {
    element.textContent = words;
  }
};

const lines = (app, waiting) => {
  const link = app.link;
  if (!link.keeps) {
    return [say("phone.no.store"), say("phone.no.store.more")];
  }
  const more = app.view && !gate(link) ? app.view.open() : "";
  if (waiting.length > 0) {
    const kept = link.unsentAndKept().length === waiting.length;
    const oldest = minutes(waiting[0].given);
    const since = oldest < 1 ? say("phone.kept.now", waiting.length) : say("phone.kept.for", waiting.length, oldest);
    return link.signal() && oldest < 1
      ? [say("phone.sending"), more]
      : [kept ? say("phone.kept") : say("phone.keeping"), since];
  }
  if (link.box.done) {
    // At a starter's Stop a clock would tell how long the lap took.
    const saved = link.role === "rider" ? say("phone.saved", clock(link.box.done)) : say("phone.in.notebook");
    return [saved, link.signal() ? more : say("phone.no.signal")];
  }
  if (!link.key) {
    return ["", ""]; // nothing is kept for a laptop that this phone has not met
  }
  return [link.signal() ? say("phone.connected") : say("phone.no.signal"), more];
};

// What the laptop did not take stays until it is put away: it may be needed on paper.
const away = (app) => {
  const all = app.link.box.away;
  return all.length === 0
    ? null
    : el("section", { class: "away", "aria-label": say("phone.away") },
        el("h2", {}, say("phone.away")),
        ...all.map((each) =>
          el("div", { class: "away-row" },
            el("p", {}, el("b", {}, described(app, each.act)), " ", each.why === "older" ? say("phone.away.older") : each.why || say("phone.away.none")),
            button(say("phone.away.done"), () => app.link.putAway(each.number), "quiet"))));
};

const placed = (day, act) => {
  if (day && day.trial && Number(act.stint) > 0) {
    return say("trial.lap", lapName(day, { stint: Number(act.stint), lap: 1 }, say));
  }
  return act.lap && act.lap !== "0" ? say("phone.place.lap", act.stint, act.lap) : act.stint ? say("phone.place", act.stint) : "";
};

// An act in words, for the list of what was not taken.
const described = (app, act) => {
  const lap = placed(app.link.day, act);
  const what = [act.measure || act.name, has("phone.act." + act.do) ? say("phone.act." + act.do) : ""].filter((part) => part).join(", ") || act.do;
  // A time that did not arrive is to be written on paper; a rider is shown none.
  const seconds = act.do === "time" && !act.typed && app.link.role === "starter" ? String(Number(act.elapsed_ms) / 1000) : "";
  const value = act.value !== undefined && act.value !== null ? act.value : act.typed || seconds || act.text || act.what || act.words || act.reason || act.cue || "";
  const day = app.link.day;
  const setup = act.setup && day ? day.setups[Number(act.setup) - 1] : "";
  const event = act.event ? say("event." + act.event) : "";
  const sure = act.sureness ? say("sure." + act.sureness) : "";
  return [lap, what, event, setup, sure, value].filter((part) => part).join(", ") + ":";
};

// A question over the page: it has a name, a title, and buttons.
export const question = (name, title, children) => {
  const make = () => el("section", { class: "asked", role: "dialog", "aria-label": title }, el("h2", {}, title), ...children());
  Object.defineProperty(make, "name", { value: name });
  return make;
};
