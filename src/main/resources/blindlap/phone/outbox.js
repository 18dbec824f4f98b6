// What was said on this phone and is not yet in the notebook: numbers, order, what is under way,
// what became of it. Nothing here reads a clock, a store or a network: a state and an event give
// the next state, so that a test can lose, double and delay whatever it likes.
//
// A message gets the next number, is written to this phone, and only then may be sent. One exchange
// is under way at a time; the first message of the queue is sent again until the notebook has said
// what became of it. An answer to an exchange that was given up is not looked at.

// How many exchanges the offset of the clocks is taken from.
const SAMPLES = 8;
// Milliseconds by which two offsets may differ beyond their travel times, before the phone's clock
// counts as set in between.
const STEADY = 100;

// The box as it is after a start, from what was kept; null for a phone that kept nothing.
export const openBox = (kept) => {
  const was = kept || { next: 1, queue: [], away: [], seen: null, last: 0, done: 0, refusals: 0 };
  return {
    next: was.next,
    queue: was.queue,
    away: was.away,
    seen: was.seen,
    last: was.last,
    done: was.done,
    refusals: was.refusals,
    told: was.refusals,
    edition: 0,
    kept: was.next,
    tried: was.next - 1,
    run: "",
    stale: true,
    access: "",
    samples: [],
    under: null,
    exchanges: 0,
  };
};

// What is kept on the phone of a box.
export const toKeep = (box) => ({
  next: box.next,
  queue: box.queue,
  away: box.away,
  seen: box.seen,
  last: box.last,
  done: box.done,
  refusals: box.refusals,
  edition: box.edition,
});

// Something was said: `given` is the phone's clock then.
export const give = (box, act, given) => ({
  ...box,
  next: box.next + 1,
  queue: [...box.queue, { number: box.next, given, knew: versionOf(box), act }],
});

const versionOf = (box) => (box.seen ? box.seen.version : "0");

// The phone has written this copy, made by toKeep.
export const written = (box, copy) =>
  copy.edition === box.edition
    ? { ...box, kept: Math.max(box.kept, copy.next), told: Math.max(box.told, copy.refusals) }
    : box;

// Messages that this phone still keeps, and those of them that it has truly written.
export const unsent = (box) => box.queue;
export const unsentAndKept = (box) => box.queue.filter((each) => each.number < box.kept);

// Laptop's clock less the phone's, from the exchange that travelled least; null before any.
export const offsetOf = (box) => {
  const best = shortest(box.samples);
  return best ? best.offset : null;
};

const shortest = (samples) =>
  samples.reduce((best, each) => (!best || each.took < best.took ? each : best), null);

// The next exchange, if one may begin: [box, {id, path, body}] or [box, null].
// `poll` asks how the day stands even where there is nothing to send.
export const ask = (box, now, poll) => {
  if (box.under) {
    return [box, null];
  }
  const head = box.queue[0];
  // A refusal is written first: once a later message is entered, nothing else tells of it.
  const sends = box.run && !box.stale && head && head.number < box.kept && box.told === box.refusals;
  if (!sends && !poll && box.run && !box.stale) {
    return [box, null];
  }
  const id = box.exchanges + 1;
  const under = { id, number: sends ? head.number : 0, sent: now };
  const body = sends
    ? {
        run: box.run,
        number: String(head.number),
        given: String(head.given),
        sent: String(now),
        offset: String(offsetOf(box)),
        knew: head.knew,
        unsent: String(box.queue.length - 1),
        act: head.act,
      }
    : null;
  const path = sends ? "/send" : "/state?unsent=" + box.queue.length;
  const tried = Math.max(box.tried, under.number);
  return [{ ...box, exchanges: id, under, tried }, { id, path, body }];
};

// An exchange was given up: no answer, or none within its time.
export const fail = (box, id) =>
  box.under && box.under.id === id ? { ...box, under: null } : box;

// What the laptop answered. Anything that is no answer of a laptop counts as none.
export const answer = (box, id, status, body, now) => {
  if (!box.under || box.under.id !== id) {
    return box;
  }
  const under = box.under;
  const free = { ...box, under: null };
  const said = body || {};
  if (status === 200 && under.number === 0 && said.run) {
    return seen({ ...free, access: "in" }, said, under.sent, now);
  }
  if (status === 200 && (said.done || said.refused) && said.state) {
    return decided({ ...free, access: "in" }, under, said, now);
  }
  if (status === 409 && said.why === "run") {
    return { ...free, run: "", stale: true };
  }
  if (status === 409 && said.why === "number" && under.number > 0) {
    return { ...notTaken(free, under.number, ""), stale: true };
  }
  if (status === 401) {
    return { ...free, access: "out" };
  }
  if (status === 403 && said.why === "waiting") {
    return { ...free, access: "waiting" };
  }
  // The laptop cannot take such a message, now or ever: the next one must not wait behind it.
  if (under.number > 0 && (status === 400 || status === 403 || status === 413)) {
    return { ...notTaken(free, under.number, ""), stale: true };
  }
  return free;
};

const decided = (box, under, said, now) => {
  const after = said.refused
    ? notTaken(box, under.number, said.refused)
    : { ...without(box, under.number), done: now };
  return seen(after, said.state, under.sent, now);
};

const without = (box, number) => ({
  ...box,
  queue: box.queue.filter((each) => each.number !== number),
});

// Kept in the list of what was not taken until the person puts it away; an empty sentence where
// the laptop gave none.
const notTaken = (box, number, why) => ({
  ...without(box, number),
  refusals: box.refusals + 1,
  away: [...box.away, ...box.queue.filter((each) => each.number === number).map((m) => ({ ...m, why }))],
});

// The person has read what was not taken.
export const putAway = (box, number) => ({
  ...box,
  away: box.away.filter((each) => each.number !== number),
});

// The day as it stands: what of the queue is entered already goes.
const seen = (box, state, sent, now) => {
  const last = Math.max(box.last, Number(state.last));
  return renumbered(
    {
      ...box,
      seen: state,
      run: state.run,
      stale: false,
      last,
      samples: sampled(box.samples, { offset: Number(state.now) - Math.round((sent + now) / 2), took: now - sent }),
    },
    last,
  );
};

// What is entered goes from the queue. A number that the notebook has and this page never sent since
// its start belonged to another message: the phone had lost its latest writing, and what was said
// since gets new numbers. What was read at the start and is entered was sent before it.
const renumbered = (box, last) => {
  const left = box.queue.filter((each) => each.number > last || each.number > box.tried);
  const next = Math.max(box.next, last + 1);
  if (left.length === 0 || left[0].number > last) {
    return { ...box, queue: left, next };
  }
  const again = left.map((each, i) => ({ ...each, number: last + 1 + i }));
  return {
    ...box,
    queue: again,
    next: last + 1 + again.length,
    edition: box.edition + 1,
    kept: last + 1,
    tried: last,
  };
};

const sampled = (samples, fresh) => {
  if (fresh.took < 0) {
    return []; // the clock was set while the answer was on its way
  }
  const best = shortest(samples);
  const set = best && Math.abs(fresh.offset - best.offset) > (fresh.took + best.took) / 2 + STEADY;
  return (set ? [fresh] : [...samples, fresh]).slice(-SAMPLES);
};
