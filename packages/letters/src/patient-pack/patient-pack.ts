/**
 * The patient pack: getting ready, the day, afterwards, next year; or one easy page. What cannot be said, or is too hard to
 * read, is not printed, and it is said why.
 */
import { tooHardBecause } from '../reading-level.ts';
import { type PackPart, type PatientPack, proseOf } from './blocks.ts';
import type { PackFacts, PackPartName } from './facts.ts';
import { easyPage, partNamed } from './parts.ts';
import { packSpeaker } from './speaker.ts';

export type PackAsked = { readonly parts: readonly PackPartName[] } | { readonly easy: true };
export type LeftOut = { readonly part: PackPartName | 'easy page'; readonly because: string };

export function patientPackOf(
  facts: PackFacts,
  asked: PackAsked,
): { readonly pack: PatientPack; readonly leftOut: readonly LeftOut[] } {
  const speaker = packSpeaker(facts.language);
  const leftOut: LeftOut[] = [];
  const parts: PackPart[] = [];
  // Names are what they are: of a medicine or a place they say nothing about how hard our words are.
  const nameless: PackFacts = {
    ...facts,
    unit: { ...facts.unit, name: 'our unit' },
    askAbout: facts.askAbout.slice(0, 1).map(() => 'a pill'),
  };
  const take = (name: LeftOut['part'], make: (of: PackFacts) => PackPart | undefined): void => {
    const part = make(facts);
    const measured = make(nameless);
    const because =
      measured === undefined
        ? ((name === 'next year' ? undefined : facts.noneAhead) ??
          'there is no date to give yet: it is known once a dose is given')
        : tooHardBecause(proseOf(measured.blocks));
    if (part === undefined || because !== undefined) leftOut.push({ part: name, because: because ?? '' });
    else parts.push(part);
  };
  if ('easy' in asked) take('easy page', (of) => easyPage(of, speaker));
  else for (const name of asked.parts) take(name, (of) => partNamed[name](of, speaker));
  const { say, date } = speaker;
  const { person, unit } = facts;
  return {
    leftOut,
    pack: {
      language: facts.language,
      version: say('version'),
      about: `${person.name}, ${say('bornOn')} ${person.born}, ${say('numberIs')} ${person.number}`,
      parts,
      foot: say('foot', {
        unit: unit.name,
        wording: say('version'),
        date: date(facts.today),
        protocol: facts.protocolVersion,
      }),
      demo: facts.demo ? say('demo') : undefined,
    },
  };
}
