/**
 * A threshold in code really fails the style: every place where a rule reads a number of the protocol is replaced by the number
 * itself, one at a time, in the real sources, and the rule must complain about each.
 */
import { describe, expect, it } from 'vitest';
import { codeOnly } from '../tidy/code-text.ts';
import { decides, noThresholdLiterals } from '../tidy/rules/no-threshold-literals.ts';
import { projectFiles } from '../tidy/tree.ts';

const rules = projectFiles().filter(({ path }) => decides.test(path) && path.endsWith('.ts'));
/** `protocol.exact.clearanceFloor`, `protocolOn(day)?.number.resultDays`; not where it is only printed. */
const readsANumber = /(?<!Text\()\b(?:[\w$]+(?:\([^()]*\))?\??\.)*(?:exact|number)\.[a-zA-Z]+\b/g;

const mutants = rules.flatMap(({ path, text }) =>
  [...codeOnly(text).matchAll(readsANumber)].map((match) => ({
    path,
    line: text.slice(0, match.index).split('\n').length,
    text: `${text.slice(0, match.index)}35${text.slice(match.index + match[0].length)}`,
  })),
);

describe('a threshold written into a rule', () => {
  it('is looked for where rules read numbers of the protocol: there are many such places', () => {
    expect(rules.length).toBeGreaterThan(40);
    expect(mutants.length).toBeGreaterThan(30);
  });

  it('is complained about wherever a number of the protocol is replaced by a literal', () => {
    const missed = mutants.filter((file) => noThresholdLiterals.check([file]).length === 0);
    expect(missed.map(({ path, line }) => `${path}:${line}`)).toEqual([]);
  });

  it('is complained about at the end of every rule, also as a decimal, a big integer or with a sign', () => {
    const comparisons = [
      'if (value < 35) stop();',
      'if (value >= 2.2) stop();',
      'if (value > 26n) stop();',
      'if (t <= -2.5) stop();',
    ];
    const missed = rules.flatMap(({ path, text }) =>
      comparisons
        .filter((line) => noThresholdLiterals.check([{ path, text: `${text}\n${line}\n` }]).length === 0)
        .map((line) => `${path}: ${line}`),
    );
    expect(missed).toEqual([]);
  });
});
