/** What axe finds against a page. It is put into each document once and hands back the violations alone: its full answer costs more than the look. */
import axe from 'axe-core';
import type { Page } from 'playwright-core';

type Axe = { readonly run: (where: axe.ElementContext, how: axe.RunOptions) => Promise<axe.AxeResults> };

/** `within`: the tags of the rules to apply, every default rule where nothing is said. Frames are not looked into. */
export async function accessibilityViolations(page: Page, within?: readonly string[]): Promise<readonly string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source);
  return page.evaluate(
    async (how) => {
      const { violations } = await (window as unknown as { axe: Axe }).axe.run({ exclude: ['iframe'] }, how);
      return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`);
    },
    {
      resultTypes: ['violations'] as const,
      ...(within === undefined ? {} : { runOnly: { type: 'tag' as const, values: [...within] } }),
    } satisfies axe.RunOptions,
  );
}
