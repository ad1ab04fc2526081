// Keeps one whole version of the app for use without signal: all files of a version, or none of them.
const VERSION = "{{version}}";
const FILES = {{files}};
// Words of other languages: fetched when chosen, and kept from then on.
const LATER = {{later}};
const ROOT = new URL("./", self.location).href;
// Other apps may live on the same origin and share its caches, so the names carry the path.
const PREFIX = "battenbook:" + new URL(ROOT).pathname + ":";
const NAME = PREFIX + VERSION;
const address = (file) => new URL(file, ROOT).href;
const KEPT = new Set(FILES.map(([file]) => address(file)));
const ON_DEMAND = new Map(LATER.map(([file, integrity]) => [address(file), [file, integrity]]));
const without_hash = (name) => name.replace(/-[0-9a-f]{16}\./, ".");

// A hashed name always means the same bytes, so the copy that the page has just loaded will do; anything else comes fresh.
// Whatever comes is checked against its hash.
async function fetched(file, integrity) {
  const get = async (cache) => {
    const response = await fetch(address(file), { cache, integrity, credentials: "same-origin" });
    if (!response.ok) throw new Error(file + ": " + response.status);
    return response;
  };
  if (/-[0-9a-f]{16}\./.test(file)) {
    try {
      return await get("default");
    } catch {
      // A damaged copy in the browser's own cache: ask the server.
    }
  }
  return get("reload");
}

async function keep(cache, file, integrity) {
  const old = await caches.match(address(file));
  if (old?.headers.get("X-Integrity") === integrity) return cache.put(address(file), old);
  const response = await fetched(file, integrity);
  const headers = { "Content-Type": response.headers.get("Content-Type"), "X-Integrity": integrity };
  await cache.put(address(file), new Response(await response.blob(), { headers }));
}

// A language that the version before has fetched is a part of this one too: it must not be lost without signal.
async function in_use() {
  const names = new Set();
  for (const key of await caches.keys()) {
    if (!key.startsWith(PREFIX)) continue;
    for (const request of await (await caches.open(key)).keys()) names.add(without_hash(request.url));
  }
  return LATER.filter(([file]) => names.has(without_hash(address(file))));
}

async function install() {
  const cache = await caches.open(NAME);
  try {
    const files = [...FILES, ...await in_use()];
    await Promise.all(files.map(([file, integrity]) => keep(cache, file, integrity)));
  } catch (error) {
    await caches.delete(NAME); // the running version and its files stay untouched
    throw error;
  }
}

async function activate() {
  for (const key of await caches.keys()) {
    if (key.startsWith(PREFIX) && key !== NAME) await caches.delete(key);
  }
  await self.clients.claim();
}

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", (event) => {
  if (event.data === "SKIP_WAITING") self.skipWaiting();
});
self.addEventListener("fetch", (event) => {
  const request = event.request;
  const url = new URL(request.url);
  if (request.method !== "GET" || !request.url.startsWith(ROOT)) return;
  const key = request.mode === "navigate" ? ROOT : url.origin + url.pathname;
  const on_demand = ON_DEMAND.get(key);
  if (!KEPT.has(key) && !on_demand) return;
  // Who asks past every cache gets what the server has.
  if (request.mode !== "navigate" && request.cache === "reload") return;
  event.respondWith((async () => {
    const cache = await caches.open(NAME);
    const found = await cache.match(key);
    if (found || !on_demand) return found || fetch(request);
    try {
      await keep(cache, ...on_demand);
      return await cache.match(key);
    } catch {
      // No room to keep it, or no signal: the page gets what there is.
      return fetch(request);
    }
  })());
});
