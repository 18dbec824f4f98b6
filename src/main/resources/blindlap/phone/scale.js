// A line scale: a line with end words, no numbers and no handle until it is touched.

import { el } from "./dom.js";

const STEP = 2;

// `given` is told a value from 0 to 100 with one decimal, as text, when the finger leaves or a key
// was pressed; `words` says a step from 0 to 4, or -1 for not marked.
export const lineScale = ({ id, name, low, high, value, words, given }) => {
  let now = value === undefined ? null : Number(value);
  let down = false;
  let timer = 0;
  const mark = el("div", { class: "mark", hidden: now === null });
  const line = el("div", { class: "line" }, mark);
  const made = el("div", {
    class: "scale", id, role: "slider", tabindex: "0", "aria-label": name, "aria-valuemin": "0", "aria-valuemax": "100",
  }, line, el("p", { class: "ends", "aria-hidden": "true" }, el("span", {}, low), el("span", {}, high)));
  const show = () => {
    mark.hidden = now === null;
    if (now !== null) {
      mark.style.left = now + "%";
    }
    const step = now === null ? -1 : Math.min(4, Math.floor(now / 20));
    made.setAttribute("aria-valuetext", words(step));
    made.setAttribute("aria-valuenow", now === null ? "50" : String(Math.round(now)));
  };
  const to = (x) => {
    const box = line.getBoundingClientRect();
    now = Math.round(Math.max(0, Math.min(1, (x - box.left) / box.width)) * 1000) / 10;
    show();
  };
  const leave = () => {
    clearTimeout(timer);
    if (now !== null) {
      given(String(now));
    }
  };
  made.addEventListener("pointerdown", (event) => {
    down = true;
    made.setPointerCapture(event.pointerId);
    to(event.clientX);
  });
  made.addEventListener("pointermove", (event) => {
    if (down) {
      to(event.clientX);
    }
  });
  made.addEventListener("pointerup", () => {
    if (down) {
      down = false;
      leave();
    }
  });
  made.addEventListener("pointercancel", () => {
    down = false;
    now = value === undefined ? null : Number(value);
    show();
  });
  made.addEventListener("keydown", (event) => {
    const right = event.key === "ArrowRight" || event.key === "ArrowUp";
    const left = event.key === "ArrowLeft" || event.key === "ArrowDown";
    if (!right && !left && event.key !== "Home" && event.key !== "End") {
      return;
    }
    event.preventDefault();
    if (event.key === "Home" || event.key === "End") {
      now = event.key === "Home" ? 0 : 100;
    } else {
      // The first arrow puts the handle at that end.
      now = now === null ? (right ? 100 : 0) : Math.max(0, Math.min(100, now + (right ? STEP : -STEP)));
    }
    show();
    clearTimeout(timer);
    timer = setTimeout(leave, 700);
  });
  made.addEventListener("blur", () => {
    if (timer) {
      timer = 0;
      leave();
    }
  });
  show();
  return made;
};
