// A watch on a phone: two clocks at both ends, as on the laptop (TimeRecord). The wall clock outlives
// a reload but may be set; the monotonic one cannot be set, and its start is lost with the page. What
// was lost is sent as "0", so that the time is doubtful and never silently wrong. No clock is read here.

// Starts: `wall` and `mono` in milliseconds.
export const started = (wall, mono) => ({ wall, mono, lost: false });

// Takes up a watch that ran before the page was loaded, or was started elsewhere.
export const takenUp = (wall) => ({ wall, mono: 0, lost: true });

// What the watch took, as it is sent.
export const stopped = (watch, wall, mono) => ({
  started: String(watch.wall),
  stopped: String(wall),
  elapsed_ms: watch.lost ? "0" : (mono - watch.mono).toFixed(3),
});

// Whole seconds that it runs, for the starter's eyes while it does.
export const wholeSeconds = (watch, wall, mono) =>
  Math.max(0, Math.floor((watch.lost ? wall - watch.wall : mono - watch.mono) / 1000));

// How far the two clocks may lie apart, in milliseconds (TimeRecord.AGREEMENT).
const AGREEMENT = 200;

// True of what counts for nothing until a time is typed.
export const doubtful = (said) =>
  Math.abs(Number(said.stopped) - Number(said.started) - Number(said.elapsed_ms)) > AGREEMENT;

// Seconds of a typed time, such as 93.1 or 1:33.1, as text; null if it is none.
export const typedTime = (typed) => {
  const plain = typed.trim().replace(",", ".");
  const parts = /^(?:(\d{1,3}):)?(\d{1,5}(?:\.\d{1,3})?)$/.exec(plain);
  if (!parts || (parts[1] !== undefined && Number(parts[2]) >= 60)) {
    return null;
  }
  const seconds = Number(parts[1] || 0) * 60 + Number(parts[2]);
  return seconds > 0 ? String(Math.round(seconds * 1000) / 1000) : null;
};
