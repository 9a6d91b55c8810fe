// Usage: node play.mjs ANSWERS.json FOLDER. Plays each answer and compares the score, the verdict and the feedback shown.
import fs from 'node:fs';
import http from 'node:http';
import os from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';

const [answers, folder] = process.argv.slice(2);
const types = { '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css', '.svg': 'image/svg+xml' };
const server = http.createServer((request, reply) => {
  const name = path.normalize(new URL(request.url, 'http://localhost').pathname);
  const file = [process.cwd(), folder].map(dir => path.join(dir, name)).find(file => fs.existsSync(file)); // a picture stands in the folder
  if (!file) return reply.writeHead(404).end();
  reply.writeHead(200, { 'content-type': types[path.extname(file)] || 'application/octet-stream' });
  fs.createReadStream(file).pipe(reply);
});
await new Promise(ok => server.listen(0, '127.0.0.1', ok));

const profile = fs.mkdtempSync(path.join(os.tmpdir(), 'player-'));
const browser = await chromium.launchPersistentContext(profile, {
  executablePath: '/usr/bin/chromium', headless: true,
  args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
});
const complaints = new Set();
let page;

// The player keeps every item it has shown, and runs out of memory after thousands.
async function freshPage() {
  await page?.close();
  page = await browser.newPage();
  page.on('pageerror', e => complaints.add(e.message));
  page.on('console', m => m.type() === 'error' && complaints.add(m.text()));
  await page.goto(`http://127.0.0.1:${server.address().port}/page.html`);
  await page.waitForFunction(() => window.player);
}

const oneLine = s => s.replace(/\s+/g, ' ').trim();
let played = 0, wrong = 0;
const items = JSON.parse(fs.readFileSync(answers));
for (const [i, item] of items.entries()) {
  if (i % 20 === 0) await freshPage(), console.log(`${i} items, ${played} answers, ${wrong} differ`);
  const xml = fs.readFileSync(path.join(folder, item.File), 'utf8');
  for (const want of item.Answers) {
    played++;
    const got = await page.evaluate(([xml, given]) => play(xml, given), [xml, want.Given]).catch(e => ({ outcomes: {}, seen: [e.message] }));
    const same = got.outcomes.SCORE === want.Score && got.outcomes.FEEDBACK === want.Feedback && oneLine(got.seen.join('|')) === oneLine(want.Text);
    if (!same && wrong++ < 20) console.log(item.File, JSON.stringify(want), JSON.stringify(got));
  }
}
console.log(`${items.length} items, ${played} answers, ${wrong} differ, ${complaints.size} complaints of the player`, [...complaints]);
await browser.close();
fs.rmSync(profile, { recursive: true });
server.close();
process.exitCode = wrong ? 1 : 0;
