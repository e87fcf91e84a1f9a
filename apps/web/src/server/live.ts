/** What others write. An event is a hint: what it touches is fetched again, nothing is taken from the event itself. */
import type { CommitEvent } from '@twelvemonth/exchange';
import { useEffect } from 'react';
import { copyVisitOf } from '../offline/keep-day.ts';
import { type Heard, listen } from './live-stream.ts';
import { me, queries } from './queries.ts';

/** Lists are fetched again at most this often, however fast others write. */
const listsEveryMilliseconds = 1500;

const listNames = new Set([
  'sessionDay',
  'stock',
  'trace',
  'pharmacy',
  'workList',
  'people',
  'today',
  'sessions',
  'session',
  'recall',
  'aftercare',
  'adviceLine',
  'waitingRows',
  'bookingCheck',
]);
/** What a batch has to do with: its packs may be prepared, or run, at a chair. */
const stockNames = new Set(['stock', 'trace', 'batchesOfPerson', 'today', 'visit']);
const unitNames = new Set(['stock', 'status', 'settings', 'protocols', 'flips', 'today', 'sessions', 'pharmacy']);

function fetchNamed(names: ReadonlySet<string>): void {
  void queries.invalidateQueries({ predicate: ({ queryKey: [name] }) => typeof name === 'string' && names.has(name) });
}

/** What happened while nobody listened is not replayed. */
function fetchOlderThan(before: number): void {
  void queries.invalidateQueries({
    predicate: ({ queryKey: [name], state }) =>
      state.dataUpdatedAt > 0 && state.dataUpdatedAt <= before && name !== 'me' && name !== 'status',
  });
}

function touched(event: CommitEvent): void {
  for (const { subject } of event.subjects) {
    const [kind, id] = subject.split('/');
    if (kind === 'patient') {
      copyVisitOf(id ?? '');
      void queries.invalidateQueries({
        predicate: ({ queryKey: [, asked] }) =>
          typeof asked === 'object' && asked !== null && 'patient' in asked && asked.patient === id,
      });
    }
    // A list that was looked at before is opened as it is now: who acts on it has seen the newest.
    if (kind === 'session') {
      void queries.invalidateQueries({
        predicate: ({ queryKey: [, asked] }) =>
          typeof asked === 'object' && asked !== null && 'session' in asked && asked.session === id,
        refetchType: 'all',
      });
    }
    if (kind === 'unit' || kind === 'protocol') fetchNamed(unitNames);
    if (kind === 'batch') fetchNamed(stockNames);
  }
}

export function useLive(signedIn: boolean): void {
  useEffect(() => {
    if (!signedIn) return;
    let resting: ReturnType<typeof setTimeout> | undefined;
    let missed = false;
    /** At once, then not again for a while: in a quiet hour what one writes the others see at once. */
    const lists = (): void => {
      missed = resting !== undefined;
      if (missed) return;
      fetchNamed(listNames);
      resting = setTimeout(() => {
        resting = undefined;
        if (missed) lists();
      }, listsEveryMilliseconds);
    };
    const hear = (heard: Heard): void => {
      if (heard.what === 'commit') {
        touched(heard.commit);
        lists();
      } else if (heard.what === 'missed') fetchOlderThan(heard.before);
      // Somebody may have left in another tab.
      else void queries.invalidateQueries({ queryKey: me.queryKey });
    };
    const end = listen(hear);
    return () => {
      clearTimeout(resting);
      end();
    };
  }, [signedIn]);
}
