// The way to the laptop: one exchange at a time, in order, again until it is answered. What is to be
// sent and what an answer means is the outbox's matter.

import { answer, ask, fail, give, offsetOf, openBox, putAway, toKeep, unsent, unsentAndKept, written } from "./outbox.js";
import { newId, openKept } from "./keep.js";
import { wordsOfDay } from "./words.js";

const POLL = 2000;
const GIVE_UP = 8000;

// A phone in its role. `changed` is called after anything has changed.
export const openLink = async (role, changed) => {
  const link = {
    role,
    box: openBox(null),
    key: null,
    day: null,
    keeps: true,
    heard: null,
    failing: 0,
    asking: false,
    refused: "",
    taken: false,
  };
  let kept = null;
  let client = null;
  let writing = Promise.resolve();
  let next = 0;

  try {
    kept = await openKept(role);
    const copy = await kept.read("box");
    link.box = openBox(copy || null);
    link.key = (await kept.read("key")) || null;
    link.day = (await kept.read("day")) || null;
    wordsOfDay(link.day && link.day.words);
    client = (await kept.read("client")) || null;
  } catch (failed) {
    link.keeps = false;
  }

  // Written one after the other; only what is written may be called kept, and sent.
  const save = () => {
    const copy = toKeep(link.box);
    writing = writing
      .then(() => (kept ? kept.write({ box: copy }) : Promise.reject(new Error("nothing keeps"))))
      .then(
        () => {
          link.keeps = true;
          link.box = written(link.box, copy);
          changed();
          soon();
        },
        () => {
          link.keeps = false;
          link.taken = kept !== null && kept.taken;
          if (link.taken) {
            changed();
            return;
          }
          // What cannot be kept is sent all the same while there is signal: the page says so.
          link.box = written(link.box, copy);
          changed();
          soon();
        },
      );
    return writing;
  };

  const put = async (entries) => {
    if (kept) {
      try {
        await kept.write(entries);
      } catch (failed) {
        link.keeps = false;
      }
    }
  };

  const fetched = async (path, options) => {
    const stop = new AbortController();
    const timer = setTimeout(() => stop.abort(), GIVE_UP);
    try {
      const response = await fetch(path, { ...options, signal: stop.signal, credentials: "omit", cache: "no-store" });
      const text = await response.text();
      let body = null;
      try {
        body = text ? JSON.parse(text) : null;
      } catch (notJson) {
        body = null;
      }
      return { status: response.status, body };
    } finally {
      clearTimeout(timer);
    }
  };

  const bearer = () => ({ Authorization: "Bearer " + link.key });

  const hello = async (token) => {
    if (!client) {
      client = newId();
      await put({ client });
    }
    const { status, body } = await fetched("/hello", {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify({ token, client, role }),
    });
    if (status === 429 || status >= 500) {
      throw new Error("not now"); // nothing was said of the code: it is shown again later
    }
    if (status !== 200) {
      link.refused = "token";
      return;
    }
    link.refused = "";
    if (!link.day || link.day.session !== body.session) {
      // Another day: what was kept for the one before belongs to it and is no longer sent.
      const older = unsent(link.box).map((each) => ({ ...each, why: "older" }));
      link.box = { ...openBox(null), away: [...link.box.away, ...older] };
      link.day = null;
    }
    link.key = body.key;
    link.box = { ...link.box, access: body.in ? "in" : "waiting" };
    await put({ key: link.key, day: link.day });
    await save();
  };

  const readDay = async () => {
    const { status, body } = await fetched("/day", { headers: bearer() });
    if (status === 200 && body) {
      link.day = body;
      wordsOfDay(body.words);
      await put({ day: body });
    } else if (status === 401) {
      link.box = { ...link.box, access: "out" };
    } else if (status === 403) {
      link.box = { ...link.box, access: "waiting" };
    }
  };

  const reached = () => {
    link.heard = { wall: Date.now(), still: performance.now() };
    link.failing = 0;
  };

  let busy = false;
  const turn = async () => {
    if (busy || link.asking || link.taken || !link.key || link.box.access === "out" || document.hidden) {
      return;
    }
    // What is due goes by the clock that nobody sets.
    const due = performance.now() >= next;
    const [box, exchange] = ask(link.box, Date.now(), due);
    link.box = box;
    if (!exchange) {
      return;
    }
    if (link.failing && !due && exchange.body) {
      link.box = fail(link.box, exchange.id);
      return;
    }
    busy = true;
    try {
      const { status, body } = await fetched(
        exchange.path,
        exchange.body
          ? { method: "POST", headers: { ...bearer(), "Content-Type": "application/json" }, body: JSON.stringify(exchange.body) }
          : { headers: bearer() },
      );
      const before = link.box;
      link.box = answer(link.box, exchange.id, status, body, Date.now());
      if (status < 500) {
        reached();
      }
      if (exchange.body || link.box.queue !== before.queue || link.box.away !== before.away || link.box.last !== before.last) {
        await save();
      }
      if (link.box.access === "in" && !link.day) {
        await readDay();
      }
      next = performance.now() + (unsent(link.box).length && status === 200 ? 0 : POLL);
    } catch (lost) {
      link.box = fail(link.box, exchange.id);
      link.failing++;
      next = performance.now() + Math.min(POLL * link.failing, 10000);
    } finally {
      busy = false;
    }
    changed();
    if (unsent(link.box).length && !link.failing) {
      soon();
    }
  };

  const soon = () => setTimeout(turn, 0);

  link.say = (act) => {
    link.box = give(link.box, act, Date.now());
    save();
    changed();
  };
  link.putAway = (number) => {
    link.box = putAway(link.box, number);
    save();
    changed();
  };
  link.retry = () => {
    next = 0;
    soon();
  };
  link.scan = async (token) => {
    try {
      await hello(token);
    } catch (lost) {
      link.failing++;
      link.token = token;
      return;
    }
    try {
      await readDay();
    } catch (lost) {
      link.failing++; // the code is used by now: what is missing comes with the next exchange
    }
    link.retry();
  };
  // With signal: the laptop was heard lately and the last exchange did not fail.
  // By both clocks: one may be set, the other may stand while the phone sleeps.
  const lately = (now, then) => Math.abs(now - then) < POLL * 3 + 2000;
  link.signal = () =>
    link.failing === 0 && link.heard !== null && lately(Date.now(), link.heard.wall) && lately(performance.now(), link.heard.still);
  link.acts = () => unsent(link.box).map((each) => each.act);
  link.unsent = () => unsent(link.box);
  link.unsentAndKept = () => unsentAndKept(link.box);
  link.offset = () => offsetOf(link.box);

  const token = location.hash.slice(1);
  if (token) {
    // Gone from the address before anybody can read it off.
    history.replaceState(null, "", location.pathname);
    // The page stands before the laptop has answered, and says that it waits.
    link.asking = true;
    link.scan(token).then(() => {
      link.asking = false;
      changed();
    });
  }
  setInterval(() => {
    if (link.token) {
      const again = link.token;
      link.token = null;
      link.scan(again);
    }
    turn();
    changed();
  }, 500);
  document.addEventListener("visibilitychange", link.retry);
  addEventListener("online", link.retry);
  link.retry();
  return link;
};
