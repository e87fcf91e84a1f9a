/** Targets at the chairside: what a gloved finger presses is at least 48 px high and wide (the project's own rule; WCAG 2.2 asks for 24). */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

const leastPixels = 48;

/**
 * Everything on the screen that can be pressed, its frame too. A tick is as large as its label. A link in a paragraph that has
 * words of its own is text; one in a list, a table or alone on its line is pressed, and has the size.
 */
export async function fingersFit(page: Page, name: string): Promise<void> {
  const small = await page.evaluate((least) => {
    const isText = (target: Element): boolean => {
      const paragraph = target.matches('a, button') ? target.closest('p, dd') : null;
      if (paragraph === null) return false;
      const words = (paragraph.textContent ?? '').length;
      const links = [...paragraph.querySelectorAll('a, button')].reduce(
        (sum, link) => sum + (link.textContent ?? '').length,
        0,
      );
      return words > links + 8; // a comma or a bracket makes no sentence
    };
    const targets = document.querySelectorAll('a[href], button, input, select, textarea, summary, [role="option"]');
    return [...targets].flatMap((target) => {
      const pressed =
        (target.matches('[type=radio], [type=checkbox], [type=file]') && target.closest('label')) || target;
      const box = pressed.getBoundingClientRect();
      const shown = target.checkVisibility({ visibilityProperty: true, contentVisibilityAuto: false });
      // Shown only to those who come by keyboard.
      const isOutOfSight = target.matches('.unseen') || box.bottom <= 0;
      return shown && !isOutOfSight && !isText(target) && Math.min(box.width, box.height) < least - 0.5
        ? [
            `${target.tagName} "${(pressed.textContent ?? '').trim().slice(0, 40)}": ${Math.round(box.width)} x ${Math.round(box.height)}`,
          ]
        : [];
    });
  }, leastPixels);
  expect(small, `${name}: too small for a finger`).toEqual([]);
}
