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

// Opens the store for a role. Of two tabs of one role on one phone the later one holds it: the
// other may write no more, or both would give the same number twice.
export const openKept = async (role) => {
  const holder = newId();
  const opening = indexedDB.open(NAME, 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore(STORE);
  const base = await asked(opening);
  const kept = { taken: false };
  kept.read = (key) => asked(base.transaction(STORE).objectStore(STORE).get(role + "/" + key));
  // Done only once the phone's disk has it, and of two writings the later one last.
  kept.write = (entries, taking) =>
    new Promise((done, failed) => {
      const writing = base.transaction(STORE, "readwrite", { durability: "strict" });
      const store = writing.objectStore(STORE);
      writing.oncomplete = () => done();
      writing.onabort = () => failed(writing.error || new Error("taken"));
      writing.onerror = () => failed(writing.error);
      const holding = store.get(role + "/holder");
      holding.onsuccess = () => {
        if (!taking && holding.result !== holder) {
          kept.taken = true;
          writing.abort();
          return;
        }
        for (const [key, value] of Object.entries(entries)) {
          store.put(value, role + "/" + key);
        }
      };
    });
  await kept.write({ holder }, true);
  return kept;
};

// 32 hexadecimal digits that nobody else has.
export const newId = () =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
