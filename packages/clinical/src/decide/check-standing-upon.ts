/**
 * What other steps stand upon is not pulled from under them: the later step is withdrawn first. A dose, a chair, a weight
 * or a result may be corrected at any time: decisions keep what they were based on.
 */
import { kindNamed, type KindName } from '../kinds/index.ts';
import { plural } from '../kinds-texts/words.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { isAbout, visitOn } from '../visit/visit.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';

const infusing: readonly KindName[] = ['infusion-started'];
/** A drip that runs, or an injection that was given. */
const given: readonly KindName[] = [...infusing, 'dose'];
/** For a step: the kinds that stand upon it once they are written later on the same day. */
const standingUpon: Partial<Record<KindName, readonly KindName[]>> = {
  arrived: ['observations', 'checklist', 'go-decision', 'left'],
  observations: ['go-decision'],
  checklist: ['go-decision'],
  'go-decision': ['cannula', 'preparation', ...given, 'left'],
  cannula: ['flush', ...infusing, 'cannula-removed'],
  flush: infusing,
  preparation: ['second-check', ...given],
  'second-check': given,
  'infusion-started': ['infusion-paused', 'infusion-finished'],
  'infusion-paused': ['infusion-resumed', 'infusion-finished'],
  'infusion-resumed': ['infusion-paused', 'infusion-finished'],
  'infusion-finished': ['observations', 'observed', 'left'],
};

/** Corrected in place these would change what a decision or a check was based on. */
const correctedOnlyBefore: ReadonlySet<KindName> = new Set(['observations', 'checklist', 'preparation', 'flush']);

function laterSteps(record: SubjectRecord, target: Fact): readonly KindName[] {
  const kinds = standingUpon[target.kind] ?? [];
  const visit = visitOn(record, target.on);
  if (visit === undefined) return [];
  return kinds.filter((kind) =>
    factsOf(record, kind).some(
      (fact: Fact) =>
        fact.on === target.on &&
        fact.seq > target.seq &&
        (fact.kind !== 'second-check' || isAbout((fact as Fact<'second-check'>).body.preparation, target)),
    ),
  );
}

/** The check of a preparation that stands, where the two readings differ. */
const differingCheck = (record: SubjectRecord, { on }: Fact): Fact<'second-check'> | undefined => {
  const check = visitOn(record, on)?.check;
  return check?.body.agrees === false ? check : undefined;
};

const stands = (target: Fact, later: readonly KindName[], what: string): readonly Refusal[] =>
  later.length === 0
    ? []
    : [
        refusal(
          'part-of-a-finished-step',
          `The ${kindNamed(target.kind).label} cannot be ${what}: ${plural(
            later.map((kind) => kindNamed(kind).label),
            'and',
          )} came after it and rests on it.`,
          {
            remedy: 'withdraw the later step first, with the reason',
          },
        ),
      ];

/**
 * After a difference the preparation goes, with the reason, and pack and reading are made anew. The check that differed does not:
 * without it whoever has been told what differed could read again until it agrees.
 */
export function checkMayBeWithdrawn(record: SubjectRecord, target: Fact): readonly Refusal[] {
  const differing = differingCheck(record, target);
  if (differing !== undefined && differing.id === target.id)
    return [
      refusal('part-of-a-finished-step', 'The two readings differ: the check that says so is not withdrawn.', {
        field: 'entry',
        remedy: 'withdraw the preparation with the reason; it is prepared and checked anew',
      }),
    ];
  const later = laterSteps(record, target);
  const ofThis = target.kind === 'preparation' && differing !== undefined;
  return stands(target, ofThis ? later.filter((kind) => kind !== 'second-check') : later, 'withdrawn');
}

export const checkMayBeCorrected = (record: SubjectRecord, target: Fact): readonly Refusal[] =>
  correctedOnlyBefore.has(target.kind) ? stands(target, laterSteps(record, target), 'corrected') : [];
