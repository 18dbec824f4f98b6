// The words of both pages: the same bundles as the window's, read once from the laptop.

let all = {};
let ofDay = {};

// Words that only the day at hand asks for, served with it.
export const wordsOfDay = (words) => { ofDay = words || {}; };

export const readWords = async () => {
  const kept = await fetch("/words.json", { credentials: "omit" });
  all = await kept.json();
};

// A sentence with its details in the places {0}, {1} …; "{0} [0|lap|laps]" is "1 lap" or "2 laps".
export const say = (key, ...details) => {
  const known = all[key] === undefined ? ofDay[key] : all[key];
  const text = known === undefined ? key : known;
  return text
    .replace(/\[(\d)\|([^|\]]*)\|([^\]]*)\]/g, (whole, at, one, many) => (String(details[at]) === "1" ? one : many))
    .replace(/\{(\d)\}/g, (whole, at) => String(details[at]));
};

export const has = (key) => all[key] !== undefined;
