import { posix } from 'node:path';
import { isInOwnWords } from '../places.ts';
import { complaintsAbout, type Complaint, type Rule, type SourceFile } from '../rule.ts';

const link = /\]\(([^)\s]+)\)/g;

/** The anchor a heading gets: lower case, spaces to dashes, everything but letters, digits and dashes dropped. */
const anchorOf = (heading: string): string =>
  heading
    .trim()
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N} _-]/gu, '')
    .replaceAll(' ', '-');

const anchorsOf = (text: string): string[] =>
  [...text.matchAll(/^#+ (.+)$/gm)].map((match) => anchorOf(match[1] ?? ''));

function wrong(files: ReadonlyMap<string, string>, from: string, target: string): string | undefined {
  if (/^(?:[a-z]+:|\/\/)/.test(target)) return undefined;
  const [file = '', anchor] = target.split('#');
  const path = file === '' ? from : posix.join(posix.dirname(from), file).replace(/\/$/, '');
  const text = files.get(path);
  const isFolder = [...files.keys()].some((known) => known.startsWith(`${path}/`));
  if (text === undefined && !isFolder)
    return `links to ${target}, which is not there: correct the link or write the page`;
  if (anchor !== undefined && text !== undefined && !anchorsOf(text).includes(anchor)) {
    return `links to #${anchor}, which is no heading of ${path}: correct the anchor`;
  }
  return undefined;
}

function check(files: readonly SourceFile[]): Complaint[] {
  const known = new Map(files.map((file) => [file.path, file.text]));
  return files
    .filter((file) => isInOwnWords(file.path))
    .flatMap((file) =>
      complaintsAbout(file.path, file.text, link, (match) => wrong(known, file.path, match[1] ?? '') ?? '').filter(
        (complaint) => complaint.says !== '',
      ),
    );
}

export const linksLeadSomewhere: Rule = {
  name: 'every link of the documents leads somewhere',
  check,
  bad: [
    { path: 'docs/a.md', text: '[gone](gone.md)' },
    { path: 'README.md', text: '# One\n[no such heading](#two)' },
  ],
  good: [
    {
      path: 'docs/a.md',
      text: '# The first thing\n[b](guide/b.md) [up](../README.md#one-two) [here](#the-first-thing) [out](https://example.org/x)',
    },
    { path: 'docs/guide/b.md', text: '[folder](../guide)' },
    { path: 'README.md', text: '## One, two' },
  ],
};
