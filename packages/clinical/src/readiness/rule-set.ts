/**
 * The rules in code have a number. It is raised, once for each version of the product, when the same notes under the same sheet
 * could come out otherwise than before (docs/decisions/0007). A signed decision keeps the number it was signed under, so that
 * `replay` can tell a change of rules from a defect, and say which change.
 */
export type RuleSet = {
  readonly number: string;
  /** The version of the product that brought it. */
  readonly since: string;
  /** Which verdicts may come out otherwise than under the set before, in a sentence. */
  readonly changes: string;
};

export const ruleSets: readonly [RuleSet, ...RuleSet[]] = [
  { number: '1', since: 'while 0.1.0 was being built', changes: 'the first' },
  {
    number: '2',
    since: '0.1.0',
    changes:
      'what a checklist tells stays told; teeth and jaw, secondary causes and an ageing consent are asked for; the regimen prescribed decides its own limits and questions; more opens a review of the course; a mineral without its limit, a hip fracture nobody says was repaired and denosumab where the kidneys fail wait for a prescriber; a word about the daily vitamin D ages',
  },
  {
    number: '3',
    since: '0.2.0',
    changes:
      'a clearing and a decision are about one entry; withdrawing a correction brings nothing back; a review has looked only at what was written before it; contradictory values, unsigned baselines, minerals without a limit, severe reactions, open allergies, thigh-shaft fractures, an unrepaired hip and a symptom told as "other" wait for somebody; exceptions end; denosumab asks the kidneys; a part dose begins the interval; nothing is said of someone under 18 or, by their own consent, of someone who cannot decide',
  },
  {
    number: '4',
    since: '0.3.0',
    changes: 'romosozumab asks the kidneys: below 30 mL/min, or not known, a prescriber decides',
  },
  {
    number: '5',
    since: '0.6.0',
    changes: 'a no said after a consent ends that consent: not ready until it is given anew',
  },
  {
    number: '6',
    since: '0.7.0',
    changes:
      'a reaction graded 3 or more, anaphylaxis, an inflamed eye (uveitis) and dying bone of the jaw wait for a prescriber, whatever they were called; a creatinine or a weight that no body can have decides nothing, even where somebody recorded it as typed',
  },
];

const [first, ...later] = ruleSets;
/** The number a decision signed today is signed under. */
export const RULE_SET: string = (later.at(-1) ?? first).number;

/** What has changed since a decision was signed; empty if nothing has. */
export const rulesSince = (number: string): readonly RuleSet[] => {
  const at = ruleSets.findIndex((set) => set.number === number);
  return at === -1 ? [] : ruleSets.slice(at + 1);
};
