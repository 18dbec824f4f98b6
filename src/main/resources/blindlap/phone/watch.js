// A watch by two clocks, as the program's own: the wall clock may be set, the counter stops while
// the phone sleeps. Where the two do not agree the time is doubtful, and only a typed one counts.
// Nothing here reads a clock.

// How far the two may lie apart, in milliseconds (TimeRecord.AGREEMENT).
export const AGREEMENT = 200;

// Started at a wall clock and a counter.
export const started = (wall, counter) => ({ wall, counter });

// What the watch says when it is stopped. A watch that was started before this page was loaded has
// no counter any more: nothing but the wall clock is known, and the time is doubtful.
export const stopped = (begun, startedWall, wall, counter) => {
  const elapsed = begun && begun.wall === startedWall ? counter - begun.counter : 0;
  return {
    started: String(startedWall),
    stopped: String(wall),
    elapsed_ms: decimal(elapsed),
    doubtful: Math.abs(wall - startedWall - elapsed) > AGREEMENT,
  };
};

const decimal = (milliseconds) => String(Math.max(0, Math.round(milliseconds * 1000) / 1000));

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
