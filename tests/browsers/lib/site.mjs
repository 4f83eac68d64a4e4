// The built site, served from a sub-path as any static host would, under the headers of the development server.
import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

import { serve } from '../../../web/serve.mjs';

export const site_folder = fileURLToPath(new URL('../../../build/site', import.meta.url));

/// @return {url, origin, port, close()}; close() cuts open connections, after which nothing of the site is to be had
export async function open_site({ folder = site_folder, base = '/quiet/corner/' } = {}) {
  assert.ok(existsSync(path.join(folder, 'index.html')), 'the site is not built: web/run --build-only');
  const site = await serve(folder, { base });
  return { ...site, origin: new URL(site.url).origin };
}
