/**
 * Somebody leaves: at once on this screen, at the server as soon as it hears of it. Until then this browser remembers that they
 * left, and lets nobody in by the session that is still open there.
 */
import { post } from './request.ts';
import { NotReached } from './server-problem.ts';

const mark = 'twelvemonth-left';
let inMemory = false;

/** A browser that keeps nothing remembers it until the page is loaded anew. */
function remember(left: boolean): void {
  inMemory = left;
  try {
    if (left) localStorage.setItem(mark, 'yes');
    else localStorage.removeItem(mark);
  } catch {
    return;
  }
}
function hasLeft(): boolean {
  try {
    return inMemory || localStorage.getItem(mark) !== null;
  } catch {
    return inMemory;
  }
}

const limitMilliseconds = 10_000;
let ending: Promise<void> | undefined;

async function endSession(): Promise<void> {
  try {
    await post('signOut', undefined, {}, AbortSignal.timeout(limitMilliseconds));
  } catch (error) {
    // Any answer of the server ends it: it knows of no session, or of none any more.
    if (error instanceof NotReached) return;
  }
  remember(false);
}

export async function leaveServer(): Promise<void> {
  remember(true);
  ending ??= endSession().finally(() => {
    ending = undefined;
  });
  return ending;
}

/** True: somebody left here, and the server has not heard of it. It is told first. */
export async function isLeftOpen(): Promise<boolean> {
  if (hasLeft()) await leaveServer();
  return hasLeft();
}

/** Somebody signs in: what was left open is ended first, so that its end does not end theirs. */
export async function beforeSignIn(): Promise<void> {
  await ending;
}
export const signedInAnew = (): void => remember(false);

/** Calls back when somebody leaves in another tab. */
export function onLeft(then: () => void): () => void {
  const hear = ({ key, newValue }: StorageEvent): void => {
    if (key === mark && newValue !== null) then();
  };
  window.addEventListener('storage', hear);
  return () => window.removeEventListener('storage', hear);
}
