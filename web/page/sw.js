// Keeps the whole of one version on the device and serves it without asking the network. A newer version is fetched beside
// it and waits until the user asks or no page is open; files of a version that an open page still uses stay.
const version = '{{version}}';
const files = {{files}};
const ours = `fogsheet ${registration.scope} `;  // caches are one for the whole origin, other copies of the page may have theirs
const answer_ms = 1000;

addEventListener('install', (event) => event.waitUntil(fetch_all()));
addEventListener('activate', (event) => event.waitUntil(take_over()));
addEventListener('message', (event) => {
  if (event.data === 'take over') skipWaiting();
});
addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method === 'GET' && url.href.startsWith(registration.scope)) event.respondWith(answer(event.request, url));
});

/// All or nothing. Past the browser's own cache, which may hold files of another version under the same name.
async function fetch_all() {
  try {
    const cache = await caches.open(ours + version);
    await cache.addAll(files.map((file) => new Request(file, { cache: 'reload' })));
  } catch (error) {
    await caches.delete(ours + version);
    throw error;
  }
}

async function take_over() {
  const used = await versions_in_use();
  for (const name of await caches.keys()) {
    if (name.startsWith(ours) && used && !used.has(name.slice(ours.length))) await caches.delete(name);
  }
  await clients.claim();
}

/// Null when a page does not say: then nothing is thrown away.
async function versions_in_use() {
  const pages = await clients.matchAll({ includeUncontrolled: true, type: 'window' });
  const answers = await Promise.all(pages.filter((page) => page.url.startsWith(registration.scope)).map(version_of));
  return answers.includes(null) ? null : new Set([version, ...answers]);
}

function version_of(page) {
  return new Promise((answer) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = (event) => answer(event.data);
    setTimeout(() => answer(null), answer_ms);
    page.postMessage('which version', [port2]);
  });
}

/// This version's files first; a page of an older version finds its own under its own names.
async function answer(request, url) {
  const cache = await caches.open(ours + version);
  if (request.mode === 'navigate') {
    const page = url.href.slice(registration.scope.length).split(/[?#]/)[0];
    if (page === '' || page === 'index.html') return (await cache.match('./')) ?? fetch(request);
  }
  return (await cache.match(request, { ignoreSearch: true })) ?? (await in_older(request)) ?? fetch(request);
}

async function in_older(request) {
  for (const name of await caches.keys()) {
    const kept = name.startsWith(ours) && (await (await caches.open(name)).match(request, { ignoreSearch: true }));
    if (kept) return kept;
  }
  return undefined;
}
