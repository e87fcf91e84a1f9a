/** The interval since the last dose that counts, by the calendar and never by 365 days (docs/readiness.md R6). */
import { type Day, addMonths, shortDate } from '../calendar/day.ts';
import { type Doses, noDoses } from '../course/doses.ts';
import { type IntervalMonths, intervalMonthsOf } from '../course/interval-months.ts';
import { isDenosumab } from '../protocol/medicines.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Threshold, Working } from '../readiness/working.ts';
import type { Evidence } from './evidence.ts';
import { type Judge, type Requirement, always, judgement, readyPath } from './requirement.ts';

const reads = ['doses', 'prescription', 'lastGiven', 'otherProductDoses'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

const lastDenosumabOf = ({ lastGiven }: Read): Day | undefined => {
  let last: Day | undefined;
  for (const [medicine, { dose }] of lastGiven)
    if (isDenosumab(medicine) && (last === undefined || dose.on > last)) last = dose.on;
  return last;
};

const none: readonly string[] = [];

function inputsOf({ counting, undecided, last }: Doses): Working['inputs'] {
  const apart = last === undefined || counting.includes(last) || undecided.includes(last) ? [] : [last];
  return [...counting, ...undecided, ...apart].map(({ on, id, body }) => ({
    label: body.partMilliliters === undefined ? 'dose' : `part dose, ${body.partMilliliters} mL`,
    text: body.medicine,
    on,
    entry: id,
  }));
}

const thresholdsOf = ({ from, months, source }: IntervalMonths): readonly Threshold[] => [
  { label: from === 'regimen' ? 'interval' : 'interval on the prescription', text: `${months} months`, source },
];

function judge(evidence: Read, protocol: Protocol): Judge {
  const { regimen, number } = protocol;
  const doses = evidence.doses.get(regimen.medicine) ?? noDoses;
  const { counting, undecided, last } = doses;
  const interval = intervalMonthsOf(protocol, evidence.prescription, counting, lastDenosumabOf(evidence));
  const { months } = interval;
  const working = (says: string) => ({
    says,
    inputs: inputsOf(doses),
    thresholds: thresholdsOf(interval),
    cautions: interval.passedOver === undefined ? none : [interval.passedOver],
  });

  const open = undecided[undecided.length - 1];
  if (open !== undefined) {
    return always(
      judgement('cannot say', `part dose of ${shortDate(open.on)} not decided`, () => ({
        ...working('A prescriber has yet to say whether this part dose counts.'),
        cautions: none,
      })),
      {
        is: 'blocked',
        by: {
          what: `a prescriber: does the part dose of ${shortDate(open.on)} count?`,
          who: 'prescriber',
          step: 'prescriber decides',
          settled: (known) => ({
            doses: new Map([
              ...known.doses,
              [
                regimen.medicine,
                {
                  counting: [...counting, ...undecided].toSorted((a, b) => a.on - b.on || a.seq - b.seq),
                  undecided: [],
                  last,
                },
              ],
            ]),
          }),
        },
      },
    );
  }

  const due = last === undefined ? undefined : addMonths(last.on, months);
  let otherDue: Day | undefined;
  for (const other of evidence.otherProductDoses) {
    const until = addMonths(other.on, number.otherProductMonths);
    if (otherDue === undefined || until > otherDue) otherDue = until;
  }
  const why = () =>
    working(
      last === undefined || due === undefined
        ? 'No earlier dose recorded.'
        : `Last dose ${shortDate(last.on)}; ${months} months later is ${shortDate(due)}.`,
    );
  const met = judgement('ready', due === undefined ? 'no earlier dose recorded' : 'interval', why);
  if (last === undefined && otherDue === undefined) return always(met, readyPath);
  const waits = due === undefined ? met : judgement('not ready', `interval: next due ${shortDate(due)}`, why);
  const other =
    otherDue === undefined
      ? met
      : judgement('not ready', 'zoledronic acid 4 mg given', () => ({
          says: `The 4 mg product was given: no dose before ${shortDate(otherDue)} unless a prescriber decides otherwise.`,
          inputs: [
            ...inputsOf(doses),
            ...evidence.otherProductDoses.map(({ on, id, body }) => ({
              label: 'dose',
              text: body.medicine,
              on,
              entry: id,
            })),
          ],
          thresholds: [...thresholdsOf(interval), { key: 'otherProductMonths' }],
          cautions: ['Oncology decides; it counts in lifetime exposure.'],
        }));
  const changes = due === undefined ? [] : [due];
  if (otherDue !== undefined) changes.push(otherDue);
  const on = (day: Day) =>
    otherDue !== undefined && day < otherDue ? other : due !== undefined && day < due ? waits : met;
  return {
    changes,
    on,
    path: (day) => {
      const judged = on(day);
      if (judged === met) return readyPath;
      return {
        is: 'waiting',
        what:
          judged === waits && last !== undefined ? `interval since the dose of ${shortDate(last.on)}` : judged.cause,
      };
    },
  };
}

export const interval: Requirement<(typeof reads)[number]> = {
  id: 'interval',
  title: 'Interval since the last dose',
  clearedBy: 'time; a prescriber where a part dose or the 4 mg product was given. No exception',
  exceptionPossible: false,
  reads,
  judge,
};
