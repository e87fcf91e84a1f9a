/**
 * A service of one's own with people who work there, its screens in a real browser, and the checks every page must pass:
 * no accessibility violation (axe, WCAG 2.2 AA), nothing wider than the screen, nothing too small for a finger, no error in the
 * console.
 */
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';

import { expect } from 'vitest';
import { type Somebody, ownServer, password, people } from '../../apps/server/test/support/own-server.ts';
import type { Tls } from '../../apps/server/src/certificate.ts';
import { ownPageListener } from '../../apps/server/src/own-page/listener.ts';
import { accessibilityViolations } from './accessibility.ts';
import { launch, screenshotPath } from './browser.ts';
import { fingersFit } from './fingers.ts';
import { movableClock } from './movable-clock.ts';

const screens = fileURLToPath(new URL('../../apps/web/dist', import.meta.url));

export const desktop = { width: 1366, height: 768 };
export const tablet = { width: 768, height: 1024 };

type StorageState = Awaited<ReturnType<BrowserContext['storageState']>>;

export type Service = Awaited<ReturnType<typeof service>>;

/** `ownPages`: people's own pages are served too, by a listener of their own. `tls`: it speaks TLS, and its browser trusts that. */
export async function service({
  at = '2026-11-25T08:40',
  staff = true,
  ownPages = false,
  tls,
}: { at?: string; staff?: boolean; ownPages?: boolean; tls?: Tls & { readonly authority: string } } = {}) {
  const clock = movableClock(at);
  let ownPageAddress: string | undefined;
  const server = await ownServer({ clock, staff, screens, ownPageAddress: () => ownPageAddress, ...(tls && { tls }) });
  const pages = ownPages
    ? await ownPageListener(server.atHand, {
        tls: undefined,
        behindProxy: false,
        onlyThisMachine: true,
        log: { level: 'warn' },
      })
    : undefined;
  ownPageAddress = await pages?.listen({ host: '127.0.0.1', port: 0 });
  const url = await server.app.listen({ host: '127.0.0.1', port: 0 });
  const browser: Browser = await launch({ trusts: tls?.authority });
  const contexts: BrowserContext[] = [];

  /** `keepsDay`: with the service worker that keeps the day on the device; without it a browser fetches everything anew. */
  async function visitor(
    viewport = desktop,
    storageState?: StorageState,
    { keepsDay = false, runsScripts = true }: { keepsDay?: boolean; runsScripts?: boolean } = {},
  ): Promise<Page> {
    const context = await browser.newContext({
      javaScriptEnabled: runsScripts,
      serviceWorkers: keepsDay ? 'allow' : 'block',
      viewport,
      locale: 'en-GB',
      timezoneId: 'Europe/London',
      ...(storageState === undefined ? {} : { storageState }),
    });
    contexts.push(context);
    const page = await context.newPage();
    // Only against what hangs: a loaded machine is slow, not wrong.
    page.setDefaultTimeout(60_000);
    page.on('pageerror', (error) => {
      throw error;
    });
    return page;
  }

  /** Cookies of those who have signed in once, so that a test with many pages does not sign in for each. */
  const sessions = new Map<Somebody, StorageState>();

  /** A page with this person signed in, at the given address. */
  async function signedIn(somebody: Somebody, path = '/', viewport = desktop): Promise<Page> {
    const before = sessions.get(somebody);
    const page = await visitor(viewport, before);
    await page.goto(`${url}${path}`);
    if (before === undefined) {
      await page.getByLabel('Username').fill(people[somebody].username);
      await page.getByLabel('Password').fill(password);
      await page.getByRole('button', { name: 'Sign in' }).click();
      await page.getByRole('navigation').first().waitFor();
      sessions.set(somebody, await page.context().storageState());
    }
    await page.getByRole('heading', { level: 1 }).waitFor();
    return page;
  }

  return {
    url,
    clock,
    server,
    visitor,
    signedIn,
    close: async () => {
      for (const context of contexts) await context.close();
      await browser.close();
      await pages?.close();
      await server.close();
    },
  };
}

/** Of the people in these tests. */
const familyNames = /Arkwright|Brindle|Ferreira|Lindqvist|Marchbanks|Marrow|Marsh|Nystrom|Quayle|Tranter/;

/** What every page must pass. With PICTURES set, a picture of it is kept for a person to look at; a picture takes half a second. */
export async function checked(page: Page, name: string, { settles = true, fits = true } = {}): Promise<void> {
  // Without a network the live updates keep trying: it never falls silent.
  if (settles) await page.waitForLoadState('networkidle');
  // A letter stands in a frame that runs no script, so axe cannot look inside: letters are checked as pages of their own.
  const violations = await accessibilityViolations(page, ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']);
  if (process.env['PICTURES'] !== undefined) await page.screenshot({ path: screenshotPath(name), fullPage: true });
  expect(violations.map((violation) => `${name}: ${violation}`)).toEqual([]);
  // The browser's history keeps it after the session is closed.
  expect(await page.title(), `${name}: a person’s name in the title`).not.toMatch(familyNames);
  const wider = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(wider, `${name} is wider than its screen by ${wider} px`).toBeLessThanOrEqual(0);
  if (fits) await fingersFit(page, name);
}
