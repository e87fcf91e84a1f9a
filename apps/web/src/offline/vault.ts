/**
 * What this device keeps for the hours without a network, in IndexedDB and sealed with a key that no script can take out of the
 * browser: the answers of one day, and the acts that wait. Screens and service worker share it. Names in it are addresses and ids.
 */
const places = ['answers', 'acts', 'keys'] as const;
type Place = Exclude<(typeof places)[number], 'keys'>;
type Sealed = { readonly iv: Uint8Array<ArrayBuffer>; readonly data: ArrayBuffer };

const settled = async <Value>(request: IDBRequest<Value>): Promise<Value> =>
  new Promise((resolve, reject) => {
    request.addEventListener('success', () => resolve(request.result));
    request.addEventListener('error', () => reject(request.error ?? new Error('the browser keeps nothing')));
  });

async function opened(): Promise<IDBDatabase> {
  const request = indexedDB.open('twelvemonth', 1);
  request.addEventListener('upgradeneeded', () => {
    for (const place of places) request.result.createObjectStore(place);
  });
  return settled(request);
}

/** Runs on one place and closes again, so that no open connection ever blocks another. */
async function within<Value>(
  place: (typeof places)[number],
  mode: IDBTransactionMode,
  work: (store: IDBObjectStore) => IDBRequest<Value>,
): Promise<Value> {
  const database = await opened();
  try {
    return await settled(work(database.transaction(place, mode).objectStore(place)));
  } finally {
    database.close();
  }
}

async function key(): Promise<CryptoKey> {
  const kept = await within<CryptoKey | undefined>('keys', 'readonly', (store) => store.get('key'));
  if (kept !== undefined) return kept;
  const made = await crypto.subtle.generateKey({ name: 'AES-GCM', length: 256 }, false, ['encrypt', 'decrypt']);
  // Two at once: the first one stays.
  await within('keys', 'readwrite', (store) => store.add(made, 'key')).catch(() => undefined);
  return (await within<CryptoKey | undefined>('keys', 'readonly', (store) => store.get('key'))) ?? made;
}

async function sealed(value: unknown): Promise<Sealed> {
  const iv = crypto.getRandomValues(new Uint8Array(12));
  const text = new TextEncoder().encode(JSON.stringify(value));
  return { iv, data: await crypto.subtle.encrypt({ name: 'AES-GCM', iv }, await key(), text) };
}

export async function keep(place: Place, name: string, value: unknown): Promise<void> {
  const one = await sealed(value);
  await within(place, 'readwrite', (store) => store.put(one, name));
}

/** Keeps an answer only while another is kept: what arrives after the wiping is not written, however late. */
export async function keepBeside(beside: string, name: string, value: unknown): Promise<void> {
  const one = await sealed(value);
  await within('answers', 'readwrite', (store) => {
    const found = store.getKey(beside);
    found.addEventListener('success', () => {
      if (found.result !== undefined) store.put(one, name);
    });
    return found;
  });
}

async function unsealed<Value>(one: Sealed | undefined): Promise<Value | undefined> {
  if (one === undefined) return undefined;
  try {
    const text = await crypto.subtle.decrypt({ name: 'AES-GCM', iv: one.iv }, await key(), one.data);
    return JSON.parse(new TextDecoder().decode(text)) as Value;
  } catch {
    // Sealed with a key that is gone: as good as wiped.
    return undefined;
  }
}

export const kept = async <Value>(place: Place, name: string): Promise<Value | undefined> =>
  unsealed(await within<Sealed | undefined>(place, 'readonly', (store) => store.get(name)));

export async function everyKept<Value>(place: Place): Promise<Value[]> {
  const found = await within<Sealed[]>(place, 'readonly', (store) => store.getAll());
  const all = await Promise.all(found.map(async (one) => unsealed<Value>(one)));
  return all.flatMap((one) => one ?? []);
}

export const forget = async (place: Place, name: string): Promise<void> =>
  within(place, 'readwrite', (store) => store.delete(name));

/** Wipes the answers; where no act waits, the key too, so that nothing left on the disk can be read again. */
export async function wipeAnswers(): Promise<void> {
  await within('answers', 'readwrite', (store) => store.clear());
  const waiting = await within('acts', 'readonly', (store) => store.count());
  if (waiting === 0) await within('keys', 'readwrite', (store) => store.clear());
}
