/**
 * The floor's service worker, as text. It caches the floor page and its parts and nothing else. No answer of the API enters
 * a cache, so tokens and cards are only in the page's own storage.
 */
/** The worker's script for one build. Another build gives another script, which the browser then installs. */
export const floorWorker = (build: string): string => `// The floor page, kept on the device. Build ${build}.
const CACHE = "springline-floor-" + ${JSON.stringify(build)};
${SCRIPT}`;

const SCRIPT = `const PAGE = "/floor";
const NETWORK_MS = 2000;

self.addEventListener("install", (event) => {
  event.waitUntil(keepPage().then(() => self.skipWaiting()));
});
self.addEventListener("activate", (event) => {
  event.waitUntil(dropOthers().then(() => self.clients.claim()));
});
self.addEventListener("message", (event) => {
  const parts = event.data && event.data.keep;
  if (!Array.isArray(parts)) return;
  const answer = (word) => event.ports[0] && event.ports[0].postMessage(word);
  event.waitUntil(keepParts(parts.filter(isPart)).then(() => answer("kept"), () => answer("failed")));
});
self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== self.location.origin) return;
  if (event.request.mode === "navigate" && url.pathname.replace(/\\/$/, "") === PAGE) event.respondWith(page());
  else if (isPart(url.pathname + url.search)) event.respondWith(part(event.request));
});

const isPart = (path) => /^\\/floor\\/parts\\/|^\\/floor\\/manifest\\.webmanifest$|^\\/icon\\.svg/.test(path);

/** Parts are named by their content, so a cached one is never stale. */
async function part(request) {
  const cache = await caches.open(CACHE);
  const held = await cache.match(request);
  if (held) return held;
  const fresh = await fetch(request);
  if (fresh.ok) await cache.put(request, fresh.clone());
  return fresh;
}

/** The page from the network if it answers in time, otherwise the cached one. */
async function page() {
  const cache = await caches.open(CACHE);
  const network = keepPage();
  const late = new Promise((resolve) => setTimeout(resolve, NETWORK_MS));
  const fresh = await Promise.race([network.catch(() => undefined), late]);
  if (fresh) return fresh;
  return (await cache.match(PAGE)) || network;
}

/** Fetches the page, and caches it only once all its parts are cached, so that a cached page always works. */
async function keepPage() {
  const response = await fetch(PAGE, { cache: "no-store", credentials: "same-origin" });
  if (!response.ok || response.redirected) return response;
  const cache = await caches.open(CACHE);
  const html = await response.clone().text();
  await keepParts(partsOf(html));
  await cache.put(PAGE, response.clone());
  return response;
}

async function keepParts(paths) {
  const cache = await caches.open(CACHE);
  await Promise.all([...new Set(paths)].map(async (path) => {
    if (await cache.match(path)) return;
    const response = await fetch(path);
    if (!response.ok) throw new Error("not kept: " + path);
    await cache.put(path, response.clone());
    if (/\\.css(\\?|$)/.test(path)) await keepParts(typeOf(await response.text(), path));
  }));
}

/** The scripts and styles of a page: in its tags, and in its list of parts to fetch later. */
const partsOf = (html) =>
  [...html.matchAll(/\\/floor\\/parts\\/[\\w-]+\\.(?:js|css)/g)]
    .map((found) => found[0]).concat("/floor/manifest.webmanifest");

/** The fonts of a style sheet for Latin letters: others are fetched when a name needs them. */
const typeOf = (css, path) =>
  [...css.matchAll(/url\\(["']?([^"')]+\\.woff2[^"')]*)["']?\\)/g)]
    .map((found) => new URL(found[1], new URL(path, self.location.origin)))
    .filter((url) => !/cyrillic|greek|vietnamese/.test(url.pathname))
    .map((url) => url.pathname + url.search);

async function dropOthers() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith("springline-floor-") && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}
`;
