import type { Complaint, Rule, SourceFile } from '../rule.ts';

const list = 'docs/safety/hazards.md';
const fewest = 92;

type Row = { readonly line: number; readonly id: number; readonly shownBy: string; readonly status: string };

function rowsOf(text: string): Row[] {
  return text.split('\n').flatMap((line, index) => {
    const cells = line.split('|').map((cell) => cell.trim());
    if (!/^\d+$/.test(cells[1] ?? '')) return [];
    return [{ line: index + 1, id: Number(cells[1]), shownBy: cells[6] ?? '', status: cells[7] ?? '' }];
  });
}

function complaintAbout(row: Row, expected: number): string | undefined {
  if (row.id !== expected)
    return `is number ${row.id} where ${expected} is due: ids are fixed, new hazards go to the end`;
  if (!['open', 'partly', 'controlled'].includes(row.status))
    return `has the status "${row.status}": say open, partly or controlled`;
  const names = /\.test\.ts\)/.test(row.shownBy);
  if (row.status !== 'open' && !names)
    return `is ${row.status} without a test: link the test that shows it, or say open`;
  return undefined;
}

function check(files: readonly SourceFile[]): Complaint[] {
  const file = files.find((candidate) => candidate.path === list);
  const rows = rowsOf(file?.text ?? '');
  const short =
    rows.length < fewest
      ? [
          {
            path: list,
            line: 1,
            says: `has ${rows.length} hazards of at least ${fewest}: a hazard is never taken off the list, it is marked controlled`,
          },
        ]
      : [];
  return [
    ...short,
    ...rows.flatMap((row, index) => {
      const says = complaintAbout(row, index + 1);
      return says === undefined ? [] : [{ path: list, line: row.line, says }];
    }),
  ];
}

const rows = (status: string, shownBy: string): string =>
  Array.from(
    { length: fewest },
    (_, index) => `| ${index + 1} | hazard | cause | harm | control | ${shownBy} | ${status} |`,
  ).join('\n');

export const hazardsAreShown: Rule = {
  name: 'every hazard is on the list, and none is called controlled without a test',
  check,
  bad: [
    { path: list, text: rows('controlled', '') },
    { path: list, text: rows('done', '[a.test.ts](a.test.ts)') },
    { path: list, text: rows('open', '').replace('| 7 |', '| 700 |') },
    { path: list, text: '' },
  ],
  good: [{ path: list, text: rows('partly', '[a.test.ts](../../tools/test/a.test.ts)') }],
};
