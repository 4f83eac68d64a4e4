// The page under test, spoken to by its handles, with what every page is watched for: a request to another host, a file that
// is missing, a breach of the content policy, an error on the console.
import assert from 'node:assert/strict';
import { setTimeout as sleep } from 'node:timers/promises';

export const read = (page) => page.evaluate(() => window.fogsheet.read());
export const command = (page, name, args = {}) => page.evaluate((n, a) => window.fogsheet.command(n, a), name, args);
export const link = (page) => page.evaluate(() => window.fogsheet.link());
export const frames = (page) => page.evaluate(() => window.fogsheet.frames());

/// A command that must succeed; returns the id of what it made.
export async function done(page, name, args) {
  const answer = await command(page, name, args);
  assert.equal(answer.ok, true, `${name}: ${answer.error}`);
  return answer.id;
}

export async function ready(page) {
  await page.evaluate(() => window.fogsheet.ready.then(() => true));
}

/// As at a first visit: nothing is kept from what a Chromium page did before. Other engines' pages are on a profile of their own.
export async function open(page, url) {
  if (page.raw.context) await forget_kept(page, url);
  await open_again(page, url);
}

/// With whatever is kept.
export async function open_again(page, url) {
  await page.goto(url);
  await ready(page);
}

async function forget_kept(page, url) {
  await page.goto('about:blank');
  const session = await page.raw.context.newCDPSession(page.raw.page);
  await session.send('Storage.clearDataForOrigin', { origin: new URL(url).origin, storageTypes: 'indexeddb' });
  await session.detach();
}

/// Until all that was done is shown as kept.
export const kept = (page) => until(page, 'all to be kept', () => window.fogsheet.read().history.kept.state === 'kept');

/// Waits until a function run in the page gives something truthy, and returns that.
export async function until(page, what, fn, ...args) {
  const patience_ms = 8000;
  for (let waited_ms = 0; ; waited_ms += 40) {
    const value = await page.evaluate(fn, ...args);
    if (value) return value;
    assert.ok(waited_ms < patience_ms, `waited in vain: ${what}`);
    await sleep(40);
  }
}

/// Until all of this version is on the device and the worker answers for it.
export const kept_offline = (page) => until(page, 'a service worker in charge',
  () => navigator.serviceWorker.getRegistration().then((worker) => Boolean(worker?.active && worker.active.state === 'activated' && !worker.installing)));

/// What two equal sheets agree in.
export function sheet_of(value) {
  const { edge, history, ...sheet } = value;
  return sheet;
}

/// The slip's or a panel's text as shown.
export const text_of = (page, selector) => page.evaluate((wanted) => document.querySelector(wanted)?.innerText ?? '', selector);

/// To be given as `prepare` when a Chromium page is opened, for watch() to read.
export const note_violations = () => {
  window.policy_violations = [];
  document.addEventListener('securitypolicyviolation', (event) => {
    window.policy_violations.push(`${event.violatedDirective}: ${event.blockedURI} ${event.sourceFile}:${event.lineNumber}`);
  });
};

/// Watches a Chromium page; `check()` fails on whatever was amiss.
export function watch(page, origin) {
  const amiss = [];
  const { context } = page.raw;
  context.on('request', (request) => {
    if (!/^(data|blob):/.test(request.url()) && new URL(request.url()).origin !== origin) amiss.push(`left the origin: ${request.url()}`);
  });
  context.on('response', (response) => {
    if (response.status() >= 400) amiss.push(`${response.status()}: ${response.url()}`);
  });
  context.on('console', (message) => {
    if (message.type() === 'error') amiss.push(`console: ${message.text()}`);
  });
  context.on('weberror', (error) => amiss.push(`uncaught: ${error.error()}`));
  return {
    check: async () => {
      const violations = await page.evaluate(() => window.policy_violations ?? []);
      assert.deepEqual([...amiss, ...violations], []);
    },
  };
}
