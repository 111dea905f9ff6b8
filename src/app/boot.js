// Starts the program, keeps it ready to work offline, and helps when it cannot run.
//
// The program and this file talk by events on `window`. What has happened also stands in the
// attributes of <html>, because the program may begin to listen only afterwards:
//
//   data-boot     started | failed
//   data-offline  ready | failed           event finrun-offline-ready, finrun-offline-failed
//   data-update   waiting | taken          event finrun-update-waiting, finrun-update-taken
//   data-kept     surely | perhaps         event finrun-kept-surely, finrun-kept-perhaps
//   data-install  possible | done          event finrun-install-possible, finrun-install-done
//
// The program answers `finrun-update-accept` when it has saved and the person agreed to the new version,
// `finrun-install-accept` when the person wants the page installed, and `finrun-job-made` when there is
// something that the browser should not clear away. `finrun-job-written` names a job that was stored or
// deleted (copy.js).
// The few sentences here are for when there is no program; all others are the program's own. So is the
// choice of a language once the program runs (state/language.rs).

import { recover } from './copy.js';

const page = document.documentElement;
page.lang = language();
const HOUR = 3_600_000;

// A panic inside the program reaches the window as a trap.
window.addEventListener('error', (event) => {
  if (globalThis.WebAssembly && event.error instanceof WebAssembly.RuntimeError) rescue(event.error);
});

start().catch(rescue).finally(keepOffline);
keepJobs();
offerInstall();

async function start() {
  await seen();
  fetchFonts();
  const [{ default: init }, module] = await Promise.all([import('./finrun.js'), compiled(), recover()]);
  await init({ module_or_path: module });
  page.dataset.boot ??= 'started';
}

// On a first visit, once what the page says by itself is on the screen: it tells what this is, and what
// is fetched for the program, many times as much, would hold it up. A page that is not looked at is never
// on the screen, and does not wait.
function seen() {
  const told = globalThis.PerformanceObserver?.supportedEntryTypes ?? [];
  if (!told.includes('paint') || document.hidden || navigator.serviceWorker?.controller) return undefined;
  return new Promise((resolve) => {
    setTimeout(resolve, 1000);
    new PerformanceObserver(resolve).observe({ type: 'paint', buffered: true });
  });
}

async function compiled() {
  const file = await fetch('finrun_bg.wasm');
  if (!file.ok) throw new Error(`finrun_bg.wasm: ${file.status} ${file.statusText}`);
  // Only a file of its own type may be compiled as it comes, and not every host gives it that.
  const typed = file.headers.get('Content-Type') === 'application/wasm';
  return typed ? WebAssembly.compileStreaming(file) : WebAssembly.compile(await file.arrayBuffer());
}

// Nothing moves when they are there before the program writes in them; it does not wait for them.
function fetchFonts() {
  for (const weight of [400, 600]) document.fonts.load(`${weight} 1em "Barlow Semi Condensed"`).catch(() => {});
}

function announce(fact, state) {
  page.dataset[fact] = state;
  window.dispatchEvent(new CustomEvent(`finrun-${fact}-${state}`));
}

// Browsers may clear what a page has stored, unless they have promised not to. Some ask the person,
// who should know what for: so not before there is a job.
async function keepJobs() {
  const { storage } = navigator;
  const tell = (surely) => announce('kept', surely ? 'surely' : 'perhaps');
  window.addEventListener('finrun-job-made', () => storage?.persist?.().then(tell, () => tell(false)));
  tell(await storage?.persisted?.().catch(() => false));
}

// Some browsers let a page offer it, at a moment of its own.
function offerInstall() {
  let offer;
  window.addEventListener('beforeinstallprompt', (event) => {
    event.preventDefault();
    offer = event;
    announce('install', 'possible');
  });
  window.addEventListener('finrun-install-accept', () => offer?.prompt());
  window.addEventListener('appinstalled', () => announce('install', 'done'));
}

// Runs also after a failed start: only so can a mended version come in.
async function keepOffline() {
  const workers = navigator.serviceWorker;
  if (!workers) return announce('offline', 'failed');
  let registration;
  try {
    registration = await workers.register('./sw.js', { scope: './', updateViaCache: 'none' });
  } catch {
    return announce('offline', 'failed');
  }
  workers.ready.then(() => announce('offline', 'ready'));
  if (registration.waiting) announce('update', 'waiting');
  if (registration.installing) follow(registration, registration.installing);
  registration.addEventListener('updatefound', () => follow(registration, registration.installing));
  switchOnConsent(workers, registration);
  lookForUpdates(registration);
}

function follow(registration, worker) {
  worker?.addEventListener('statechange', () => {
    if (worker.state === 'installed' && registration.active) announce('update', 'waiting');
    if (worker.state === 'redundant' && !registration.active) announce('offline', 'failed');
  });
}

function switchOnConsent(workers, registration) {
  let consent = false;
  let controlled = Boolean(workers.controller);
  window.addEventListener('finrun-update-accept', () => {
    consent = true;
    // Nothing waits when another tab has switched already: then only this page is left to change.
    if (registration.waiting) registration.waiting.postMessage({ type: 'activate' });
    else location.reload();
  });
  workers.addEventListener('controllerchange', () => {
    if (consent) location.reload();
    else if (controlled) announce('update', 'taken');
    controlled = true;
  });
}

// Browsers ask for a new version when they please, and an installed app can stay open for weeks.
function lookForUpdates(registration) {
  let looked = -HOUR;
  const look = () => {
    if (performance.now() - looked < HOUR) return;
    looked = performance.now();
    registration.update().catch(() => {}); // without a network there is nothing to find
  };
  if (registration.active) look();
  document.addEventListener('visibilitychange', look);
}

const WORDS = {
  en: {
    stopped: 'Finrun has stopped',
    notStarted: 'Finrun could not start',
    loadFirst: 'Load the page again. If it stops again, use a current version of Chrome, Edge, Firefox or Safari.',
    tooOld: 'This browser cannot run it. Use a current version of Chrome, Edge, Firefox or Safari.',
    again: 'Load again',
    download: 'Download what is saved',
    kept: 'Your jobs are still kept in this browser. Download them before you clear anything.',
    why: 'What went wrong:',
  },
  es: {
    stopped: 'Finrun se detuvo',
    notStarted: 'Finrun no pudo empezar',
    loadFirst: 'Vuelva a cargar la página. Si se detiene otra vez, use una versión actual de Chrome, Edge, Firefox o Safari.',
    tooOld: 'Este navegador no puede ejecutarlo. Use una versión actual de Chrome, Edge, Firefox o Safari.',
    again: 'Volver a cargar',
    download: 'Descargar lo guardado',
    kept: 'Sus proyectos siguen guardados en este navegador. Descárguelos antes de borrar nada.',
    why: 'Qué falló:',
  },
};

// What was chosen by hand, else the first of the browser's languages that is spoken here.
function language() {
  let chosen = null;
  try {
    chosen = localStorage.getItem('finrun.language');
  } catch {
    // Storage is blocked, so nothing was chosen.
  }
  const tags = [chosen, ...navigator.languages].map((tag) => tag?.split('-')[0]);
  return tags.find((tag) => tag === 'en' || tag === 'es') ?? 'en';
}

function rescue(error) {
  if (page.dataset.boot === 'failed') return;
  const running = page.dataset.boot === 'started';
  page.dataset.boot = 'failed';
  console.error(error);
  const words = WORDS[page.lang];
  const main = element('main', { className: 'shell' });
  main.append(
    element('h1', { textContent: running ? words.stopped : words.notStarted }),
    element('p', { role: 'alert', textContent: globalThis.WebAssembly ? words.loadFirst : words.tooOld }),
    element('button', { type: 'button', textContent: words.again, onclick: loadAgain }),
  );
  offerSaved(main, words);
  main.append(element('p', { textContent: `${words.why} ${error?.message ?? error}` }));
  (document.getElementById('app') ?? document.body).replaceChildren(main);
}

function loadAgain() {
  if (page.dataset.update === 'waiting') window.dispatchEvent(new CustomEvent('finrun-update-accept'));
  else location.reload();
}

// The stored text exactly as it stands: whatever is wrong with it, it can be mended from a file.
function offerSaved(main, words) {
  let saved;
  try {
    saved = Object.entries(localStorage).filter(([key]) => key.startsWith('finrun'));
  } catch {
    return; // storage is blocked, so nothing was kept in it
  }
  if (saved.length === 0) return;
  const text = JSON.stringify(Object.fromEntries(saved), null, 1);
  const href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  main.append(
    element('a', { href, download: 'finrun-saved.json', textContent: words.download }),
    element('p', { textContent: words.kept }),
  );
}

function element(name, properties) {
  return Object.assign(document.createElement(name), properties);
}
