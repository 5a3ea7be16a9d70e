// Keeps every file of one version of Perchlight, so that it starts without a network.
// The build fills in VERSION and FILES; nothing else is ever kept, nothing else is asked for.
const VERSION = '__VERSION__';
const FILES = [/* __FILES__ */];

// The scope is part of the name: another copy below another path of this host keeps its own.
const SCOPE = new URL(self.registration.scope);
const OWN = `perchlight-${SCOPE.pathname}@`;
const CACHE = OWN + VERSION;
const LISTED = new Set(FILES.map(([path]) => new URL(path, SCOPE).href));

const install = async () => {
  const cache = await caches.open(CACHE);
  // Past the browser's own cache, and only what the build has written: all of it or nothing.
  const requests = FILES.map(([path, integrity]) => new Request(new URL(path, SCOPE), { cache: 'reload', integrity }));
  try {
    await cache.addAll(requests);
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
};

const activate = async () => {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(OWN) && name !== CACHE).map((name) => caches.delete(name)));
  await self.clients.claim();
};

// The address under which a request is kept, or null.
const keptAs = (request) => {
  const url = new URL(request.url);
  url.hash = '';
  if (LISTED.has(url.href)) {
    return url.href;
  }
  const isStart = url.pathname === SCOPE.pathname || url.pathname === `${SCOPE.pathname}index.html`;
  return request.mode === 'navigate' && url.origin === SCOPE.origin && isStart ? SCOPE.href : null;
};

const answer = async (request, address) => {
  const cache = await caches.open(CACHE);
  return (await cache.match(address)) ?? fetch(request);
};

// What another app shares comes in the body of a POST (share_target in manifest.webmanifest), which is read here and
// sent nowhere: the page gets its text behind `#`, as public/receive.js reads it.
const takeShared = async (request) => {
  const sent = await request.formData();
  const text = ['title', 'text', 'url'].map((name) => sent.get(name) ?? '').join('\n').trim();
  return Response.redirect(`${SCOPE.href}#${new URLSearchParams({ shared: text })}`, 303);
};

self.addEventListener('install', (event) => event.waitUntil(install()));
self.addEventListener('activate', (event) => event.waitUntil(activate()));
self.addEventListener('message', (event) => {
  if (event.data === 'skip-waiting') {
    self.skipWaiting();
  }
});
self.addEventListener('fetch', (event) => {
  const { request } = event;
  const address = keptAs(request);
  if (address !== null && request.method === 'GET') {
    event.respondWith(answer(request, address));
  } else if (address === SCOPE.href && request.method === 'POST') {
    event.respondWith(takeShared(request));
  }
});
