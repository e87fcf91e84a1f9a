import type { Page } from 'playwright-core';

/** The device's own clock is put forward by a day; the server's is not. */
export async function putDayAhead(page: Page): Promise<void> {
  const now = await page.evaluate<number>('Date.now()');
  await page.clock.setFixedTime(now + 24 * 60 * 60 * 1000);
}
