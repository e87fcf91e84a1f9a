/** The style is a test: every rule over the whole project, and every rule over a sample it must refuse. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { show } from '../tidy/rule.ts';
import { rules } from '../tidy/rules.ts';
import { projectFiles, root } from '../tidy/tree.ts';

const files = projectFiles();

describe('the project', () => {
  it.for(rules)('$name', (rule) => {
    expect(rule.check(files).map(show)).toEqual([]);
  });

  it('is what git lists: the rules have read the sources, the documents and the lock', () => {
    const paths = new Set(files.map((file) => file.path));
    const expected = ['README.md', 'package-lock.json', 'packages/clinical/src/index.ts'];
    expect(expected.filter((path) => !paths.has(path))).toEqual([]);
  });
});

describe('a rule', () => {
  it.for(rules)('can fail: $name', (rule) => {
    const words = rule.bad.filter((file) => file.path === 'docs/words.md');
    const missed = rule.bad.filter((file) => !words.includes(file) && rule.check([...words, file]).length === 0);
    expect(missed).toEqual([]);
    expect(rule.bad.length).toBeGreaterThan(words.length);
  });

  it.for(rules)('leaves alone what is in order: $name', (rule) => {
    expect(rule.check(rule.good).map(show)).toEqual([]);
  });

  it('says what to do instead', () => {
    const sentences = rules.flatMap((rule) => rule.check(rule.bad).map((complaint) => complaint.says));
    expect(sentences.filter((sentence) => !sentence.includes(': '))).toEqual([]);
  });

  it('is on the list when it has a file', () => {
    const written = readdirSync(join(root, 'tools/tidy/rules')).length;
    expect(rules).toHaveLength(written);
  });
});
