/**
 * Hypersensitivity to the medicine stops, to any bisphosphonate any of them; never having asked is not "none", an allergy that
 * does not name its medicine may be to this one, and a grave reaction to an earlier dose waits for a prescriber
 * (docs/readiness.md R8).
 */
import { shortDate } from '../calendar/day.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import { namesMedicine } from '../protocol/medicine-words.ts';
import { type BoneMedicine, isBisphosphonate } from '../protocol/medicines.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Fact } from '../record/patient-record.ts';
import type { ReactionToDecide } from '../record/reaction-to-decide.ts';
import type { Evidence } from './evidence.ts';
import { type Blocker, type Judge, type Requirement, always, judgement, readyPath } from './requirement.ts';

type Allergy = BodyOfKind<'allergy'>;

function isTo(medicine: BoneMedicine, body: Allergy): boolean {
  if (body.answer === 'none known') return false;
  if (body.answer === 'bisphosphonate') return isBisphosphonate(medicine);
  const named = body.medicine !== undefined && medicineGroup(medicine) === body.medicine;
  return named || namesMedicine(`${body.substance} ${body.reaction ?? ''}`, medicine);
}

const medicineGroup = (medicine: BoneMedicine): string =>
  isBisphosphonate(medicine) ? 'bisphosphonate' : (medicine.split(' ')[0] ?? medicine);

const isUnnamed = (body: Allergy): boolean =>
  body.answer === 'other' && (body.medicine === undefined || body.medicine === 'not known which');

const named = (body: Allergy): Allergy =>
  body.answer === 'other' && isUnnamed(body) ? { ...body, medicine: 'medicine not for bones' } : body;

const inputsOf = (allergies: readonly Fact<'allergy'>[]) =>
  allergies.map(({ on, id, body }) => ({
    label: 'allergy',
    text: body.answer === 'other' ? body.substance : body.answer,
    on,
    entry: id,
  }));

const grave = (reactions: readonly ReactionToDecide[]) =>
  reactions.map(({ fact: { on, id, body }, as }) => ({ label: as, text: body.what, on, entry: id }));

const sayOf = ({ as }: ReactionToDecide): string =>
  as === 'severe reaction'
    ? 'A severe reaction to an earlier dose holds until a prescriber has decided about it.'
    : `After an earlier dose there was ${as}: however it was called then, it holds until a prescriber has decided about it.`;

const anotherMedicine: Blocker = {
  what: 'a prescriber: another medicine',
  who: 'prescriber',
  step: 'prescriber decides',
  settled: undefined,
};

const reads = ['allergies', 'allergiesAssumed', 'reactionsToDecide'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

/** What nobody may assume: a grave reaction nobody has decided about, and an allergy that does not name its medicine. */
function open({
  allergies,
  reactionsToDecide: [reaction],
}: Read): { readonly cause: string; readonly by: Blocker } | undefined {
  const settled = (evidence: Evidence): Partial<Evidence> => ({
    reactionsToDecide: [],
    allergies: evidence.allergies.map((fact) => ({ ...fact, body: named(fact.body) })),
  });
  if (reaction !== undefined)
    return {
      cause: `${reaction.as} of ${shortDate(reaction.fact.on)} not decided`,
      by: {
        what: `a prescriber: may it be given again after the ${reaction.as} of ${shortDate(reaction.fact.on)}?`,
        who: 'prescriber',
        step: 'prescriber decides',
        settled,
      },
    };
  const unnamed = allergies.find(({ body }) => isUnnamed(body));
  return unnamed === undefined
    ? undefined
    : {
        cause: 'an allergy does not name its medicine',
        by: {
          what: 'ask which medicine the allergy is to, and correct the entry',
          who: 'nurse',
          step: 'settle',
          settled,
        },
      };
}

function judge(evidence: Read, { regimen }: Protocol): Judge {
  const { allergies, allergiesAssumed, reactionsToDecide } = evidence;
  const [reaction] = reactionsToDecide;
  const { medicine } = regimen;
  if (allergies.some(({ body }) => isTo(medicine, body))) {
    const to = isBisphosphonate(medicine) ? 'a bisphosphonate' : medicine;
    return always(
      judgement('not ready', `hypersensitivity to ${to}`, () => ({
        says: `A reaction to ${to} is recorded: not this medicine.`,
        inputs: inputsOf(allergies),
      })),
      { is: 'blocked', by: anotherMedicine },
    );
  }
  const unsettled = open(evidence);
  if (unsettled !== undefined) {
    return always(
      judgement('cannot say', unsettled.cause, () => ({
        says:
          reaction !== undefined
            ? sayOf(reaction)
            : 'An allergy is recorded that does not say which medicine it is to: it may be to this one.',
        inputs: [...grave(reactionsToDecide), ...inputsOf(allergies)],
      })),
      { is: 'blocked', by: unsettled.by },
    );
  }
  if (allergies.length === 0 && !allergiesAssumed) {
    return always(
      judgement('cannot say', 'allergies never asked', () => ({
        says: 'Nobody has recorded an answer about allergies.',
      })),
      { is: 'steps', needs: { ask: { what: 'allergies', why: 'allergies were never asked' } } },
    );
  }
  return always(
    judgement('ready', 'no hypersensitivity', () => ({
      says: allergies.some(({ body }) => isTo('zoledronic acid 5 mg', body))
        ? `A reaction to a bisphosphonate is recorded; ${medicine} is none.`
        : `No reaction to ${isBisphosphonate(medicine) ? 'a bisphosphonate' : medicine} is recorded.`,
      inputs: inputsOf(allergies),
    })),
    readyPath,
  );
}

export const hypersensitivity: Requirement<(typeof reads)[number]> = {
  id: 'hypersensitivity',
  title: 'Hypersensitivity',
  clearedBy:
    'the answer to the question; a prescriber if it is to this medicine, or after a grave reaction. No exception',
  exceptionPossible: false,
  reads,
  judge,
};
