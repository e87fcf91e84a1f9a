/** What a person does at a screen: fills a field by its label, picks an answer, ticks, presses. */
import type { Locator, Page } from 'playwright-core';

export type Hands = ReturnType<typeof hands>;

/** A field that may be left open says "(optional)" after its label. */
const label = (words: string): RegExp =>
  new RegExp(`^${words.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`)}( \\(\\w+\\))?$`);

/** `place`: the page, or the part of it in which to look. */
export function hands(place: Page | Locator) {
  const group = (name: string | RegExp): Locator =>
    place.getByRole('group', { name: typeof name === 'string' ? label(name) : name });
  return {
    fill: (field: string, value: string): Promise<void> => place.getByLabel(label(field)).fill(value),
    /** A measured value with the unit it was printed with. */
    measure: async (field: string, value: string, unit: string): Promise<void> => {
      await place.getByLabel(`${field}: value`, { exact: true }).fill(value);
      await group(field).getByRole('radio', { name: unit, exact: true }).check();
    },
    pick: (question: string | RegExp, answer: string): Promise<void> =>
      group(question).getByRole('radio', { name: answer, exact: true }).check(),
    choose: (field: string, option: string): Promise<string[]> =>
      place.getByLabel(label(field)).selectOption({ label: option }),
    tick: (name: string): Promise<void> => place.getByRole('checkbox', { name, exact: true }).check(),
    tickIn: (question: string, name: string): Promise<void> =>
      group(question).getByRole('checkbox', { name, exact: true }).check(),
    press: (name: string | RegExp): Promise<void> =>
      place.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name }).click(),
    follow: (name: string | RegExp): Promise<void> =>
      place
        .getByRole('link', typeof name === 'string' ? { name, exact: true } : { name })
        .first()
        .click(),
    /** Opens what is folded away behind these words. */
    unfold: (words: string): Promise<void> => place.locator('summary').filter({ hasText: words }).click(),
    sees: (words: string | RegExp): Promise<void> => place.getByText(words).first().waitFor(),
  };
}

/** Signs in as whoever the page belongs to from then on. */
export async function signIn(page: Page, username: string, password: string): Promise<void> {
  const { fill, press } = hands(page);
  await fill('Username', username);
  await fill('Password', password);
  await press('Sign in');
  await page.getByRole('navigation', { name: 'Screens' }).waitFor();
}
