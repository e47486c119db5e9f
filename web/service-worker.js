// Keeps the page so that it starts without a network. Version and resources are filled in when the site is made.
const prefix = "ullage-shell-", cacheName = prefix + "{{.Version}}", resources = {{.ResourcesToCache}};
self.addEventListener("install", e => e.waitUntil((async () => {          // all or nothing
  await (await caches.open(cacheName)).addAll(resources.map(u => new Request(u, {cache: "reload"})));
})()));
self.addEventListener("message", e => { if (e.data === "skip-waiting") self.skipWaiting(); });
self.addEventListener("activate", e => e.waitUntil((async () => {
  for (const k of await caches.keys()) if (k.startsWith(prefix) && k !== cacheName) await caches.delete(k);
  await self.clients.claim();
})()));
self.addEventListener("fetch", e => {
  const r = e.request;
  if (r.method !== "GET" || new URL(r.url).origin !== self.location.origin) return;
  e.respondWith((async () => (await (await caches.open(cacheName)).match(r.mode === "navigate" ? "/" : r)) || fetch(r))());
});
