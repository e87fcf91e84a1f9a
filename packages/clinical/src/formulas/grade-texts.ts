/**
 * What each grade of the common terminology criteria says, in short and in our words, for terms a person grades by looking: version
 * 5.0, from memory but for the extravasation (read) and the bands of low calcium in mmol/L (read in 4.03). `null`: the criteria have
 * no such grade; an anaphylaxis begins at 3. Grade 5 is death. What is decided upon a grade, a prescriber decides.
 */
export const gradeTexts = {
  fever: [
    '38.0 to 39.0 degrees',
    'above 39.0 to 40.0 degrees',
    'above 40.0 degrees for 24 hours or less',
    'above 40.0 degrees for more than 24 hours',
  ],
  'flu-like symptoms': [
    'mild symptoms',
    'moderate: limits shopping, housework and the like',
    'severe: limits washing, dressing and eating',
  ],
  'infusion-related reaction': [
    'mild and passing; the infusion need not be interrupted',
    'interrupted, and answers promptly to treatment; medicines for it for at most a day',
    'prolonged, or comes back, or brings the person into hospital',
    'threatens life',
  ],
  anaphylaxis: [
    null,
    null,
    'tight airways, with or without hives, medicines by injection; swelling from the allergy; low pressure',
    'threatens life; treated urgently',
  ],
  'atrial fibrillation': [
    'no symptoms; nothing has to be done',
    'treated, without urgency',
    'symptoms, treated urgently; a device; an ablation; new',
    'threatens life; a clot that is treated urgently',
  ],
  'infusion site extravasation': [
    'painless swelling',
    'redness with swelling, pain, hardening or phlebitis',
    'ulcer or dead tissue; an operation',
    'threatens life',
  ],
  'low calcium': [
    "adjusted, below the laboratory's limit to 2.0 mmol/L (8.0 mg/dL)",
    'below 2.0 to 1.75 mmol/L (7.0 mg/dL), or felt',
    'below 1.75 to 1.5 mmol/L (6.0 mg/dL), or brings the person into hospital',
    'below 1.5 mmol/L (6.0 mg/dL), or threatens life',
  ],
  'creatinine increased': [
    "above the laboratory's limit, to 1.5 times it",
    'above 1.5 to 3 times the own earlier value, or the limit',
    'above 3 times the own earlier value; above 3 to 6 times the limit',
    'above 6 times the limit',
  ],
  'acute kidney injury': [null, null, 'brings the person into hospital', 'threatens life; dialysis'],
  uveitis: [
    'at the front of the eye, a trace of cells',
    'at the front of the eye, 1+ or 2+ cells',
    'at the front of the eye, 3+ cells or more; further back, or the whole of it',
    'with the best glasses that eye sees 20/200 (6/60) or worse',
  ],
  'osteonecrosis of the jaw': [
    'no symptoms; seen by somebody who looked, or on a picture',
    'symptoms; medicines for it; limits shopping, housework and the like',
    'severe symptoms; limits washing, dressing and eating; an operation that can be planned',
    'threatens life; treated urgently',
  ],
} as const satisfies Readonly<Record<string, readonly (string | null)[]>>;

export type GradedTerm = keyof typeof gradeTexts;
export const gradedTerms = Object.keys(gradeTexts) as GradedTerm[];

/** The grades a term has, lowest first, each with what it says. */
export const gradesOf = (term: GradedTerm): readonly { readonly grade: number; readonly says: string }[] =>
  (gradeTexts[term] as readonly (string | null)[]).flatMap((says, index) =>
    says === null ? [] : [{ grade: index + 1, says }],
  );
