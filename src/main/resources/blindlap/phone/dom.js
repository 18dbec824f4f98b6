// Makes elements. Words of people go in as text alone, never as marks.

export const el = (name, attributes, ...children) => {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes || {})) {
    if (value === false || value === null || value === undefined) {
      continue;
    }
    if (key.startsWith("on")) {
      made.addEventListener(key.slice(2), value);
    } else if (key === "class") {
      made.className = value;
    } else {
      made.setAttribute(key, value === true ? "" : value);
    }
  }
  made.append(...children.filter((child) => child !== null && child !== undefined && child !== false));
  return made;
};

export const button = (words, press, kind, attributes) =>
  el("button", { type: "button", class: kind || "", onclick: press, ...(attributes || {}) }, words);

// A press that must last: what it does cannot be meant by a slip.
export const holdButton = (words, done, tooShort, letGo) => {
  let since = 0;
  const made = el("button", { type: "button", class: "hold", id: "hold" }, words);
  const down = (event) => {
    event.preventDefault();
    since = performance.now();
    made.classList.add("down");
  };
  const up = () => {
    if (!since) {
      return;
    }
    const held = performance.now() - since;
    since = 0;
    made.classList.remove("down");
    if (held >= 900) {
      done();
    } else {
      tooShort();
    }
  };
  made.addEventListener("pointerdown", down);
  made.addEventListener("pointerup", up);
  made.addEventListener("pointercancel", () => {
    since = 0;
    made.classList.remove("down");
  });
  made.addEventListener("contextmenu", (event) => event.preventDefault());
  made.addEventListener("keydown", (event) => {
    if ((event.key === "Enter" || event.key === " ") && !event.repeat) {
      down(event);
    }
  });
  made.addEventListener("keyup", (event) => {
    if (event.key === "Enter" || event.key === " ") {
      up();
    }
  });
  setTimeoutWords(made, words, letGo, () => since);
  return made;
};

const setTimeoutWords = (made, words, letGo, since) => {
  const look = () => {
    if (!made.isConnected) {
      return;
    }
    const now = since() && performance.now() - since() >= 900 ? letGo : words;
    if (made.textContent !== now) {
      made.textContent = now;
    }
    setTimeout(look, 150);
  };
  setTimeout(look, 150);
};

export const two = (number) => String(number).padStart(2, "0");

export const clock = (milliseconds) => {
  const at = new Date(milliseconds);
  return two(at.getHours()) + ":" + two(at.getMinutes()) + ":" + two(at.getSeconds());
};

export const runningTime = (milliseconds) => {
  const seconds = Math.max(0, Math.floor(milliseconds / 1000));
  return Math.floor(seconds / 60) + ":" + two(seconds % 60);
};
