/** What this device is called, in the notes and at the other screens: made once, kept by the browser. Not a secret, proves nothing. */
const kept = 'twelvemonth-device';
const charactersShown = 4;

/** In memory where the browser keeps nothing: the device is then another one after a reload. */
let id: string | undefined;

function deviceId(): string {
  if (id !== undefined) return id;
  try {
    id = localStorage.getItem(kept) ?? crypto.randomUUID();
    localStorage.setItem(kept, id);
  } catch {
    id ??= crypto.randomUUID();
  }
  return id;
}

export function thisDevice(): { readonly id: string; readonly name: string } {
  const own = deviceId();
  return { id: own, name: `screen ${own.slice(0, charactersShown).toUpperCase()}` };
}
