// Makes the app start without signal: all its files are kept when it is installed, and served from there. A new version
// takes over when no page is open any more.
'use strict';
const kVersion = '@VERSION@';
const kFiles = @FILES@;

self.addEventListener('install', (event) => {
    event.waitUntil(caches.open(kVersion).then((cache) => cache.addAll(kFiles)));
    // Where the browser takes our files from the cache by itself, this worker need not start first.
    const ours = () => event.addRoutes({ condition: { urlPattern: new URLPattern({ search: '' }) }, source: { cacheName: kVersion } });
    if (event.addRoutes) event.waitUntil(ours().catch(() => {})); // 'fetch' below does the same
});

self.addEventListener('activate', (event) => {
    event.waitUntil((async () => {
        for (const name of await caches.keys()) if (name.startsWith('app-') && name !== kVersion) await caches.delete(name);
        await self.clients.claim();
    })());
});

self.addEventListener('fetch', (event) => {
    const url = new URL(event.request.url);
    if (event.request.method !== 'GET' || url.origin !== location.origin) return;
    event.respondWith(caches.open(kVersion).then(async (cache) =>
        await cache.match(event.request, { ignoreSearch: true }) ?? fetch(event.request)));
});
