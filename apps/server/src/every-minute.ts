/** Something done at once and again every minute while the server runs, one turn at a time. */

const everyMilliseconds = 60_000;

/** Returns how to stop: it waits for the turn that is under way. What goes wrong is said once, and tried again. */
export function everyMinute(
  turn: (isStopping: () => boolean) => Promise<void>,
  sayTrouble: (error: unknown) => void,
): () => Promise<void> {
  let said = false;
  let stopping = false;
  let underWay: Promise<void> | undefined;
  async function one(): Promise<void> {
    try {
      await turn(() => stopping);
    } catch (error) {
      if (!said) sayTrouble(error);
      said = true;
    }
  }
  const next = (): void => {
    underWay ??= one().finally(() => {
      underWay = undefined;
    });
  };
  next();
  const timer = setInterval(next, everyMilliseconds);
  timer.unref();
  return async () => {
    stopping = true;
    clearInterval(timer);
    await underWay;
  };
}
