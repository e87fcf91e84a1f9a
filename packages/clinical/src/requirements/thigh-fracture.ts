/**
 * A fracture of the thigh bone below the lesser trochanter may be an atypical one, which this medicine can bring: it holds until a
 * prescriber has decided that it is not (docs/readiness.md R10; ASBMR task force 2013, doi 10.1002/jbmr.1998, `from memory`).
 */
import type { BodyOfKind } from '../kinds/index.ts';
import type { Fact } from '../record/patient-record.ts';

type Fracture = BodyOfKind<'fracture'>;

/** The thigh bone in words, also where it may be its neck: who decides is a prescriber. */
const namesThigh = (text: string): boolean => /femur|femor|thigh|subtroch/.test(text.toLowerCase());

export const isThighFracture = ({ site, bone, note }: Fracture): boolean =>
  site === 'thigh shaft' || (site === 'other' && namesThigh(`${bone ?? ''} ${note ?? ''}`));

const saysNoBone = ({ site, bone }: Fracture): boolean => site === 'other' && bone === undefined;

type Held = { readonly verdict: 'not ready' | 'cannot say'; readonly cause: string; readonly told: Fact<'fracture'> };

/** `undecided`: without a prescriber's decision about it. */
export const heldByFractures = (undecided: readonly Fact<'fracture'>[]): readonly Held[] =>
  undecided.flatMap((told): Held[] =>
    isThighFracture(told.body)
      ? [{ verdict: 'not ready', cause: 'suspected atypical fracture of the thigh', told }]
      : saysNoBone(told.body)
        ? [{ verdict: 'cannot say', cause: 'which bone broke is not said', told }]
        : [],
  );
