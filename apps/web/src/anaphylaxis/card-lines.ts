/**
 * What the anaphylaxis card says, each line with where it comes from and how far that was seen (docs/safety/sources.md):
 * read in the guideline, read in a published summary of it, or from memory, which a clinician confirms. Adults only: nobody
 * under 18 is treated here. The local guideline decides; nothing of this is a threshold that anything is computed from.
 */
export type CardLine = {
  readonly does: string;
  readonly detail?: string;
  readonly source: string;
};

export const guidelineDecides =
  'Your local guideline decides. This card only reminds trained staff of it; where they differ, the guideline is right.';

export const thinkOfIt: CardLine = {
  does: 'Think of it: trouble breathing, swelling, collapse, within minutes to hours.',
  source: 'from memory',
};

export const callForHelp = 'Call for help';

export const cardLines: readonly CardLine[] = [
  { does: 'Stop the drip', source: 'RCUK 2021, read' },
  {
    does: callForHelp,
    detail: 'Ring the emergency number of your local guideline.',
    source: 'RCUK 2021, read',
  },
  {
    does: 'Adrenaline 500 micrograms into the thigh muscle (IM)',
    detail: 'Adults. 0.5 mL of 1 mg/mL, middle of the thigh, to the outside and front.',
    source: 'RCUK 2021, read',
  },
  {
    does: 'Lie them flat, legs raised',
    detail: 'Half sitting if that makes breathing easier. No sudden change of posture.',
    source: 'legs from memory; rest RCUK 2021, a summary read',
  },
  { does: 'Oxygen', source: 'from memory' },
  {
    does: 'No better after 5 minutes: adrenaline once more',
    detail: 'The same dose. Fluid into a vein, early where the blood pressure is low or they are in shock.',
    source: 'RCUK 2021, read; when to give fluid: a summary read',
  },
  {
    does: 'No better after 2 doses: refractory',
    detail: 'Follow the part of your guideline for refractory anaphylaxis.',
    source: 'RCUK 2021, read',
  },
];

export const notFirst: CardLine = {
  does: 'Antihistamines are third line; steroids are not routine.',
  source: 'RCUK 2021, read',
};

export const sourceInFull =
  'RCUK 2021: Resuscitation Council UK, Emergency treatment of anaphylaxis, May 2021. Its own review date was May 2026: look for a newer edition. "From memory" was not checked against it; a clinician confirms it before this card is used.';
