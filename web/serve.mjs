// A small static server for development and tests: node web/serve.mjs FOLDER [--port N]
// Nothing is to be kept by the browser's own cache, so that what is seen is what was built; offline use is the service
// worker's, which has a cache of its own.
import { createReadStream, statSync } from 'node:fs';
import http from 'node:http';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

import { policy } from './policy.mjs';

const types = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.mjs': 'text/javascript; charset=utf-8',
  '.otf': 'font/otf',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
};

const first_port = 8000;
const last_port = 8099;

/// The file in `folder` that a request asks for, or null: never one outside the folder.
function file_for(folder, pathname, base) {
  if (!pathname.startsWith(base)) return null;
  let file = path.join(folder, path.normalize('/' + pathname.slice(base.length)));
  const found = () => statSync(file, { throwIfNoEntry: false });
  if (found()?.isDirectory()) file = path.join(file, 'index.html');
  return found()?.isFile() ? file : null;
}

/// Null when the sender has gone before its end.
async function body_of(request) {
  const chunks = [];
  try {
    for await (const chunk of request) chunks.push(chunk);
  } catch {
    return null;
  }
  return Buffer.concat(chunks).toString('utf8');
}

/// Serves `folder` under the path `base` (begins and ends with a slash). Port 0 takes any free port.
/// Returns {url, port, close()}; rejects when the port is taken. close() cuts open connections too.
/// @param post  answers what a page sends: given the body as text, gives the answer's
export async function serve(folder, { port = 0, base = '/', host = undefined, post = undefined } = {}) {
  const server = http.createServer(async (request, response) => {
    if (request.method === 'POST' && post) {
      const body = await body_of(request);
      if (body !== null) response.end(String(await post(body) ?? ''));
      return;
    }
    let pathname;
    try {
      pathname = decodeURIComponent(new URL(request.url, 'http://localhost').pathname);
    } catch {
      response.writeHead(400).end();
      return;
    }
    const file = file_for(folder, pathname, base);
    if (!file) {
      response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' }).end('Not here.\n');
      return;
    }
    const type = types[path.extname(file)] ?? 'application/octet-stream';
    response.writeHead(200, {
      'content-type': type,
      'cache-control': 'no-store',
      'content-security-policy': policy,
      'x-content-type-options': 'nosniff',
    });
    if (request.method === 'HEAD') response.end();
    else createReadStream(file).pipe(response);
  });
  await new Promise((done, refuse) => {
    server.once('error', refuse);
    server.listen(port, host, done);
  });
  const taken = server.address().port;
  return {
    port: taken,
    url: `http://localhost:${taken}${base}`,
    close: () => new Promise((done) => {
      server.close(done);
      server.closeAllConnections();
    }),
  };
}

async function serve_on_first_free_port(folder) {
  for (let port = first_port; port < last_port; port += 1) {
    try {
      return await serve(folder, { port });
    } catch (error) {
      if (error.code !== 'EADDRINUSE') throw error;
    }
  }
  return serve(folder, { port: 0 });
}

async function main([folder, flag, asked]) {
  const site = flag === '--port' ? await serve(folder, { port: Number(asked) }) : await serve_on_first_free_port(folder);
  console.log(site.url);
}

if (process.argv[1] && path.resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  main(process.argv.slice(2)).catch((error) => {
    console.error(error.code === 'EADDRINUSE' ? `Port ${error.port} is taken: stop what uses it, or choose another with --port.` : error.message);
    process.exitCode = 1;
  });
}
