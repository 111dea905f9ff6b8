// A second copy of each job, on the disk at once.
//
// Browsers write localStorage to the disk seconds after the program has (Chromium up to a minute when
// much is written), and one that dies takes that time with it. IndexedDB, asked for strict durability, is
// on the disk when it says so. localStorage stays what the program reads; the copy counts only at the
// start, and only where it is newer.
//
// Each write has a time, which stands in localStorage as `finrun.time.` with the job's key, and in the
// copy. A job that was deleted leaves a copy without text, so that neither side brings it back.

const JOB = 'finrun.job.';
const TIME = 'finrun.time.';
// A start does not wait longer: some browsers never answer at all.
const PATIENCE = 1000;
const DAY = 86_400_000;

let database;

/// Brings localStorage up to the copy. Never fails: without a copy there is nothing to bring.
export async function recover() {
  window.addEventListener('finrun-job-written', ({ detail }) => copy(detail));
  let late = false;
  const patience = new Promise((resolve) => setTimeout(resolve, PATIENCE)).then(() => { late = true; });
  const bring = async () => {
    database = await answer(opened());
    const copies = await answer(store('readonly').getAll());
    if (!late) copies.forEach(restore);
  };
  await Promise.race([bring().catch(() => {}), patience]);
}

function restore({ key, text, time }) {
  const job = JOB + key;
  const stored = localStorage.getItem(job);
  if (time > written(key)) {
    if (text === null) localStorage.removeItem(job);
    else localStorage.setItem(job, text);
    localStorage.setItem(TIME + key, time);
  } else if (time < written(key)) {
    // The page died between the two.
    copy(job);
  } else if (stored === null && Date.now() - time > DAY) {
    // Deleted, and by now the disk knows it: nothing is left to remember.
    store('readwrite').delete(key);
    localStorage.removeItem(TIME + key);
  }
}

function written(key) {
  return Number(localStorage.getItem(TIME + key));
}

// The clock may have been set back; a later write counts as later all the same.
function copy(job) {
  const key = job.slice(JOB.length);
  const time = Math.max(Date.now(), written(key) + 1);
  try {
    localStorage.setItem(TIME + key, time);
    store('readwrite').put({ key, text: localStorage.getItem(job), time });
  } catch {
    // Full, or forbidden: the program has said so of the job itself.
  }
}

function opened() {
  const request = indexedDB.open('finrun', 1);
  request.onupgradeneeded = () => request.result.createObjectStore('jobs', { keyPath: 'key' });
  return request;
}

function store(mode) {
  return database.transaction('jobs', mode, { durability: 'strict' }).objectStore('jobs');
}

function answer(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}
