// What tests play on: the site, served, and one Chromium for all pages of a suite, or one page in an engine.
import { after, before } from 'node:test';

import { launch, open_chromium } from './engines.mjs';
import { open_site } from './site.mjs';

/// Called within a suite: both are opened before its first test, ahead of hooks that come later, and closed after its last.
/// @param options  as open_chromium() takes them
/// @return {site, browser}, filled in by then
export function chromium_on_site(options) {
  const stage = { site: null, browser: null };
  before(async () => {
    stage.site = await open_site();
    stage.browser = await open_chromium(options);
  });
  after(async () => {
    await stage.browser?.close();
    await stage.site?.close();
  });
  return stage;
}

/// A page in an engine, and a site of its own; both are closed after the test. @param view  as launch() takes it
export async function page_on_site(t, engine, view) {
  const site = await open_site();
  const page = await launch(engine, view);
  t.after(async () => {
    await page.close();
    await site.close();
  });
  return { page, site };
}
