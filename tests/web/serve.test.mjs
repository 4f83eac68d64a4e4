// The development server gives files under the right types, from any sub-path, and none from outside its folder.
import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import http from 'node:http';
import net from 'node:net';
import os from 'node:os';
import path from 'node:path';
import { after, test } from 'node:test';
import { serve } from '../../web/serve.mjs';

const outside = mkdtempSync(path.join(os.tmpdir(), 'fogsheet-serve-'));
const folder = path.join(outside, 'site');
mkdirSync(path.join(folder, 'deep'), { recursive: true });
writeFileSync(path.join(outside, 'secret.txt'), 'secret');
for (const name of ['index.html', 'app.mjs', 'app.wasm', 'app.webmanifest', 'B612-Regular.otf', 'deep/index.html']) writeFileSync(path.join(folder, name), name);

const site = await serve(folder, { base: '/some/where/' });
after(async () => {
  await site.close();
  rmSync(outside, { recursive: true });
});

/// Status, type and body for a path sent as it is: fetch would tidy "..", and so hide what a stranger may send.
function get(raw_path) {
  return new Promise((done, refuse) => {
    http.get({ port: site.port, path: raw_path }, (response) => {
      let body = '';
      response.on('data', (chunk) => { body += chunk; });
      response.on('end', () => done({ status: response.statusCode, type: response.headers['content-type'], body }));
    }).on('error', refuse);
  });
}

test('files come under the types that browsers ask for', async () => {
  // Source: the IANA media types registry.
  const types = { 'index.html': 'text/html; charset=utf-8', 'app.mjs': 'text/javascript; charset=utf-8', 'app.wasm': 'application/wasm',
    'app.webmanifest': 'application/manifest+json', 'B612-Regular.otf': 'font/otf' };
  for (const [name, type] of Object.entries(types)) assert.deepEqual(await get(`/some/where/${name}`), { status: 200, type, body: name });
});

test('a folder is its index.html', async () => {
  assert.equal((await get('/some/where/')).body, 'index.html');
  assert.equal((await get('/some/where/deep/')).body, 'deep/index.html');
});

test('nothing outside the folder or the sub-path is given', async () => {
  for (const raw_path of ['/', '/index.html', '/some/where/../secret.txt', '/some/where/%2e%2e/secret.txt', '/some/where/..%2fsecret.txt', '/some/where/missing']) {
    assert.equal((await get(raw_path)).status, 404, raw_path);
  }
});

test('a taken port is refused', async () => {
  await assert.rejects(serve(folder, { port: site.port }), { code: 'EADDRINUSE' });
});

test('who sends half a body and is gone does no harm, and is not answered', async () => {
  const bodies = [];
  const asked = await serve(folder, { post: (body) => bodies.push(body) });
  const send = (declared, text) => new Promise((done, refuse) => {
    const socket = net.connect(asked.port, '127.0.0.1', () => socket.write(`POST / HTTP/1.1\r\nHost: x\r\nContent-Length: ${declared}\r\n\r\n${text}`, () => {
      if (declared > text.length) setTimeout(() => socket.resetAndDestroy(), 100);
    }));
    socket.on('data', () => socket.end());
    socket.on('close', done);
    socket.on('error', refuse);
  });
  await send(100, 'half');
  await send(5, 'whole');
  await asked.close();
  assert.deepEqual(bodies, ['whole']);
});
