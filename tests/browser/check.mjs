// Opens pages in headless Chromium, as a phone, a desktop and a printer would, and says what is
// wrong with them. Speaks the browser's own protocol over a pipe, so it needs nothing but Node and
// axe-core (a general accessibility checker from the npm registry).
//
//   node check.mjs CHROMIUM AXE.js PAGE.html...
//
// A page named advise*.html must also fit on two sheets, A4 or Letter.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';

const [chromium, axePath, ...pages] = process.argv.slice(2);
const axe = readFileSync(axePath, 'utf8');
const home = mkdtempSync(path.join(tmpdir(), 'arsenalfit-browser-'));
const SHEETS = { A4: [8.27, 11.69], Letter: [8.5, 11] };

// ---- the browser -------------------------------------------------------------------------------

const browser = spawn(
  chromium,
  ['--headless', '--no-sandbox', '--disable-gpu', '--remote-debugging-pipe', '--no-first-run', `--user-data-dir=${home}`],
  { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] },
);
const waiting = new Map();
const heard = [];
let lastId = 0;
let rest = '';
browser.stdio[4].on('data', (chunk) => {
  rest += chunk;
  for (let end = rest.indexOf('\0'); end >= 0; end = rest.indexOf('\0')) {
    const message = JSON.parse(rest.slice(0, end));
    rest = rest.slice(end + 1);
    if (message.id) waiting.get(message.id)(message);
    else heard.push(message);
  }
});

function ask(method, params = {}, sessionId = undefined) {
  const id = ++lastId;
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new Error(`${method}: no answer in 60 s`)), 60_000);
    waiting.set(id, (message) => {
      clearTimeout(late);
      waiting.delete(id);
      if (message.error) reject(new Error(`${method}: ${message.error.message}`));
      else resolve(message.result);
    });
    browser.stdio[3].write(`${JSON.stringify({ id, method, params, sessionId })}\0`);
  });
}

async function open(page, width, dark) {
  const { targetId } = await ask('Target.createTarget', { url: 'about:blank' });
  const { sessionId } = await ask('Target.attachToTarget', { targetId, flatten: true });
  const tell = (method, params) => ask(method, params, sessionId);
  for (const domain of ['Page', 'Network', 'Log', 'Runtime']) await tell(`${domain}.enable`);
  await tell('Emulation.setDeviceMetricsOverride', { width, height: 844, deviceScaleFactor: 1, mobile: width < 500 });
  const scheme = { name: 'prefers-color-scheme', value: dark ? 'dark' : 'light' };
  await tell('Emulation.setEmulatedMedia', { features: [scheme] });
  heard.length = 0;
  await tell('Page.navigate', { url: pathToFileURL(page).href });
  for (let tries = 0; !heard.some((event) => event.method === 'Page.loadEventFired'); tries += 1) {
    if (tries > 600) throw new Error(`${page} does not load`);
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
  const run = async (expression) => {
    const { result, exceptionDetails } = await tell('Runtime.evaluate', { expression, awaitPromise: true, returnByValue: true });
    if (exceptionDetails) throw new Error(exceptionDetails.exception?.description ?? exceptionDetails.text);
    return result.value;
  };
  return { tell, run, close: () => ask('Target.closeTarget', { targetId }) };
}

// ---- what may be wrong ---------------------------------------------------------------------------

// Runs in the page: every fault of the layout as a sentence; letters in pictures are at least LEAST
// pixels high (8 are 6 points on paper). All tables are opened first.
function layoutFaults(LEAST) {
  const faults = [];
  const name = (element) => `${element.tagName.toLowerCase()} "${element.textContent.trim().slice(0, 40)}"`;
  for (const details of document.querySelectorAll('details')) details.open = true;
  const root = document.documentElement;
  if (root.scrollWidth > root.clientWidth) faults.push(`scrolls sideways: ${root.scrollWidth} > ${root.clientWidth}`);
  for (const element of document.querySelectorAll('body *:not(svg *)')) {
    const style = getComputedStyle(element);
    const wide = element.scrollWidth > element.clientWidth + 1 && style.display !== 'inline' && element.clientWidth > 0;
    if (wide && style.overflowX !== 'visible') faults.push(`cut or scrolling text: ${name(element)}`);
    const box = element.getBoundingClientRect();
    if (box.width > 0 && box.right > root.clientWidth + 1) faults.push(`reaches beyond the page: ${name(element)}`);
  }
  for (const svg of document.querySelectorAll('figure > svg')) {
    const frame = svg.getBoundingClientRect();
    const scale = Math.min(frame.width / svg.viewBox.baseVal.width, frame.height / svg.viewBox.baseVal.height);
    const words = [...svg.querySelectorAll('text')].map((text) => ({ text, box: text.getBoundingClientRect() }));
    for (const { text, box } of words) {
      const inside = box.left >= frame.left - 1 && box.right <= frame.right + 1 && box.top >= frame.top - 1 && box.bottom <= frame.bottom + 1;
      if (!inside) faults.push(`leaves its picture: ${name(text)}`);
      if (parseFloat(getComputedStyle(text).fontSize) * scale < LEAST) faults.push(`too small: ${name(text)}`);
    }
    words.forEach((one, index) => {
      for (const other of words.slice(0, index)) {
        const wide = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
        const high = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
        if (wide > 2 && high > 0.3 * Math.min(one.box.height, other.box.height)) faults.push(`on each other: ${name(one.text)}, ${name(other.text)}`);
      }
    });
  }
  return faults;
}

function overheard(page) {
  const own = pathToFileURL(page).href;
  const faults = [];
  for (const { method, params } of heard) {
    if (method === 'Network.requestWillBeSent' && params.request.url !== own) faults.push(`asks for ${params.request.url}`);
    if (method === 'Runtime.exceptionThrown') faults.push(`throws ${params.exceptionDetails.text}`);
    if (method === 'Runtime.consoleAPICalled' && params.type === 'error') faults.push('writes an error to the console');
    if (method === 'Log.entryAdded' && params.entry.level === 'error') faults.push(`logs ${params.entry.text}`);
  }
  return faults;
}

async function onScreen(page, width, dark) {
  const view = await open(page, width, dark);
  const faults = await view.run(`(${layoutFaults})(10)`);
  await view.run(axe);
  const found = await view.run('axe.run(document).then((r) => r.violations.map((v) => [v.impact, v.id, v.nodes.length, v.nodes[0].html.slice(0, 90)]))');
  for (const [impact, id, count, first] of found) {
    if (impact === 'serious' || impact === 'critical') faults.push(`${impact}: ${id} (${count} places, first ${first})`);
  }
  faults.push(...overheard(page));
  await view.close();
  return faults;
}

async function onPaper(page, [paperWidth, paperHeight]) {
  const view = await open(page, Math.round((paperWidth - 0.87) * 96), true);
  await view.tell('Emulation.setEmulatedMedia', { media: 'print' });
  const faults = await view.run(`(${layoutFaults})(8)`);
  const { data } = await view.tell('Page.printToPDF', { paperWidth, paperHeight });
  const sheets = (Buffer.from(data, 'base64').toString('latin1').match(/\/Type\s*\/Page\b/g) ?? []).length;
  if (sheets === 0) faults.push('prints nothing');
  if (path.basename(page).startsWith('advise') && sheets > 2) faults.push(`takes ${sheets} sheets, not two`);
  faults.push(...overheard(page));
  await view.close();
  return faults;
}

// ---- every page -----------------------------------------------------------------------------------

let passed = 0;
let failed = 0;
function tell(what, faults) {
  if (faults.length === 0) passed += 1;
  else failed += 1;
  for (const fault of faults) console.log(`FAULT ${what}: ${fault}`);
}

try {
  for (const page of pages.map((page) => path.resolve(page))) {
    for (const width of [390, 1024]) {
      for (const dark of [false, true]) tell(`${path.basename(page)} at ${width}${dark ? ' dark' : ''}`, await onScreen(page, width, dark));
    }
    for (const [name, size] of Object.entries(SHEETS)) tell(`${path.basename(page)} on ${name}`, await onPaper(page, size));
  }
} finally {
  browser.kill();
  await new Promise((resolve) => browser.once('exit', resolve));
  rmSync(home, { recursive: true, force: true, maxRetries: 5 });
}
console.log(`pages: ${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
