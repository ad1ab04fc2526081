// Starts the app, keeps a copy of it for use without signal, and offers new versions.
// Plain script on purpose: when the app itself cannot start, this still runs, says so, and can still fetch the next version.

const here = (file) => new URL(file, import.meta.url);
const root = document.documentElement;
const notice = document.getElementById("notice");

function say(text, ...buttons) {
  const line = document.createElement("p");
  line.textContent = text;
  notice.replaceChildren(line);
  for (const [label, action] of buttons) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = label;
    button.addEventListener("click", action);
    notice.append(button);
  }
  notice.classList.add("notice-shown");
}

function hide() {
  notice.classList.remove("notice-shown");
  notice.replaceChildren();
}

const reload = () => location.reload();

async function start() {
  try {
    if (typeof WebAssembly !== "object") throw new Error("this browser has no WebAssembly");
    const app = await import("./{{app_js}}");
    await app.default({ module_or_path: here("./{{app_wasm}}") });
    root.dataset.app = "running";
  } catch (error) {
    console.error(error);
    root.dataset.app = "failed";
    say(
      "Battenbook could not start. What you saved is still on this device. " +
        "Reload to try again; if that does not help, update this browser or use another one. (" + error.message + ")",
      ["Reload", reload],
    );
  }
  document.getElementById("opening")?.remove();
}

// A fault inside the running app: everything typed has been saved already, so starting afresh loses nothing.
function watch_faults() {
  const seen = (error) => {
    if (!(error instanceof WebAssembly.RuntimeError)) return;
    root.dataset.app = "failed";
    say("Something went wrong in Battenbook. What you typed is kept. Reload to go on.", ["Reload", reload]);
  };
  addEventListener("error", (event) => seen(event.error));
  addEventListener("unhandledrejection", (event) => seen(event.reason));
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
    const registration = await workers.register(here("./sw.js"), { scope: here("./").href, updateViaCache: "none" });
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

watch_faults();
start();
keep_for_offline();
