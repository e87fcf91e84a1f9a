/** One fact a row holds, before it is known whose it is, and how facts are told to be the same. */
import {
  type BodyOfKind,
  type Day,
  type KindName,
  type PlainDate,
  parseScaled,
  plainDate,
  scaledText,
} from '@twelvemonth/clinical';

/** One line of the act "take in". */
export type Line = { readonly kind: KindName; readonly body: unknown; readonly effectiveAt: PlainDate };

type FactKind = 'dose' | 'result' | 'weight' | 'height' | 'surgery' | 'fracture' | 'allergy' | 'dental' | 'died';

/** A fact read from a cell. Without a day it is dated when the person is put together. */
export type Fact = {
  readonly [Kind in FactKind]: {
    readonly kind: Kind;
    readonly body: BodyOfKind<Kind>;
    readonly on: Day | undefined;
    readonly row: number;
    readonly column: string;
    readonly cell: string;
  };
}[FactKind];

const exact = (value: string): string => {
  const read = parseScaled(value);
  return read === undefined ? value : scaledText(read);
};
const amount = (q: { readonly comparator: string; readonly value: string; readonly unit: string }): string =>
  `${q.comparator}${exact(q.value)} ${q.unit}`;

/**
 * What makes two facts the same fact. A batch, a setting or a note does not: the same dose from another file is still the
 * same dose. Facts that are not about a day (allergies, heights, contact) are the same whenever they were written.
 */
export function factKey(kind: KindName, on: PlainDate | undefined, body: unknown): string {
  const day = on ?? 'no day';
  switch (kind) {
    case 'dose':
      return `dose|${day}|${(body as BodyOfKind<'dose'>).medicine}`;
    case 'result': {
      const { analyte, quantity } = body as BodyOfKind<'result'>;
      return `result|${day}|${analyte}|${amount(quantity)}`;
    }
    case 'weight':
      return `weight|${day}|${amount((body as BodyOfKind<'weight'>).quantity)}`;
    case 'height': {
      const { which, quantity } = body as BodyOfKind<'height'>;
      return `height|${which}|${amount(quantity)}`;
    }
    case 'fracture': {
      const { site, dateKnown } = body as BodyOfKind<'fracture'>;
      return `fracture|${dateKnown ? day : 'no day'}|${site}`;
    }
    case 'surgery':
      return `surgery|${day}|${(body as BodyOfKind<'surgery'>).what}`;
    case 'allergy':
    case 'contact':
      return `${kind}|${JSON.stringify(body)}`;
    default:
      return `${kind}|${day}|${JSON.stringify(body)}`;
  }
}

export const keyOfFact = (fact: Fact): string =>
  factKey(fact.kind, fact.on === undefined ? undefined : plainDate(fact.on), fact.body);

/** A laboratory value without its number: two different numbers for it cannot both be right. */
export const resultKey = (on: PlainDate, analyte: string): string => `${on}|${analyte}`;
