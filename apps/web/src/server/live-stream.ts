/**
 * One event stream a browser: a browser keeps six connections to one server, and a stream in every tab would use them up. The tab
 * that is looked at holds it and tells the others. It is opened again whenever it may have fallen silent.
 */
import type { CommitEvent } from '@twelvemonth/exchange';
import { deviceMilliseconds, steadyMilliseconds } from '../clock.ts';
import { onReachedAgain } from './connection.ts';
import { paths } from './paths.ts';
import { tellTabs } from './tell-tabs.ts';

/** `missed`: what was fetched before then may be old, nobody listened; `is over`: the server wants no stream of this session. */
export type Heard =
  | { readonly what: 'commit'; readonly commit: CommitEvent }
  | { readonly what: 'missed'; readonly before: number }
  | { readonly what: 'is over' };

const name = 'twelvemonth-live';
const againMilliseconds = 4000;
/** The server says that it is there every 25 s. */
const silentMilliseconds = 60_000;

/** Holds a stream and tells what it says, until the function it returns is called. */
function holdStream(tell: (heard: Heard) => void): () => void {
  let source: EventSource | undefined;
  let later: ReturnType<typeof setTimeout> | undefined;
  let heardAt = 0;
  let wasOpen = false;
  const open = (): void => {
    clearTimeout(later);
    source?.close();
    heardAt = steadyMilliseconds();
    const began = deviceMilliseconds();
    const stream = new EventSource(paths.events);
    source = stream;
    const hear = (event: string, then: (message: MessageEvent<string>) => void): void =>
      stream.addEventListener(event, (message: MessageEvent<string>) => {
        heardAt = steadyMilliseconds();
        then(message);
      });
    hear('hello', () => {
      tell({ what: 'missed', before: wasOpen ? Infinity : began });
      wasOpen = true;
    });
    hear('alive', () => undefined);
    hear('commit', ({ data }) => tell({ what: 'commit', commit: JSON.parse(data) as CommitEvent }));
    stream.addEventListener('error', () => {
      // After an answer that is none of a stream (a proxy whose server is away) a browser does not try again by itself.
      if (stream.readyState !== EventSource.CLOSED || source !== stream) return;
      tell({ what: 'is over' });
      later = setTimeout(open, againMilliseconds);
    });
  };
  open();
  const watch = setInterval(() => {
    if (steadyMilliseconds() - heardAt > silentMilliseconds) open();
  }, againMilliseconds);
  const forget = onReachedAgain(open);
  return () => {
    forget();
    clearInterval(watch);
    clearTimeout(later);
    source?.close();
    source = undefined;
  };
}

/** Calls back with all that is heard in this browser; returns what ends it. */
export function listen(hear: (heard: Heard) => void): () => void {
  // Over a connection that the browser does not trust there are no locks: every tab for itself.
  if (navigator.locks === undefined) return holdStream(hear);
  const channel = new BroadcastChannel(name);
  channel.addEventListener('message', ({ data }: MessageEvent<Heard>) => hear(data));
  let ended = false;
  let release: (() => void) | undefined;
  let queued = false;
  const hold = async (steal: boolean): Promise<void> => {
    if (ended || release !== undefined || (queued && !steal)) return;
    queued ||= !steal;
    const given = Promise.withResolvers<void>();
    let close: (() => void) | undefined;
    const letGo = (): void => {
      if (release === given.resolve) release = undefined;
      close?.();
      close = undefined;
      given.resolve();
    };
    try {
      await navigator.locks.request(name, steal ? { steal } : {}, async () => {
        if (!steal) queued = false;
        if (ended || release !== undefined) return;
        release = given.resolve;
        close = holdStream((heard) => {
          hear(heard);
          tellTabs(channel, heard);
        });
        await given.promise;
      });
      letGo();
    } catch {
      // Another tab is looked at now and has taken it; it comes back when that one is closed.
      letGo();
      void hold(false);
    }
  };
  const take = (): void => void (document.visibilityState === 'visible' && hold(true));
  void hold(false);
  take();
  document.addEventListener('visibilitychange', take);
  return () => {
    ended = true;
    document.removeEventListener('visibilitychange', take);
    release?.();
    channel.close();
  };
}
