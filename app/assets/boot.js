// Starts the app, keeps a copy of it for use without signal, and offers new versions. Where the app cannot start, or stops,
// this says what happened and gets what is kept out of the browser's stores by itself: nothing below needs WebAssembly.
// It stands in the page itself, so that no part of it can be missing or be another one's.

const here = (file) => new URL(file, document.baseURI).href;
const root = document.documentElement;
const notice = document.getElementById("notice");
const folder = location.pathname.slice(0, location.pathname.lastIndexOf("/") + 1);
const prefix = "battenbook " + folder + " ";
const [glue, wasm] = [here("./{{app_js}}"), here("./{{app_wasm}}")];
const wasm_integrity = "{{app_wasm_sri}}";
let begun = false;
let ended = false;

const reload = () => location.reload();

function make(tag, text, more) {
  return Object.assign(document.createElement(tag), { textContent: text }, more);
}

function button([label, action]) {
  const made = make("button", label, { type: "button" });
  made.addEventListener("click", action);
  return made;
}

function say(text, ...buttons) {
  notice.replaceChildren(make("p", text), ...buttons.map(button));
  notice.classList.add("notice-shown");
}

function hide() {
  notice.classList.remove("notice-shown");
  notice.replaceChildren();
}

// A store that the browser withholds, or that is full, must not stop what is said here.
function quietly(action) {
  try {
    return action();
  } catch {
    return undefined;
  }
}

// The page of its own that stands in place of the app.
function show(state, title, words, ...rest) {
  root.dataset.app = state;
  const heading = make("h1", title, { tabIndex: -1 });
  const main = make("main", "", { id: "stopped" });
  main.append(heading, ...words.map((line) => make("p", line)), ...rest);
  document.body.replaceChildren(main, notice);
  document.title = title + " · Battenbook";
  heading.focus();
  return main;
}

function row(...buttons) {
  const line = make("p", "", { className: "links" });
  line.append(...buttons.map(button));
  return line;
}

// --- What is kept, read without the app ---

// The journal in the browser's database: what stands in it under each key, and what had no room elsewhere.
async function journal() {
  const found = { copies: [], unkept: [] };
  const name = prefix.trimEnd();
  const all = await indexedDB.databases?.().catch(() => undefined);
  if (all && !all.some((one) => one.name === name)) return found;
  return new Promise((resolve) => {
    setTimeout(() => resolve(found), 3000);
    const request = indexedDB.open(name);
    // There is none: it is not made here.
    request.onupgradeneeded = () => request.transaction.abort();
    request.onerror = () => resolve(found);
    request.onsuccess = () => {
      const database = request.result;
      const transaction = database.transaction(["copies", "unkept"]);
      transaction.oncomplete = () => resolve(found);
      transaction.onabort = () => resolve(found);
      for (const name of ["copies", "unkept"]) {
        transaction.objectStore(name).openCursor().onsuccess = ({ target }) => {
          if (!target.result) return;
          found[name].push([target.result.key, target.result.value]);
          target.result.continue();
        };
      }
      database.onversionchange = () => database.close();
    };
  });
}

// Every project that is not in the bin: of all its copies the one that was saved last and can be read.
async function kept() {
  const projects = new Map();
  const take = (id, whole, also) => {
    if (typeof whole !== "string") return;
    const line = whole.indexOf("\n");
    const fields = whole.slice(0, line).split(" ");
    const project = projects.get(id) ?? { id, changed: -1 };
    projects.set(id, project);
    for (const text of [whole.slice(line + 1), whole]) {
      const document = quietly(() => JSON.parse(text));
      if (!document || typeof document !== "object") continue;
      const changed = Number(fields[2]) || 0;
      if (changed > project.changed) Object.assign(project, { text, changed, name: String(document.name || "without a name"), also });
      return;
    }
    project.damaged = whole;
  };
  const gather = (entries) => {
    const gone = new Set();
    for (const [key, text] of entries) {
      const [kind, id] = [key.split(" ", 1)[0], key.slice(key.indexOf(" ") + 1)];
      if (kind === "a" || kind === "b") take(id, text);
      if (kind === "bin" && text != null) gone.add(id);
    }
    return gone;
  };
  const local = quietly(() =>
    Object.keys(localStorage).filter((key) => key.startsWith(prefix)).map((key) => [key.slice(prefix.length), localStorage.getItem(key)]));
  const { copies, unkept } = await journal().catch(() => ({ copies: [], unkept: [] }));
  const bins = gather(local ?? []);
  const there = new Set(projects.keys());
  const others = gather(copies);
  for (const id of others) if (!there.has(id)) bins.add(id);
  for (const [id, whole] of unkept) take(id, whole, true);
  for (const id of bins) projects.delete(id);
  return { works: local !== undefined || projects.size > 0, all: [...projects.values()].sort((a, b) => b.changed - a.changed) };
}

function download(name, text) {
  const link = make("a", "", { href: URL.createObjectURL(new Blob([text], { type: "application/json" })), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 30000);
}

function save(project) {
  const safe = (project.name ?? project.id).replace(/[^\p{L}\p{N}]+/gu, "-").slice(0, 60);
  download("battenbook-" + safe + ".json", project.text ?? project.damaged);
}

function save_all(all) {
  const whole = all.filter((one) => one.text).map((one) => one.text);
  download("battenbook-all.json", '{"battenbook_collection": 1, "projects": [\n' + whole.join(",\n") + "\n]}\n");
  for (const one of all) if (!one.text) save(one);
}

// Says what is kept, and only that; gives it out as files.
async function add_kept(main) {
  const { works, all } = await kept();
  if (!works) return main.append(make("p", "This browser keeps nothing for this page, so what was typed is gone."));
  if (!all.length) return main.append(make("p", "No project is kept on this device."));
  const list = make("ul", "");
  for (const one of all) {
    const item = make("li", (one.name ?? one.id) + ": " + (one.text
      ? "saved " + new Date(one.changed).toLocaleString() + (one.also ? ", outside the full store" : "")
      : "cannot be read; its text is kept") + " ");
    item.append(button(["Save to a file", () => save(one)]));
    list.append(item);
  }
  main.append(make("h2", "Kept on this device"), list, make("p", "What was typed after these times is not kept."),
    row(["Save every project to a file", () => save_all(all)]));
}

const to_start = () => {
  location.hash = "#/";
  reload();
};

// --- When the app stops ---

// Pages of a project that were begun and not shown yet, in this tab; and those that stopped the app.
const OPENING = "battenbook opening";
const STOPS = prefix + "stops";
const of_project = (hash) => /^#\/p\/./.test(hash);
const stops = () => quietly(() => JSON.parse(localStorage.getItem(STOPS))) ?? {};

function note_stop(hash, count) {
  quietly(() => {
    const all = stops();
    if (!count && !(hash in all)) return;
    if (count) all[hash] = count;
    else delete all[hash];
    if (Object.keys(all).length) localStorage.setItem(STOPS, JSON.stringify(all));
    else localStorage.removeItem(STOPS);
  });
}

const opening = (hash) => quietly(() => hash === undefined
  ? sessionStorage.getItem(OPENING)
  : hash ? sessionStorage.setItem(OPENING, hash) : sessionStorage.removeItem(OPENING));

// Notes that a page is begun; once it is painted, that it was shown.
function watch_opening() {
  const hash = location.hash;
  if (!of_project(hash)) return opening("");
  opening(hash);
  const painted = () => requestAnimationFrame(() => setTimeout(() => {
    if (ended || location.hash !== hash) return;
    const is_drawn = document.getElementById("app")?.firstElementChild;
    if ("working" in root.dataset || root.dataset.app !== "running" || !is_drawn) return painted();
    opening("");
    note_stop(hash, 0);
  }));
  painted();
}

const has_stopped = (hash) => of_project(hash) && hash in stops();

// What stops the app each time it is opened is not opened by itself a second time.
async function ask_before_opening() {
  ended = true;
  const hash = location.hash;
  const id = decodeURIComponent(hash.split("/")[2].split("?")[0]);
  const main = show("held", "This page stopped Battenbook the last time it was opened", [
    "It has not been opened again. Save the project to a file first; then you can try.",
  ]);
  const this_one = (await kept()).all.find((one) => one.id === id);
  const save_it = this_one ? [["Save this project to a file", () => save(this_one)]] : [];
  main.append(row(...save_it, ["Open it all the same", () => {
    ended = false;
    const app = make("div", "", { id: "app" });
    document.body.replaceChildren(app, notice);
    run(true);
  }], ["All projects", () => {
    opening("");
    to_start();
  }]));
  document.getElementById("opening")?.remove();
  await add_kept(main);
}

async function stop(error) {
  ended = true;
  console.error(error);
  const hash = location.hash;
  const during = opening() === hash && of_project(hash);
  if (during) note_stop(hash, (stops()[hash] ?? 0) + 1);
  opening("");
  hide();
  const main = show("failed", "Battenbook stopped", [
    "Something went wrong in the program, so it was ended. (" + (error?.message ?? error) + ")",
  ], row(["Reload", reload], ["All projects", to_start]));
  await add_kept(main);
}

// An error that nobody caught and that came through the app leaves it half done: it must not go on.
// A browser that shortens what an error came through would hide that it was the app.
Error.stackTraceLimit = 100;
const OURS = /wasm-function|wasm:\/\/|\.wasm|\/app-[0-9a-f]{16}\./;

function watch_faults() {
  const seen = (error, file) => {
    if (ended || !begun || !error) return;
    const is_over = /call stack|recursion/i.test(error.message);
    if (is_over || error instanceof WebAssembly.RuntimeError || OURS.test(file + error.stack)) stop(error);
  };
  addEventListener("error", (event) => seen(event.error, event.filename));
  addEventListener("unhandledrejection", ({ reason }) => {
    // A browser that refuses something answers so too, and that ends nothing.
    if (!(reason instanceof DOMException)) seen(reason, "");
  });
  // What has ended hears of nothing any more, lest it save what is half done.
  for (const kind of ["pagehide", "beforeunload", "hashchange", "popstate", "storage", "keydown", "visibilitychange"]) {
    addEventListener(kind, (event) => {
      if (kind === "pagehide" && !ended) opening("");
      if (kind === "hashchange" && (ended || has_stopped(location.hash))) {
        ended = true;
        reload();
      }
      if (ended) event.stopImmediatePropagation();
      else if (kind === "hashchange") watch_opening();
    }, true);
  }
}

// --- Starting ---

const MENDED = "battenbook mended";

async function run(all_the_same) {
  // A page that was begun and never shown hung: one that is left in good order is not noted any more. Within one document
  // the note says nothing, since an address may be told twice.
  const hung = of_project(location.hash) && opening() === location.hash;
  if (!all_the_same && (hung || has_stopped(location.hash))) return ask_before_opening();
  try {
    if (typeof WebAssembly !== "object") throw new Error("this browser has no WebAssembly: update it or use another one");
    // Whatever comes instead of the module is refused here; the scripts are checked by the page.
    const module = fetch(wasm, { integrity: wasm_integrity, credentials: "same-origin" });
    module.catch(() => {});
    const app = await import(glue);
    begun = true;
    watch_opening();
    await app.default({ module_or_path: module });
    if (!ended) root.dataset.app = "running";
    quietly(() => sessionStorage.removeItem(MENDED));
  } catch (error) {
    if (!ended) await cannot_start(error);
  }
  document.getElementById("opening")?.remove();
}

// Fetches every part anew, past the browser's caches; says what is wrong with them, or nothing.
async function fetch_again() {
  const parts = [...document.querySelectorAll("link[integrity]")].map((link) => [link.href, link.integrity]);
  parts.push([wasm, wasm_integrity], [here("./"), ""]);
  const wrong = await Promise.all(parts.map(async ([address, integrity]) => {
    const name = address.slice(address.lastIndexOf("/") + 1) || "the page";
    const get = (integrity) => fetch(address, { cache: "reload", integrity, credentials: "same-origin" });
    try {
      const response = await get(integrity);
      await response.arrayBuffer();
      return response.ok ? "" : name + ": the server answered " + response.status;
    } catch {
      try {
        const response = await get("");
        if (!response.ok) return name + ": the server answered " + response.status;
        const type = response.headers.get("Content-Type") ?? "";
        return name + (type.includes("html") && !name.endsWith("html") ? ": a page came in its place" : ": it came cut short or changed");
      } catch {
        return name + ": nothing came; there is no signal, or the server is away";
      }
    }
  }));
  return wrong.filter(Boolean).join("; ");
}

// The copy for use without signal goes too, but only where everything was fetched from the server just now.
async function forget_copy() {
  const own = "battenbook:" + folder + ":";
  for (const key of (await globalThis.caches?.keys()) ?? []) if (key.startsWith(own)) await caches.delete(key);
  await (await navigator.serviceWorker?.getRegistration(here("./")))?.unregister();
}

async function cannot_start(error) {
  console.error(error);
  ended = true;
  let wrong;
  // By itself first: a broken copy in a cache, or a version that was just being put up, is mended so. Where every part is
  // whole and it has not helped, that is said.
  if (quietly(() => sessionStorage.getItem(MENDED)) === null) {
    wrong = await fetch_again();
    if (!wrong && quietly(() => (sessionStorage.setItem(MENDED, "1"), true))) {
      await forget_copy().catch(() => {});
      return reload();
    }
  }
  quietly(() => sessionStorage.removeItem(MENDED));
  const why = make("p", wrong || error.message, { role: "alert" });
  const main = show("failed", "Battenbook could not start", [
    "A part of the program is missing or broken. Fetch all of it again; if that does not help, update this browser or use another one.",
  ], why, row(["Fetch it all again", async () => {
    why.textContent = "Fetching…";
    const wrong = await fetch_again();
    why.textContent = wrong || "All is here.";
    if (wrong) return;
    await forget_copy().catch(() => {});
    reload();
  }], ["Reload", reload]));
  await add_kept(main);
}

async function keep_for_offline() {
  const workers = navigator.serviceWorker;
  if (!workers) return;
  let controlled = Boolean(workers.controller);
  let asked = false;
  let reloading = false;
  workers.addEventListener("controllerchange", () => {
    if ((controlled || asked) && !reloading) {
      reloading = true;
      reload();
    }
    controlled = true;
  });
  try {
    const registration = await workers.register(here("./sw.js"), { scope: here("./"), updateViaCache: "none" });
    const offer = () => {
      if (!workers.controller || !registration.waiting) return;
      say(
        "A new version is ready.",
        ["Use it now", () => {
          asked = true;
          if (registration.waiting) registration.waiting.postMessage("SKIP_WAITING");
          else reload();
        }],
        ["Later", hide],
      );
    };
    const follow = (worker) => worker?.addEventListener("statechange", () => {
      if (worker.state === "installed") offer();
    });
    offer();
    follow(registration.installing);
    registration.addEventListener("updatefound", () => follow(registration.installing));
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible") registration.update().catch(() => {});
    });
    await workers.ready;
    root.dataset.offline = "ready";
  } catch (error) {
    // Blocked by the person or the host: the app still works while there is signal.
    console.warn("No copy for offline use:", error);
  }
}

// --- Framing ---

// Whether another site shows this page in a frame of its own, where it could have people tap what they do not see.
function is_framed() {
  try {
    for (let frame = window; frame !== top; frame = frame.parent) {
      if (frame.parent.location.origin !== location.origin) return true;
    }
    return false;
  } catch {
    return true;
  }
}

if (is_framed()) {
  show("framed", "Battenbook inside another page", ["Another site shows this page inside its own. Nothing is opened or kept here."]);
  document.querySelector("main").append(make("a", "Open Battenbook on its own", { href: location.href, target: "_blank", rel: "noopener" }));
} else {
  watch_faults();
  run();
  keep_for_offline();
}
