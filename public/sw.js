// Keeps Finrun whole and at one version without a network.
//
// All files of a version are fetched together before it counts as installed, and only that version's
// files are ever served. A new version waits beside the old one until the page asks for the switch, or
// until no page is open. The build completes the two lines below; a worker that was not completed keeps
// nothing and lets everything through to the network.

const VERSION = 'unbuilt';
const FILES = []; // [address relative to this file, sha256 of its contents]

const SHELL = new URL('./', self.location).href;
// Other copies of Finrun on this host have caches of their own, told apart by the path in the name.
const OURS = `finrun ${new URL(SHELL).pathname} `;
const CACHE = OURS + VERSION;

self.addEventListener('install', (event) => event.waitUntil(install()));
self.addEventListener('activate', (event) => event.waitUntil(activate()));

self.addEventListener('message', (event) => {
  if (event.data?.type === 'activate') self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (FILES.length === 0 || request.method !== 'GET') return;
  if (new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(answer(request));
});

// One missing or altered file fails the whole, which leaves the version in use untouched.
async function install() {
  const fetched = await Promise.all(FILES.map(fetchWhole));
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(fetched.map(([address, response]) => cache.put(address, response)));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

// The digest refuses a file of another version, such as one met while a host is being updated.
async function fetchWhole([address, digest]) {
  const response = await fetch(new URL(address, SHELL), { cache: 'reload', integrity: digest });
  if (!response.ok) throw new Error(`${address}: status ${response.status}`);
  return [new URL(address, SHELL).href, response];
}

async function activate() {
  const older = (await caches.keys()).filter((name) => name.startsWith(OURS) && name !== CACHE);
  await Promise.all(older.map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function answer(request) {
  const cache = await caches.open(CACHE);
  const wanted = isShell(request) ? SHELL : request;
  return (await cache.match(wanted, { ignoreSearch: true, ignoreVary: true })) ?? fetch(request);
}

// Finrun is one page. Other pages that a host keeps below this address are not ours to answer.
function isShell(request) {
  const { origin, pathname } = new URL(request.url);
  const address = origin + pathname;
  return request.mode === 'navigate' && (address === SHELL || address === `${SHELL}index.html`);
}
