/**
 * Puts one random ledger to the engine and to the checker on ten consecutive days, and tells where they differ, as text
 * that can be pasted.
 */
import {
  type Day,
  type Protocol,
  type ProtocolSheet,
  type Readiness,
  type RequirementId,
  protocolFrom,
  readiness,
  recordOf,
  verdictOn,
} from '@twelvemonth/clinical';
import { dateText } from './dates.ts';
import { countingFacts } from './facts.ts';
import { type Case, caseOf } from './random-ledgers.ts';
import { requirementNames, requirements, together } from './requirements.ts';
import { unsettled } from './settled.ts';
import { viewOf } from './view.ts';
import { question, windowOf } from './window.ts';
import { worldOf } from './world.ts';

export type Difference = {
  readonly seed: number;
  readonly what: string;
  readonly asked: string;
  readonly engine: string;
  readonly checker: string;
  readonly text: string;
};

const ASKED_DAYS = 10;
/** Dates asked about, counted from the day of asking: near, around the validities, a year on. */
const spread = [0, 1, 3, 8, 21, 34, 55, 57, 90, 120, 200, 365];

const dateOr = (day: number | undefined): string => (day === undefined ? 'none' : dateText(day));

/** Everything compared, by name, as text: the same names in the same order from both sides. */
type Answers = Map<string, string>;

function compiled(sheet: ProtocolSheet): Protocol {
  const made = protocolFrom(sheet);
  if (!('protocol' in made)) throw new Error('the sheet has an empty number');
  return made.protocol;
}

function engineAnswers(c: Case, sheet: ProtocolSheet, today: number): Answers {
  const protocols = [{ from: -100_000, protocol: compiled(sheet) }];
  if (c.next !== undefined) protocols.push({ from: c.next.from, protocol: compiled(c.next.sheet) });
  const context = { protocols, calendar: c.calendar };
  const asked: Readiness = readiness(recordOf('patient/person', c.entries), context, today as Day);
  const answers: Answers = new Map();
  for (const ahead of spread) {
    const on = verdictOn(asked, (today + ahead) as Day);
    const day = dateText(today + ahead);
    answers.set(`${day} together`, on.verdict);
    for (const one of on.requirements) {
      answers.set(`${day} ${one.requirement}`, one.verdict);
      if (one.requirement === 'kidney-function') answers.set(`${day} near the limit`, String(one.nearLimit));
    }
  }
  const { window, noWindow } = asked;
  answers.set('first', dateOr(window?.first));
  answers.set('last', window === undefined ? 'none' : dateOr(window.last));
  answers.set('certain', String(window?.certain));
  const draws = window === undefined ? [] : asked.nextSteps.filter((step) => step.kind === 'draw');
  answers.set(
    'draws',
    draws.map((step) => `${dateText(step.earliest)} ${(step.tests ?? []).toSorted().join(', ')}`).join('; '),
  );
  answers.set(
    'weigh',
    window === undefined
      ? ''
      : asked.nextSteps
          .filter((step) => step.kind === 'weigh')
          .map((step) => dateText(step.earliest))
          .join('; '),
  );
  answers.set(
    'loading ends',
    window === undefined
      ? ''
      : asked.nextSteps
          .flatMap((step) =>
            step.kind === 'loading dose' && step.doses !== undefined ? [dateText(step.doses.last)] : [],
          )
          .join('; '),
  );
  answers.set('no window', String(noWindow !== undefined));
  answers.set(
    'needs',
    (noWindow?.needs ?? [])
      .map((need) => need.requirement)
      .toSorted()
      .join(', '),
  );
  answers.set('if settled', dateOr(noWindow?.ifSettled?.first));
  return answers;
}

/** "not said" where the page does not say what to expect: then the two are not compared. */
const NOT_SAID = 'not said';

function checkerAnswers(c: Case, today: number, engine: Answers): Answers {
  const world = worldOf(c.sheet, c.calendar);
  const facts = countingFacts(c.entries);
  const known = facts.filter((fact) => fact.on <= today);
  const now = viewOf(world, known, today);
  const later = c.next === undefined ? now : viewOf(worldOf(c.next.sheet, c.calendar), known, today);
  const answers: Answers = new Map();
  for (const ahead of spread) {
    const date = dateText(today + ahead);
    const view = c.next !== undefined && today + ahead >= c.next.from ? later : now;
    const all = requirementNames.map((name) => requirements[name](view, today + ahead));
    answers.set(`${date} together`, together(all));
    requirementNames.forEach((name: RequirementId, index) => answers.set(`${date} ${name}`, all[index]?.verdict ?? ''));
    answers.set(`${date} near the limit`, String(requirements['kidney-function'](view, today + ahead).near === true));
  }
  // Across two versions only the verdicts are compared: whose numbers a step's own dates follow the page leaves open.
  if (c.next !== undefined) return answers;
  const window = windowOf(question(world, facts, today));
  answers.set('first', dateOr(window?.first));
  answers.set('last', window === undefined ? 'none' : dateOr(window.last));
  answers.set('certain', String(window?.certain));
  answers.set(
    'draws',
    window?.plan.draw === undefined
      ? ''
      : `${dateText(window.plan.draw.on)} ${window.plan.draw.tests.toSorted().join(', ')}`,
  );
  answers.set('weigh', window?.plan.weighOn === undefined ? '' : dateText(window.plan.weighOn));
  answers.set('loading ends', window?.plan.loading === undefined ? '' : dateText(window.plan.loading.at(-1) ?? today));
  answers.set('no window', String(window === undefined));
  if (window !== undefined) {
    answers.set('needs', '');
    answers.set('if settled', 'none');
    return answers;
  }
  // Whatever stands in the way by itself must be named. What else is named where things only together leave no day (a
  // prescription that ends too soon) the page leaves open: "if settled" is compared where both name the same.
  const { alone, blocked, ifSettled } = unsettled(world, facts, today);
  const named = new Set((engine.get('needs') ?? '').split(', '));
  const missing = alone.filter(({ requirement }) => !named.has(requirement)).map(({ requirement }) => requirement);
  answers.set('needs', missing.length === 0 ? NOT_SAID : `also ${missing.join(', ')}`);
  const same = blocked.length === named.size && blocked.every(({ requirement }) => named.has(requirement));
  answers.set('if settled', ifSettled === NOT_SAID || !same ? NOT_SAID : dateOr(ifSettled?.first));
  return answers;
}

/** What one ledger came to: where the two differ, and what was compared, so that agreement about nothing is seen. */
export type Comparison = { readonly differences: readonly Difference[]; readonly compared: readonly string[] };

/** `alter` gives the engine another rule sheet than the checker: only to see that the comparison would notice. */
export const differencesOf = (seed: number, alter?: (sheet: ProtocolSheet) => ProtocolSheet): readonly Difference[] =>
  compare(seed, alter).differences;

export function compare(seed: number, alter: (sheet: ProtocolSheet) => ProtocolSheet = (sheet) => sheet): Comparison {
  const c = caseOf(seed);
  const sheet = alter(c.sheet);
  const differences: Difference[] = [];
  const compared: string[] = [];
  for (let today = c.from; today < c.from + ASKED_DAYS; today += 1) {
    const asked = dateText(today);
    const text = `; seed ${seed}${c.setting === '' ? '' : `; ${c.setting}`}\n${c.text}\nreadiness on ${asked} asked on ${asked}`;
    let engine: Answers;
    try {
      engine = engineAnswers(c, sheet, today);
    } catch (error) {
      differences.push({ seed, what: 'the engine stopped', asked, engine: String(error), checker: '', text });
      continue;
    }
    const checker = checkerAnswers(c, today, engine);
    compared.push(...sortsOf(checker));
    for (const [what, expected] of checker) {
      const said = engine.get(what);
      if (expected !== NOT_SAID && said !== expected) {
        differences.push({ seed, what, asked, engine: said ?? 'nothing', checker: expected, text });
      }
    }
  }
  return { differences, compared };
}

/** What sort of answer it was, for counting. */
function sortsOf(answers: Answers): string[] {
  const said = (what: string): string => answers.get(what) ?? '';
  const settled = said('if settled');
  if (!answers.has('first')) return ['verdicts only: two versions of the rule sheet'];
  if (said('first') === 'none') {
    return [
      'no window',
      ...(settled === NOT_SAID ? [] : [settled === 'none' ? 'none even if settled' : 'a window if settled']),
    ];
  }
  const sorts = ['window', said('certain') === 'true' ? 'certain' : 'if good'];
  if (said('draws') !== '') sorts.push('with a draw');
  if (said('weigh') !== '') sorts.push('with a weighing');
  if (said('loading ends') !== '') sorts.push('with a loading');
  return sorts;
}

export function describe(difference: Difference): string {
  const { what, asked, engine, checker, text } = difference;
  return `${what}, asked on ${asked}: the engine says ${engine === '' ? 'none' : engine}, the checker ${checker === '' ? 'none' : checker}\n${text}\n`;
}
