// What this phone keeps: a small store of its own that outlives the page, the browser and an empty
// battery. A page that cannot keep says so; it never pretends.

const NAME = "blindlap";
const STORE = "kept";

const asked = (request) =>
  new Promise((done, failed) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
    request.onblocked = () => failed(new Error("blocked"));
  });

export const openKept = async () => {
  const opening = indexedDB.open(NAME, 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore(STORE);
  const base = await asked(opening);
  return {
    read: (key) => asked(base.transaction(STORE).objectStore(STORE).get(key)),
    // Done only once the phone has it, and of two writings the later one last.
    write: (entries) =>
      new Promise((done, failed) => {
        const writing = base.transaction(STORE, "readwrite", { durability: "strict" });
        writing.oncomplete = () => done();
        writing.onabort = () => failed(writing.error);
        writing.onerror = () => failed(writing.error);
        for (const [key, value] of Object.entries(entries)) {
          writing.objectStore(STORE).put(value, key);
        }
      }),
  };
};

// 32 hexadecimal digits that nobody else has.
export const newId = () =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
