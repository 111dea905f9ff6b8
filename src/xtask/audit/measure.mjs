// Measures the release page in a browser: how fast it loads, how fast a keystroke's result is shown, and
// how fast it opens again without a network.
//
// One argument, JSON: { modules, chrome, server, job }: the folder of the packages, the browser, the
// command that serves the page, and a large job as a file's text. Writes the measured numbers to
// standard output as JSON, and what it is doing to standard error.

import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const { modules, chrome, server, job } = JSON.parse(process.argv[2]);
const from = (path) => import(pathToFileURL(join(modules, path)).href);
const { default: lighthouse } = await from('lighthouse/core/index.js');
const { default: puppeteer } = await from('puppeteer-core/lib/esm/puppeteer/puppeteer-core.js');

// A middling phone against the machine of a developer, as Lighthouse has it.
const SLOWER = 4;
const LOADS = 3;
const KEYSTROKES = 20;
const REOPENINGS = 5;

const folder = mkdtempSync(join(tmpdir(), 'finrun-audit-'));
let browser;
let served;
let figures;
try {
  served = await serve();
  figures = {
    ...(await loading(served.address)),
    ...(await typing(served.address)),
    ...(await reopening(served)),
  };
} finally {
  await browser?.close();
  served?.stop();
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}
console.log(JSON.stringify(figures));

function serve() {
  const [program, ...options] = server;
  const child = spawn(program, options, { stdio: ['ignore', 'pipe', 'inherit'] });
  const gone = new Promise((resolve) => child.on('exit', resolve));
  const stop = () => (child.kill('SIGKILL'), gone);
  return new Promise((resolve, reject) => {
    child.stdout.once('data', (said) => resolve({ address: String(said).trim(), stop }));
    gone.then(() => reject(new Error('the server ended before it served')));
  });
}

async function open(profile) {
  browser = await puppeteer.launch({
    executablePath: chrome,
    userDataDir: join(folder, profile),
    defaultViewport: { width: 390, height: 844, deviceScaleFactor: 2, isMobile: true, hasTouch: true },
    args: [
      // As for the tests: root and containers allow no sandbox and little shared memory.
      '--no-sandbox', '--disable-dev-shm-usage', '--disable-gpu', '--disable-quic', '--no-first-run',
      '--disable-background-networking', '--disable-component-update', '--disable-sync',
    ],
  });
  return browser;
}

async function close() {
  await browser.close();
  browser = undefined;
}

// Lighthouse clears storage and workers first, so each run is a first visit.
async function loading(address) {
  await open('loading');
  const runs = [];
  for (let run = 1; run <= LOADS; run += 1) {
    console.error(`first visit ${run} of ${LOADS}`);
    const { lhr } = await lighthouse(address, {
      port: Number(new URL(browser.wsEndpoint()).port),
      onlyCategories: ['performance', 'accessibility'],
      logLevel: 'error',
    });
    if (lhr.runtimeError) throw new Error(lhr.runtimeError.message);
    runs.push(lhr);
  }
  await close();
  const audit = (name) => median(runs.map(({ audits }) => audits[name].numericValue));
  const score = (name) => median(runs.map(({ categories }) => 100 * categories[name].score));
  return {
    performance: score('performance'),
    accessibility: score('accessibility'),
    largest_paint_ms: audit('largest-contentful-paint'),
    blocking_ms: audit('total-blocking-time'),
    layout_shift: audit('cumulative-layout-shift'),
    first_paint_ms: audit('first-contentful-paint'),
    speed_index_ms: audit('speed-index'),
  };
}

// From the key's own time stamp to the moment at which the frame with the new result was on screen.
async function typing(address) {
  console.error(`${KEYSTROKES} keystrokes in a large house`);
  await open('typing');
  const page = await browser.newPage();
  await page.goto(address);
  await page.evaluate((text) => localStorage.setItem('finrun.job.large', text), job);
  await page.goto(`${address}#/job/large/rooms`);
  await page.reload();
  await page.waitForSelector('.stations');
  const { id } = JSON.parse(job).job.rooms[0];
  await page.goto(`${address}#/job/large/room/${id}`);
  const box = `[id="room-${id}.floor-length"]`;
  await page.waitForSelector(box);
  await page.evaluate(() => document.fonts.ready);
  // A mark stands in the trace when the figure has changed.
  await page.evaluate(() => {
    const figure = () => document.querySelector('[data-figure="plate.load"]')?.textContent;
    let last = figure();
    new MutationObserver(() => {
      if (figure() === last) return;
      last = figure();
      performance.mark('finrun-result');
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
  await page.click(box);
  await page.emulateCPUThrottling(SLOWER);
  await page.tracing.start({ categories: ['devtools.timeline', 'blink.user_timing'] });
  for (let time = 0; time < KEYSTROKES; time += 1) {
    // "18" becomes "189" and "18" again.
    await page.keyboard.press(time % 2 ? 'Backspace' : '9');
    await new Promise((resolve) => setTimeout(resolve, 700));
  }
  const trace = JSON.parse(new TextDecoder().decode(await page.tracing.stop()));
  await close();
  return { keystroke_ms: median(shown(trace.traceEvents)) };
}

// The browser notes for each key when it came and when the next frame was on screen. A result that came
// after that frame stands in a later one, and then the key did not show it.
function shown(events) {
  const data = (event) => event.args?.data ?? {};
  const keys = events.filter((event) => event.name === 'EventTiming' && data(event).type === 'keydown').map(data);
  const results = events.filter((event) => event.name === 'finrun-result').map((event) => data(event).startTime);
  if (keys.length !== KEYSTROKES || results.length !== KEYSTROKES) {
    throw new Error(`${keys.length} of ${KEYSTROKES} keys are in the trace, with ${results.length} results`);
  }
  return keys.map(({ timeStamp, duration }, at) => {
    if (results[at] < timeStamp || results[at] > timeStamp + duration) {
      throw new Error(`key ${at} was shown before its result had come`);
    }
    return duration;
  });
}

// With the browser started anew, on what it has kept.
async function reopening(served) {
  await open('reopening');
  const first = await browser.newPage();
  await first.goto(served.address);
  await first.evaluate((text) => localStorage.setItem('finrun.job.large', text), job);
  await first.reload();
  await first.waitForSelector('html[data-offline=ready]');
  await close();
  await served.stop();
  const times = [];
  for (let time = 1; time <= REOPENINGS; time += 1) {
    console.error(`reopening ${time} of ${REOPENINGS}, without a network`);
    await open('reopening');
    const page = await browser.newPage();
    await page.emulateCPUThrottling(SLOWER);
    await page.evaluateOnNewDocument(() => {
      const look = () => {
        if (!document.querySelector('.stations') || !document.querySelector('ol.rooms > li')) return requestAnimationFrame(look);
        // The frame that is being made shows it; the next task comes after.
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => { window.usable = performance.now(); };
        port2.postMessage(null);
      };
      requestAnimationFrame(look);
    });
    await page.goto(`${served.address}#/job/large/rooms`, { waitUntil: 'domcontentloaded' });
    await page.waitForFunction('window.usable !== undefined');
    times.push(await page.evaluate('window.usable'));
    await close();
  }
  return { reopening_ms: median(times) };
}

function median(numbers) {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}
