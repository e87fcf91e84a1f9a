/**
 * What a screen is called. The browser keeps the title of a page in its history long after the session is closed: no person's name
 * stands in it. Whoever is told of a screen is told its whole name.
 */
let whole = '';

/** `tab`: the same without a person's name, where there is one in it. */
export function callScreen(name: string, tab = name): void {
  whole = name;
  document.title = `${tab} · Twelvemonth`;
}

export const screenCalled = (): string => whole;
