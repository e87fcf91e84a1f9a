/** Targets at the chairside: what a gloved finger presses is at least 48 px high and wide (the project's own rule; WCAG 2.2 asks for 24). */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

const leastPixels = 48;

/** Every button, tick, radio and field of the step on the screen; links inside a sentence are text. A tick is as large as its label. */
export async function fingersFit(page: Page, name: string): Promise<void> {
  const small = await page
    .getByRole('main')
    .getByRole('region')
    .first()
    .evaluate((step, least) => {
      const targets = step.querySelectorAll('button, input, select, textarea, summary');
      return [...targets].flatMap((target) => {
        const box = (target.closest('label') ?? target).getBoundingClientRect();
        const words = (target.closest('label') ?? target).textContent?.trim() ?? '';
        const shown = box.width > 0 && box.height > 0;
        return shown && Math.min(box.width, box.height) < least - 0.5
          ? [`${target.tagName} "${words.slice(0, 40)}": ${Math.round(box.width)} x ${Math.round(box.height)}`]
          : [];
      });
    }, leastPixels);
  expect(small, `${name}: too small for a finger`).toEqual([]);
}
