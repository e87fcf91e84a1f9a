/**
 * One attempt at an act. Its id is made once and kept until the server has answered that it is recorded: a double tap, a lost
 * answer and a new sign-in all send the same id, and the server records it once. Another act of the same form has another id.
 */
import type { ActAnswer, ActBody } from '@twelvemonth/exchange';
import { useEffect, useRef, useState } from 'react';
import { useActingRole } from '../frame/acting-role.ts';
import { inSummary } from '../paper/refusal-words.ts';
import { screenCalled } from '../paper/screen-name.ts';
import { leaveBehind } from './left-behind.ts';
import { noteOwnEntries, withOwnEntries } from './own-entries.ts';
import { fetchAgain, signedOut } from './queries.ts';
import { type Person, letStepWait, mayWait, waitsForSomebody } from '../offline/without-network.ts';
import { thisDevice } from '../offline/this-device.ts';
import { sendWaiting } from '../offline/send-waiting.ts';
import { waitingNow } from '../offline/waiting.ts';
import { post } from './request.ts';
import { type Refusal, NotReached, ServerProblem, isOtherContent, isReadOnly, isSignedOut } from './server-problem.ts';

export type Signature = NonNullable<ActBody['signedBy']>;
/** The last seq of each ledger that stood on the screen, by subject. */
export type Seen = Readonly<Record<string, number>>;
export type Sending = {
  /** Another person signs this one act at this screen. */
  readonly signedBy?: Signature;
  /** Goes on here with a dose that another device holds. */
  readonly takesOver?: true;
};

export type Attempt = {
  readonly send: (act: ActBody['act'], sending?: Sending) => Promise<ActAnswer | undefined>;
  readonly busy: boolean;
  readonly refusals: readonly Refusal[];
  /** A sentence for what went wrong beside the refusals, with the number to quote. */
  readonly trouble: { readonly says: string; readonly quote?: string } | undefined;
  readonly missed: readonly ServerProblem['missed'][number][];
  readonly answer: ActAnswer | undefined;
  /** Set where the server only asks whether what was typed is right: sends it again, with what it asked confirmed. */
  readonly confirm: (() => void) | undefined;
  /** Set where another device holds the dose: sends it again, taking it over. */
  readonly takeOver: (() => void) | undefined;
  /** Set where the screen asks who signs: sends it again, signed. */
  readonly toSign: { readonly patient: string; readonly send: (signedBy: Signature) => void } | undefined;
};

const isWaitingFor = ({ patient }: Person): boolean =>
  patient !== undefined && waitingNow().some((one) => one.patient === patient);

/** What needs somebody here before anything later of the same person is sent. Nothing later goes round it but a pause. */
const needsSomebody =
  'Something written on this device about this person is not in the notes yet and waits for somebody: settle it first (beside your name, above). Nothing is recorded.';

const gotThrough: Outcome = {
  refusals: [],
  trouble: {
    says: 'What you pressed before was recorded after all; its answer was lost on the way. Read what the notes say now, then press again if this still has to be written.',
  },
  missed: [],
  answer: undefined,
};

const same = (a: Seen | undefined, b: Seen | undefined): boolean => JSON.stringify(a) === JSON.stringify(b);

const nothing = { refusals: [], trouble: undefined, missed: [], answer: undefined } as const;
type Unsigned = { readonly patient: string; readonly act: ActBody['act']; readonly confirmed: readonly string[] };
type Outcome = Pick<Attempt, 'refusals' | 'trouble' | 'missed' | 'answer'> & { readonly unsigned?: Unsigned };

/** The screen asks who signs, or what was given as an answer to that is not right. */
function asksToSign(error: unknown, act: ActBody['act'], asked: boolean): boolean {
  if (!(error instanceof ServerProblem) || act.name === 'second check') return false;
  return (error.problem.refusals ?? []).some(
    ({ name }) => name === 'signature-needed' || (asked && (name === 'signature-not-proven' || name === 'pin-locked')),
  );
}

function outcomeOf(error: unknown, signedByOther: boolean): Outcome {
  if (error instanceof NotReached) {
    return {
      ...nothing,
      trouble: { says: 'The server cannot be reached. Nothing is lost: press again when it is back.' },
    };
  }
  if (isSignedOut(error) && !signedByOther) {
    signedOut();
    return {
      ...nothing,
      trouble: { says: 'You were signed out. Sign in and press again; what you entered is still here.' },
    };
  }
  if (error instanceof ServerProblem) {
    const { problem, missed } = error;
    const refusals = problem.refusals ?? [];
    const says = problem.detail === undefined ? problem.title : `${problem.title}. ${problem.detail}`;
    const trouble =
      refusals.length > 0
        ? undefined
        : { says, ...(problem.instance === undefined ? {} : { quote: problem.instance }) };
    return { ...nothing, refusals, missed, trouble };
  }
  throw error;
}

/** What stands against it in one reading, for whoever is no longer at the form. */
const inWords = (error: unknown, { refusals, trouble, missed }: Outcome): readonly string[] => {
  if (error instanceof NotReached) {
    return ['The server could not be reached: look there whether it is recorded before you write it again.'];
  }
  return [
    ...(trouble === undefined
      ? []
      : [`${trouble.says}${trouble.quote === undefined ? '' : ` Number to quote: ${trouble.quote}.`}`]),
    ...refusals.map((refusal) => `${inSummary(refusal)}.`.replace(/([.?!])\.$/, '$1')),
    ...missed.map(({ text, by }) => `Written meanwhile: ${text} (${by}).`),
  ];
};

const addressNow = (): string => `${window.location.pathname}${window.location.search}`;

/**
 * `seen` is taken when the form opens and kept while it is filled in, however often the screen behind it is refreshed: what
 * others write meanwhile is told, once, before it can be written over.
 */
export function useAct(
  onDone?: (answer: Pick<ActAnswer, 'says'>) => void,
  seen?: Seen,
  /** A step at the chair of this person, or a call: without a network it waits on this device. */
  waitsFor?: Person,
): Attempt {
  const [opened, setOpened] = useState({ seen, told: false });
  if (opened.told && !same(opened.seen, seen)) setOpened({ seen, told: false });
  const attempted = useRef<{ readonly id: string; readonly name: string }>(undefined);
  const inFlight = useRef(false);
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Outcome>(nothing);
  const onScreen = useRef(true);
  useEffect(() => {
    onScreen.current = true;
    return () => {
      onScreen.current = false;
    };
  }, []);
  const { role } = useActingRole();
  const asked = useRef<{ act: ActBody['act']; sending: Sending; confirmed: readonly string[] }>(undefined);
  const send = async (act: ActBody['act'], sending: Sending = {}, confirmed: readonly string[] = []) => {
    const { signedBy } = sending;
    if (inFlight.current) return undefined;
    asked.current = { act, sending, confirmed };
    inFlight.current = true;
    setBusy(true);
    if (attempted.current?.name !== act.name) attempted.current = { id: crypto.randomUUID(), name: act.name };
    const pressedAt = {
      id: attempted.current.id,
      address: addressNow(),
      screen: screenCalled(),
    };
    const gone = (): boolean => !onScreen.current || addressNow() !== pressedAt.address;
    const goesOn = (says: Pick<ActAnswer, 'says'>): void => {
      // Who has gone elsewhere by now is not taken away from there; a form that stands over every screen goes on.
      if (onScreen.current || addressNow() === pressedAt.address) onDone?.(says);
    };
    const body = {
      id: attempted.current.id,
      act: confirmed.length === 0 ? act : ({ ...act, confirms: confirmed } as ActBody['act']),
      ...(role === undefined || signedBy !== undefined ? {} : { role }),
      device: { ...thisDevice(), ...(sending.takesOver === true ? { takesOver: true as const } : {}) },
      // Who sees trouble stops the drip with the first press, whatever others wrote meanwhile.
      ...(opened.seen === undefined || act.name === 'pause infusion' ? {} : { seen: withOwnEntries(opened.seen) }),
    };
    try {
      // What was written before, for the same person, goes first; who sees trouble stops the drip whatever waits.
      if (waitsFor !== undefined && act.name !== 'pause infusion' && isWaitingFor(waitsFor)) {
        await sendWaiting();
        if (isWaitingFor(waitsFor)) throw new NotReached('something written before still waits');
      }
      const answer = await post('act', { ...body, ...(signedBy === undefined ? {} : { signedBy }) });
      attempted.current = undefined;
      noteOwnEntries(answer.entries);
      setOutcome({ ...nothing, answer });
      setOpened((before) => ({ ...before, told: true }));
      await fetchAgain();
      goesOn(answer);
      return answer;
    } catch (error) {
      if (waitsFor !== undefined && (error instanceof NotReached || (isReadOnly(error) && mayWait(act)))) {
        const behind = act.name !== 'pause infusion' && waitsForSomebody(waitsFor);
        const says = behind && !mayWait(act) ? needsSomebody : await letStepWait(body, waitsFor);
        if (says === undefined) {
          attempted.current = undefined;
          setOutcome(nothing);
          goesOn({
            says: behind
              ? 'Kept on this device, not in the notes yet: it waits behind what was written here before and waits for somebody.'
              : 'Kept on this device, not in the notes yet: it is sent when the network is back.',
          });
        } else {
          setOutcome({ ...nothing, trouble: { says } });
          if (gone()) leaveBehind({ ...pressedAt, says: [says] });
        }
        return undefined;
      }
      if (isOtherContent(error)) {
        attempted.current = undefined;
        noteOwnEntries(error.wrote);
        setOutcome(gotThrough);
        if (gone()) leaveBehind({ ...pressedAt, says: inWords(error, gotThrough) });
        setOpened((before) => ({ ...before, told: true }));
        await fetchAgain();
        return undefined;
      }
      const asked = outcome.unsigned !== undefined;
      const unsigned =
        'patient' in act && asksToSign(error, act, asked) ? { patient: act.patient, act, confirmed } : undefined;
      const came = outcomeOf(error, signedBy !== undefined);
      setOutcome({ ...came, ...(unsigned === undefined ? {} : { unsigned }) });
      if (gone()) leaveBehind({ ...pressedAt, says: inWords(error, came) });
      // What others wrote is fetched, so that pressing again is said with it seen.
      if (error instanceof ServerProblem && error.missed.length > 0) {
        setOpened((before) => ({ ...before, told: true }));
        await fetchAgain();
      }
      return undefined;
    } finally {
      inFlight.current = false;
      setBusy(false);
    }
  };
  const { refusals } = outcome;
  const onlyAsked = refusals.length > 0 && refusals.every(({ name }) => name === 'is-it-right');
  const confirm = (): void => {
    const last = asked.current;
    if (last !== undefined) void send(last.act, last.sending, [...last.confirmed, ...refusals.map(({ says }) => says)]);
  };
  const onlyHeld = refusals.length > 0 && refusals.every(({ name }) => name === 'held-elsewhere');
  const takeOver = (): void => {
    const last = asked.current;
    if (last !== undefined) void send(last.act, { ...last.sending, takesOver: true }, last.confirmed);
  };
  const unsigned = outcome.unsigned;
  const toSign =
    unsigned === undefined
      ? undefined
      : {
          patient: unsigned.patient,
          send: (signedBy: Signature) =>
            void send(unsigned.act, { ...asked.current?.sending, signedBy }, unsigned.confirmed),
        };
  return {
    toSign,
    send: (act, sending) => send(act, sending),
    busy,
    ...outcome,
    confirm: onlyAsked ? confirm : undefined,
    takeOver: onlyHeld ? takeOver : undefined,
  };
}
