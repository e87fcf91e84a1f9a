/** What the screens read, by name. The first part of a key says whose it is, so that a live update can find it. */
import { QueryCache, QueryClient, keepPreviousData, queryOptions } from '@tanstack/react-query';
import type { MeView } from '@twelvemonth/exchange';
import { isLeftOpen, signedInAnew } from './leaving.ts';
import { forgetLeftBehind } from './left-behind.ts';
import type { Asked, RouteName } from './paths.ts';
import { read } from './request.ts';
import { NotReached, isSignedOut } from './server-problem.ts';

export const queries = new QueryClient({
  queryCache: new QueryCache({
    onError: (error) => {
      if (isSignedOut(error)) signedOut();
    },
  }),
  defaultOptions: {
    queries: {
      // A device that calls itself offline may still reach a server on its own network: ask, and let the banner tell.
      networkMode: 'always',
      staleTime: 10_000,
      retry: (times, error) => error instanceof NotReached && !error.waited && times < 2,
      refetchOnWindowFocus: true,
    },
  },
});

/** Someone is at the desk. Forms being filled in stay; what this person may not see is forgotten, not only hidden. */
export function begin(person: MeView): void {
  signedInAnew();
  queries.setQueryData<MeView | null>(['me'], person);
  if (!person.may.includes('person')) {
    forgetLeftBehind();
    void queries.resetQueries({ predicate: ({ queryKey: [name] }) => name !== 'status' && name !== 'me' });
  }
  void queries.invalidateQueries();
}

/** Nobody is at the desk any more; what is on the screens stays in memory behind the sign-in form. */
export function signedOut(): void {
  queries.setQueryData<MeView | null>(['me'], null);
}

/** Lists over the whole register: fetched again behind the screen, never waited for. */
const wholeLists = new Set<unknown>([
  'people',
  'today',
  'recall',
  'aftercare',
  'sessions',
  'letters',
  'pharmacy',
  'workList',
  'adviceLine',
]);

/** So long it is waited for what the screen is about; on a network that fell silent meanwhile it follows later. */
const waitedForMilliseconds = 4000;

/** After something was written: what the screen is about is fetched before it goes on; the long lists follow. */
export async function fetchAgain(): Promise<void> {
  void queries.invalidateQueries({ predicate: ({ queryKey: [name] }) => wholeLists.has(name) });
  await Promise.race([
    queries.invalidateQueries({ predicate: ({ queryKey: [name] }) => !wholeLists.has(name) }),
    new Promise((resolve) => {
      setTimeout(resolve, waitedForMilliseconds);
    }),
  ]);
}

const asking = <Name extends RouteName>(name: Name, asked: Asked = {}) =>
  queryOptions({
    queryKey: [name, asked] as const,
    queryFn: ({ signal }) => read(name, asked, signal),
  });

export const status = queryOptions({
  queryKey: ['status'] as const,
  queryFn: ({ signal }) => read('status', {}, signal),
  refetchInterval: 30_000,
});

export const me = queryOptions({
  queryKey: ['me'] as const,
  queryFn: async ({ signal }): Promise<MeView | null> => {
    try {
      return (await isLeftOpen()) ? null : await read('me', {}, signal);
    } catch (error) {
      if (isSignedOut(error)) return null;
      throw error;
    }
  },
  staleTime: 60_000,
});

export const people = (unit: string | undefined) => ({
  ...asking('people', { unit, limit: 2000 }),
  placeholderData: keepPreviousData,
});
export const person = (patient: string) => asking('person', { patient });
export const readinessOn = (patient: string, on: string) => ({
  ...asking('readinessOn', { patient, on }),
  placeholderData: keepPreviousData,
});
export const bookingCheck = (patient: string, session: string) => asking('bookingCheck', { patient, session });
/** `on`: of another day than today. */
export const visit = (patient: string, on?: string) => asking('visit', { patient, on });
export const supports = (patient: string) => asking('supports', { patient });
export const signing = (patient: string) => asking('signing', { patient });
export const mySignature = () => asking('mySignature');
export const review = (patient: string) => asking('review', { patient });
export const deciding = (patient: string) => asking('deciding', { patient });
export const patientPack = (patient: string, asked: Asked) => ({
  ...asking('patientPack', { ...asked, patient }),
  placeholderData: keepPreviousData,
});
export const ownPage = (patient: string) => asking('ownPage', { patient });
export const letters = (unit: string | undefined) => asking('letters', { unit });
export const reminders = (unit: string | undefined) => asking('reminders', { unit });
export const lettersOfPerson = (patient: string) => asking('lettersOfPerson', { patient });
export const writtenLetter = (asked: Asked) => ({
  ...asking('writtenLetter', asked),
  placeholderData: keepPreviousData,
});
export const today = (unit: string | undefined) => ({ ...asking('today', { unit }), refetchInterval: 60_000 });
export const sessions = (unit: string | undefined, from?: string, until?: string) =>
  asking('sessions', { unit, from, until });
export const sessionPlanning = (id: string) => asking('sessionPlanning', { session: id });
export const session = (id: string) => asking('session', { session: id });
export const sessionDay = (id: string) => asking('sessionDay', { session: id });
export const fill = (unit: string) => ({ ...asking('fill', { unit }), staleTime: 0 });
export const standby = (session: string) => asking('standby', { session });
export const lookAhead = (unit: string | undefined) => asking('lookAhead', { unit });
export const adviceLine = (unit: string | undefined) => asking('adviceLine', { unit });
export const recall = (unit: string | undefined) => asking('recall', { unit });
export const workList = (unit: string | undefined, what: string) => asking('workList', { unit, what });
export const pharmacy = (unit: string | undefined) => asking('pharmacy', { unit });
export const aftercare = (unit: string | undefined) => asking('aftercare', { unit });
export const aftercareOfPerson = (patient: string) => asking('aftercareOfPerson', { patient });
export const cohort = (unit: string | undefined, year: string | undefined) => ({
  ...asking('cohort', { unit, year }),
  placeholderData: keepPreviousData,
});
export const comingBack = (patient: string) => asking('comingBack', { patient });
export const reactionReport = (patient: string, reaction: string) => asking('reactionReport', { patient, reaction });
export const stock = (unit: string | undefined) => asking('stock', { unit });
export const trace = (batch: string) => asking('trace', { batch });
export const batchesOfPerson = (patient: string) => asking('batchesOfPerson', { patient });
export const waitingRows = () => asking('waitingRows');
export const protocols = (unit: string | undefined) => asking('protocols', { unit });
export const settings = () => asking('settings');
