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
