/**
 * node packages/clinical/test/answers-in-full/write.ts
 * Writes the answers anew below the cases: after a change of wording, or for a case just added. Read every difference against
 * docs/readiness.md before it is committed: the tests hold the engine to what stands here.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { reviewCase, reviewInFull } from './review-told.ts';
import { answerInFull, caseFrom } from './told.ts';

const answers: Readonly<Record<string, (text: string) => string>> = {
  'person.txt': (text) => answerInFull(caseFrom(text)).text,
  'bloods.txt': (text) => answerInFull(caseFrom(text)).text,
  'vitamin-d.txt': (text) => answerInFull(caseFrom(text)).text,
  'medicines-and-course.txt': (text) => answerInFull(caseFrom(text)).text,
  'course-events.txt': (text) => answerInFull(caseFrom(text)).text,
  'reviews.txt': (text) => reviewInFull(reviewCase(text).entries),
};

for (const [name, answer] of Object.entries(answers)) {
  const file = new URL(`./${name}`, import.meta.url);
  const [head = '', ...cases] = readFileSync(file, 'utf8').split('\n== ');
  const written = cases.map((text) => `${text.split('\n--')[0]}\n--\n${answer(text)}\n`);
  writeFileSync(file, `${[head.trimEnd(), ...written].join('\n== ').trimEnd()}\n`);
}
