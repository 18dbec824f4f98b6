// What is asked now: the day as the laptop served it (/day), how it stood when the laptop was last
// heard (/state), and laid over it what was said on this phone since. It says the same as the
// window's page (RideSheet and Day in Java; a test holds the two together), reads no clock and
// changes nothing it is given.

const DAY = ["COMMITTED", "RIDING", "CUT_SHORT"];

// "3.1" of a stint and a lap of it.
export const key = (lap) => lap.stint + "." + lap.lap;
const lapOf = (text) => ({ stint: Number(text.split(".")[0]), lap: Number(text.split(".")[1]) });
const put = (map, name, value) => ({ ...map, [name]: value });
const without = (map, name) => Object.fromEntries(Object.entries(map).filter((each) => each[0] !== name));

// The day's lengths as numbers.
export const shape = (day) => ({
  stints: Number(day.stints),
  per: Number(day.laps.per_stint),
  settling: Number(day.laps.settling),
  warmUp: Number(day.laps.warm_up),
  cap: day.cap === null ? null : Number(day.cap),
  // Laps of a trial, each a stint of one lap; 0 of any other day.
  trial: day.trial ? Number(day.trial.laps) : 0,
});

// The trial of a stint, and the place of its lap in it, both from 1.
export const trialOf = (of, stint) => Math.floor((stint - 1) / of.trial) + 1;
export const placeOf = (of, stint) => ((stint - 1) % of.trial) + 1;

// True of a stint whose trial an event spoiled: nothing more of it is ridden.
const passedOver = (of, now, stint) =>
  of.trial > 0 && Object.keys(now.voids).some((at) => trialOf(of, lapOf(at).stint) === trialOf(of, stint));

// A lap in the place of its number.
export const lapName = (day, lap, say) => {
  const of = shape(day);
  return of.trial ? say("trial.lap.of", placeOf(of, lap.stint), trialOf(of, lap.stint)) : String(numberOf(of, lap));
};

// How the day stands as it was heard.
const heard = (state) => ({
  step: state.step,
  ridden: state.ridden,
  warmUps: Number(state.warm_ups),
  handedOver: state.handed_over.map(Number),
  helper: state.helper_hands_over,
  bikeOut: state.bike_out === null ? null : Number(state.bike_out),
  pastCap: Number(state.past_cap),
  cutAfter: state.cut_after === null ? null : Number(state.cut_after),
  watches: state.watches || {},
  voids: state.voids || {},
  conditions: state.conditions || {},
  covariates: state.covariates || {},
  values: state.values || {},
  notes: state.notes || {},
  guesses: state.guesses || {},
  // The laptop knows of laps of which all that was said is taken back: then none may be opened.
  shut: state.reopenable === null ? state.ridden : [],
  later: [],
});

// The day as it stands with what is not sent yet laid over it.
export const standing = (day, state, acts) =>
  acts.reduce((now, act) => said(shape(day), now, act), heard(state));

const onLap = (now, map, act, name, value) => {
  const at = key(act);
  const of = now[map][at] || {};
  const changed = value === undefined ? without(of, name) : put(of, name, value);
  return { ...now, [map]: put(now[map], at, changed), later: [...now.later, at] };
};

const asRidden = (now, act) => {
  const at = key(act);
  return now.ridden.includes(at) ? now : { ...now, ridden: [...now.ridden, at], step: riding(now) };
};

const riding = (now) => (now.step === "COMMITTED" ? "RIDING" : now.step);

const handedOver = (of, now, act) => {
  const stint = Number(act.stint);
  const whole = stint > 0 && laps(of.per).every((lap) => now.ridden.includes(key({ stint, lap })));
  return {
    ...now,
    step: riding(now),
    handedOver: now.handedOver.includes(stint) ? now.handedOver : [...now.handedOver, stint],
    bikeOut: whole ? now.bikeOut : stint,
  };
};

// A note that stands already is none that was written.
const noted = (now, act, text) =>
  (now.notes[key(act)] || "") === text
    ? now
    : { ...now, notes: put(now.notes, key(act), text), later: [...now.later, key(act)] };

const laps = (many) => Array.from({ length: many }, (none, i) => i + 1);

const guessed = (now, act, guess) => ({
  ...now,
  guesses: guess === null ? without(now.guesses, String(act.stint)) : put(now.guesses, String(act.stint), guess),
});

const guessOf = (given) => ({ setup: given.setup, sureness: given.sureness, cue: given.cue || "" });

const cutShort = (now) => ({ ...now, step: "CUT_SHORT", cutAfter: latestStint(now) });

const covariate = (now, act) => {
  const at = act.name + "@" + act.stint + "." + act.lap;
  const covariates = act.value === null ? without(now.covariates, at) : put(now.covariates, at, act.value);
  return { ...now, covariates };
};

const said = (of, now, act) => {
  switch (act.do) {
    case "plate":
    case "handed-over":
      return handedOver(of, now, act);
    case "warm-up":
      return { ...now, warmUps: now.warmUps + 1, step: riding(now) };
    case "score":
      return onLap(now, "values", act, act.measure, act.value);
    case "score-back":
      return onLap(now, "values", act, act.measure, act.to === null ? undefined : act.to);
    case "note":
      return noted(now, act, act.text);
    case "note-back":
      return noted(now, act, act.to);
    case "guess":
      return guessed(now, act, guessOf(act));
    case "guess-back":
      return guessed(now, act, act.to === null ? null : guessOf(act.to));
    case "covariate":
      return covariate(now, act);
    case "conditions":
      return onLap(now, "conditions", act, act.name, act.words);
    case "watch-start":
    case "watch-run-on":
      return onLap(now, "watches", act, act.measure, { running: act.at, here: true });
    case "watch-reset":
      return onLap(now, "watches", act, act.measure, undefined);
    case "time":
      return onLap(now, "watches", act, act.measure, { stopped: true });
    case "ridden":
      return asRidden(now, act);
    case "void":
      return { ...asRidden(now, act), voids: put(now.voids, key(act), act.event) };
    case "void-back":
      return { ...now, voids: without(now.voids, key(act)) };
    case "past-cap":
      return { ...now, pastCap: now.pastCap + 1 };
    case "not-fit":
      return cutShort(now);
    default:
      return now;
  }
};

export const latestStint = (now) => now.ridden.reduce((most, at) => Math.max(most, lapOf(at).stint), 0);
export const soFar = (now) => now.warmUps + now.ridden.length;
export const warmingUp = (of, now) => now.warmUps < of.warmUp && now.ridden.length === 0;
export const capReached = (of, now) => of.cap !== null && soFar(now) >= of.cap + now.pastCap;

// The first lap that is not ridden; null once all are. Of a void trial none is left.
export const nextLap = (of, now) => {
  const last = now.cutAfter === null ? of.stints : now.cutAfter;
  const left = (lap) => !now.ridden.includes(key(lap)) && !passedOver(of, now, lap.stint);
  const open = laps(last * of.per).find((number) => left(ofDay(of, number)));
  return open === undefined ? null : ofDay(of, open);
};

export const ofDay = (of, number) => ({
  stint: Math.floor((number - 1) / of.per) + 1,
  lap: ((number - 1) % of.per) + 1,
});
export const numberOf = (of, lap) => (lap.stint - 1) * of.per + lap.lap;

// True if a lap of the stint may start: the bike is out for it, or nobody waits for the helper.
export const mayStart = (now, stint) =>
  now.handedOver.includes(stint) && (!now.helper || now.bikeOut === stint);

const underWay = (now, at) => Object.keys(now.watches[at] || {}).length > 0;

// True if a lap of the stint is under way or ridden.
export const begun = (now, stint) =>
  now.ridden.concat(Object.keys(now.watches).filter((at) => underWay(now, at))).some((at) => lapOf(at).stint === stint);

// The lap that was done last, while nothing is said of the one after it; null if there is none.
export const reopenable = (of, now) => {
  if (!DAY.includes(now.step) || now.ridden.length === 0) {
    return null;
  }
  const last = now.ridden.map(lapOf).reduce((most, each) => (numberOf(of, each) > numberOf(of, most) ? each : most));
  const later = (at) => numberOf(of, lapOf(at)) > numberOf(of, last);
  const known = ["watches", "conditions", "values", "notes", "voids"].flatMap((map) =>
    Object.keys(now[map]).filter((at) => Object.keys(now[map][at]).length > 0),
  );
  const free = last.lap > of.settling && !now.shut.includes(key(last));
  return free && !known.concat(now.later).some(later) ? last : null;
};

const none = (stage, now, of) => ({
  stage, lap: null, number: 0, of: 0, code: "", guessAsked: false, values: {}, watches: {}, note: "",
  guess: null, conditions: {}, voided: false, trial: null, done: false, ridden: soFar(now), most: of.cap,
  helper: now.helper, locked: false,
});

// What the rider's page is about. `hand` says what this page alone knows: the lap that was just
// done (while the page still speaks of it) and the one that was opened again, or null.
export const sheet = (day, now, hand) => {
  const of = shape(day);
  if (!DAY.includes(now.step)) {
    return none("OVER", now, of);
  }
  if (hand.again) {
    return onSheet("SCORED", day, of, now, hand.again);
  }
  if (hand.done) {
    return onSheet("DONE", day, of, now, hand.done);
  }
  const next = nextLap(of, now);
  if (next && capReached(of, now)) {
    return onSheet("CAP", day, of, now, next);
  }
  if (warmingUp(of, now)) {
    const stage = now.handedOver.includes(0) ? "WARM_UP" : "HAND_OVER";
    return { ...none(stage, now, of), number: now.warmUps + 1, of: of.warmUp };
  }
  return next ? onSheet(stageOf(of, now, next), day, of, now, next) : none("ALL_RIDDEN", now, of);
};

const stageOf = (of, now, lap) => {
  if (!now.handedOver.includes(lap.stint)) {
    return "HAND_OVER";
  }
  return lap.lap <= of.settling ? "SETTLING" : "SCORED";
};

// In a telling run the rider is asked after a trial's last lap, unless the trial is void.
const asked = (of, now, stint) =>
  of.trial === 0 || (placeOf(of, stint) === of.trial && !passedOver(of, now, stint));

const onSheet = (stage, day, of, now, lap) => {
  const at = key(lap);
  const scored = lap.lap > of.settling;
  return {
    stage,
    lap,
    number: numberOf(of, lap),
    of: of.stints * of.per,
    code: day.codes[lap.stint - 1],
    guessAsked: day.guesses === true && lap.lap === of.per && asked(of, now, lap.stint),
    values: now.values[at] || {},
    watches: scored ? Object.fromEntries(day.timed.map((name) => [name, watchOf(now, at, name)])) : {},
    note: now.notes[at] || "",
    guess: now.guesses[String(lap.stint)] || null,
    conditions: now.conditions[at] || {},
    voided: now.voids[at] !== undefined,
    trial: of.trial === 0 ? null : {
      number: trialOf(of, lap.stint),
      ends: placeOf(of, lap.stint) === of.trial,
      voided: passedOver(of, now, lap.stint),
      answered: now.guesses[String(trialOf(of, lap.stint) * of.trial)] !== undefined,
    },
    done: now.ridden.includes(at),
    ridden: soFar(now),
    most: of.cap,
    helper: now.helper,
    locked:
      stage === "SCORED" && !mayStart(now, lap.stint) && !underWay(now, at) && !now.ridden.includes(at),
  };
};

const watchOf = (now, at, name) => {
  const known = (now.watches[at] || {})[name];
  if (!known) {
    return { state: "READY", at: null, here: false };
  }
  return known.stopped
    ? { state: "STOPPED", at: null, here: false }
    : { state: "RUNNING", at: known.running, here: known.here === true };
};

// Names of the answers that are open on a sheet; "guess.name" and "sure.name" are keys of words.
export const openAnswers = (day, sheetNow) => {
  if (sheetNow.stage !== "SCORED") {
    return [];
  }
  const open = day.questions
    .map((each) => ({ name: each.name }))
    .filter((each) => sheetNow.values[each.name] === undefined);
  const guess = sheetNow.guess;
  if (sheetNow.guessAsked && !guess) {
    return [...open, { word: day.trial ? "trial.answer.name" : "guess.name" }];
  }
  return sheetNow.guessAsked && guess.setup !== null && guess.sureness === null
    ? [...open, { word: "sure.name" }]
    : open;
};

// What is still open when Done is pressed: watches that run, then answers.
export const openAtDone = (day, sheetNow) =>
  sheetNow.stage === "SCORED"
    ? Object.keys(sheetNow.watches)
        .filter((name) => sheetNow.watches[name].state === "RUNNING")
        .map((name) => ({ word: "open.running", of: name }))
        .concat(openAnswers(day, sheetNow))
    : [];

// Covariates of a lap and of its stint, with what was said. `whose` are the roles that a page
// speaks for.
export const covariatesOf = (day, now, lap, whose) =>
  day.covariates
    .filter((each) => whose.includes(each.by) && (!each.per_lap || lap.lap > shape(day).settling))
    .map((each) => {
      const of = each.per_lap ? lap.lap : 0;
      const said = now.covariates[each.name + "@" + lap.stint + "." + of];
      return { ...each, stint: lap.stint, lap: of, said: said === undefined ? "" : said };
    });

// Those asked now: of a stint before its hand-over, of a lap once it is done.
export const covariatesAsked = (day, now, sheetNow, whose) =>
  sheetNow.lap
    ? covariatesOf(day, now, sheetNow.lap, whose).filter(
        (each) => sheetNow.stage === (each.per_lap ? "DONE" : "HAND_OVER"),
      )
    : [];

// The starter's lap: the first that is not ridden, or the one that the starter went on to.
export const starterSheet = (day, now, ahead) => {
  const plain = sheet(day, now, { done: null, again: null });
  const of = shape(day);
  const before = ahead && plain.lap && numberOf(of, ahead) > plain.number;
  return before && DAY.includes(now.step) && plain.stage !== "CAP"
    ? onSheet(stageOf(of, now, ahead), day, of, now, ahead)
    : plain;
};

// The lap after one, if the day has it.
export const after = (day, now, lap) => {
  const of = shape(day);
  const last = now.cutAfter === null ? of.stints : now.cutAfter;
  const from = numberOf(of, lap);
  const left = laps(last * of.per).find((number) => number > from && !passedOver(of, now, ofDay(of, number).stint));
  return left === undefined ? null : ofDay(of, left);
};
