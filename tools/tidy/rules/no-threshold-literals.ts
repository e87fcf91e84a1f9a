import { codeOnly } from '../code-text.ts';
import { isCode } from '../places.ts';
import { complaintsAbout, type Rule } from '../rule.ts';

export const decides =
  /^packages\/clinical\/src\/(?:(?:requirements|readiness|course|clock|standing|visit|replay)\/|projection\/task-rows)/;
const number = /(?<![\w.$])\d[\d_]*(?:\.\d+)?n?(?![\w.])/g;

/** What decides nothing: how many places are printed, how wide a text is, how long a list, what a regular expression looks for. */
const decidesNothing = [
  /\b(?:\w*Text\w*|shortest|toFixed|padStart|padEnd)\([^()]*\)/g,
  /\.length\s*[<>=!]+\s*\d+/g,
  /(?<=[(,=:[!&|?]\s*)\/(?:\\.|[^/\n\\])+\/[a-z]*/g,
];
const deciding = (code: string): string => decidesNothing.reduce((text, pattern) => text.replaceAll(pattern, ''), code);

/** Numbers that count things of the program, not of the body: first, next, none. */
const countingNumbers = new Set(['0', '1', '0n', '1n']);

/** Other numbers that may stand in a rule, each with its reason. */
const allowed: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'packages/clinical/src/readiness/context.ts': {
    '1200': 'how many days a window is looked for: a limit, not a threshold',
    '12': 'how long an assumed prescription lasts in "if settled" (docs/readiness.md A4): it lets nobody through',
  },
  'packages/clinical/src/readiness/foreseeable.ts': {
    '7': 'what "could have been seen" means (docs/words.md): a measure of the service, not of a person',
  },
  'packages/clinical/src/readiness/go-verdict.ts': {
    '10': 'observations are kept in tenths',
    '10n': 'observations are kept in tenths',
  },
  'packages/clinical/src/readiness/world.ts': { '1_000_000': 'a day before all others' },
  'packages/clinical/src/visit/early-warning.ts': { '2': 'name of a scale' },
  'packages/clinical/src/requirements/kidney-beside.ts': {
    '2009': 'name of an equation',
    '2021': 'name of an equation',
    '1.73': 'square metres of body surface that an eGFR is given for, in words',
  },
  'packages/clinical/src/requirements/kidney-working.ts': {
    '0.5': 'how near a limit is called "just below" in words',
    '18': 'a caution beside the working: the formula was made for adults (from memory)',
  },
  'packages/clinical/src/course/course-events.ts': { '100n': 'per cent' },
  'packages/clinical/src/course/gathered/density.ts': { '365.25': 'days in a year', '100': 'per cent' },
  'packages/clinical/src/course/gathered/doses-given.ts': { '365.25': 'days in a year' },
  'packages/clinical/src/course/gathered/failure.ts': { '100n': 'per cent' },
  'packages/clinical/src/course/gathered/markers-then.ts': { '100n': 'per cent' },
  'packages/clinical/src/course/markers.ts': { '1000n': 'ng in a microgram' },
  'packages/clinical/src/replay/replay.ts': { '10': 'the length of a date' },
  'packages/clinical/src/readiness/verdict.ts': { '2': 'rank of a verdict', '3': 'rank of a verdict' },
};

export const noThresholdLiterals: Rule = {
  name: 'no number that decides stands in a rule: rules are code, numbers are protocol',
  check: (files) =>
    files
      .filter((file) => decides.test(file.path) && isCode(file.path))
      .flatMap((file) =>
        complaintsAbout(file.path, deciding(codeOnly(file.text)), number, (match) =>
          countingNumbers.has(match[0]) || allowed[file.path]?.[match[0]] !== undefined
            ? ''
            : `holds the number ${match[0]}: make it a field of the protocol, or a constant of its formula, with the source`,
        ).filter((complaint) => complaint.says !== ''),
      ),
  bad: [{ path: 'packages/clinical/src/requirements/kidneys.ts', text: 'if (clearance < 35) return notReady;' }],
  good: [
    {
      path: 'packages/clinical/src/requirements/kidneys.ts',
      text: "if (parts.length < 2) say(text.replace(/ \\d{4}$/, '')); const first = spans[0]; const next = at + 1; const says = 'below 35' + ratioText(clearance, 2); // 35 by the label",
    },
  ],
};
