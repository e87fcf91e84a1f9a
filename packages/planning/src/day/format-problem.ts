/** What is wrong with a text that should be one of our values: the field, and what to write there. */
import { z } from 'zod';

export type FormatProblem = {
  /** The field, as `visits.2.goneBy`; empty for the whole text. */
  readonly at: string;
  readonly says: string;
};

const words: Readonly<Record<string, string>> = {
  int: 'a whole number',
  number: 'a number',
  string: 'text in quotes',
  boolean: 'true or false',
  array: 'a list in [ ]',
  object: 'fields in { }',
};

const isEmpty = (issue: z.core.$ZodIssueTooSmall): boolean => issue.origin === 'array' || issue.origin === 'string';

function saysOf(issue: z.core.$ZodIssue): string {
  if (issue.code === 'invalid_type') {
    const expected = words[issue.expected] ?? issue.expected;
    return issue.message.endsWith('received undefined')
      ? `is missing: write ${expected}`
      : `is something else: write ${expected}`;
  }
  if (issue.code === 'too_small') {
    if (isEmpty(issue)) return 'is empty: there must be at least one';
    return `must be ${issue.inclusive === true ? 'at least' : 'more than'} ${issue.minimum}`;
  }
  if (issue.code === 'too_big') return `must be at most ${issue.maximum}`;
  if (issue.code === 'invalid_value') return `must be one of: ${issue.values.map(String).join(', ')}`;
  return issue.message;
}

export const problemsOf = ({ issues }: z.core.$ZodError): FormatProblem[] =>
  issues.flatMap((issue) => {
    if (issue.code !== 'unrecognized_keys') return [{ at: issue.path.join('.'), says: saysOf(issue) }];
    return issue.keys.map((key) => ({
      at: [...issue.path, key].join('.'),
      says: 'is not a field here: leave it out, or correct its spelling',
    }));
  });

/** A time of day, as `08:30`. */
export const clock = z.string().regex(/^(?:[01]\d|2[0-3]):[0-5]\d$/, { error: 'is not a time: write it as 08:30' });

const minutesPerHour = 60;

/** Minutes after midnight of a time that `clock` has let pass. */
export function minuteOf(text: string): number {
  const [hour = 0, minute = 0] = text.split(':').map(Number);
  return hour * minutesPerHour + minute;
}

/** The grid of a day never has more ticks than a day has minutes. */
export const mostTicks = 1_440;
