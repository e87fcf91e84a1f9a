/** A person of the file held against the notes: the same facts again, facts that differ, a number that is somebody else's. */
import { type BodyOfKind, parseScaled, plainDate, quantityText, scaledText, shortDate } from '@twelvemonth/clinical';
import { type Fact, keyOfFact, resultKey } from './fact.ts';
import type { KnownPerson } from './known.ts';
import type { PersonRead } from './person.ts';
import { dosesNearDays } from './plausible.ts';
import { type Report, reportInto } from './problem.ts';
import { samePerson } from './similar.ts';
import { checkWeights } from './weights.ts';

export type AgainstNotes = { readonly fresh: readonly Fact[]; readonly alreadyHere: number };

export function compareWithNotes(person: PersonRead, known: KnownPerson): AgainstNotes {
  const rowOf = (fact: Fact): Report => {
    const row = person.rows.find((candidate) => candidate.row === fact.row) ?? person.rows[0];
    return reportInto(row?.problems ?? [], row?.row ?? 0);
  };
  const fresh = person.facts.filter((fact) => !known.written.has(keyOfFact(fact)));
  for (const fact of fresh) {
    if (fact.kind === 'result' && fact.on !== undefined) {
      const there = known.results.get(resultKey(plainDate(fact.on), fact.body.analyte)) ?? [];
      if (there.length > 0 && !there.some((text) => sameAmount(text, fact))) {
        rowOf(fact)(
          fact.column,
          'differs-from-notes',
          fact.cell,
          `the notes have ${fact.body.analyte} ${there.join(', ')} on ${shortDate(fact.on)}; the file has ${quantityText(fact.body.quantity)}`,
          'look up which is right; correct the notes or the cell',
        );
      }
    }
    if (fact.kind === 'dose' && fact.on !== undefined && fact.body.medicine === 'zoledronic acid 5 mg') {
      const on = fact.on;
      const near = known.doses.find(
        (dose) => dose.medicine === fact.body.medicine && Math.abs(dose.on - on) < dosesNearDays,
      );
      if (near !== undefined)
        rowOf(fact)(
          fact.column,
          'doses-near',
          fact.cell,
          `the notes have a dose on ${shortDate(near.on)}, ${Math.abs(near.on - on)} days away`,
          'check that these are two doses and not one dose with two dates',
        );
    }
    if (fact.kind === 'allergy' && known.allergies.length > 0) {
      rowOf(fact)(
        fact.column,
        'allergy-differs',
        fact.cell,
        'the notes say something else about allergies',
        'ask, and write the allergy by hand',
      );
    }
  }
  checkWeights(fresh, known.weights, rowOf);
  checkContact(person, known.contact);
  return { fresh, alreadyHere: person.facts.length - fresh.length };
}

function sameAmount(text: string, fact: Extract<Fact, { kind: 'result' }>): boolean {
  const { comparator, value, unit } = fact.body.quantity;
  const [, there = '', number = '', itsUnit = ''] = /^([<>]=?)?([\d.]+) (.*)$/.exec(text) ?? [];
  const exact = (figures: string): string => scaledText(parseScaled(figures) ?? parseScaled('0') ?? (0 as never));
  return there === comparator && itsUnit === unit && exact(number) === exact(value);
}

function checkContact(person: PersonRead, known: BodyOfKind<'contact'> | undefined): void {
  const row = person.rows[0];
  if (known === undefined || row === undefined) return;
  const { telephone, address, familyDoctor } = person.said;
  const differs = (said: string | undefined, there: string | undefined): boolean =>
    said !== undefined && said !== there;
  if (
    differs(telephone, known.telephone) ||
    differs(address, known.address) ||
    differs(familyDoctor, known.familyDoctor)
  ) {
    reportInto(row.problems, row.row)(
      '',
      'contact-differs',
      '',
      'telephone, address or family doctor differ from the notes, which are left as they are',
      'ask which is right and correct it by hand',
    );
  }
}

/** The number is in the notes under a name and birth date that cannot be this person's. */
export function isSomebodyElse(person: PersonRead, known: KnownPerson): boolean {
  return person.name !== undefined && !samePerson(person.name, known);
}
