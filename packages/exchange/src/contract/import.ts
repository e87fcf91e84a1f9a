/** Bringing in a register: the file is read by the server; nothing is written before someone accepts. */
import { z } from 'zod';
import { registerMapping } from '../register/mapping.ts';

export const importBody = z.object({
  file: z.string().min(1).max(200),
  /** The file's text, already decoded. */
  text: z.string().min(1).max(20_000_000),
  /** Absent: the server suggests one. */
  mapping: registerMapping.optional(),
  unit: z.string(),
});

export const rowProblem = z.object({
  row: z.number().int(),
  column: z.string(),
  problem: z.string(),
  says: z.string(),
  remedy: z.string(),
  cell: z.string(),
  blocks: z.boolean(),
});
export type RowProblemView = z.infer<typeof rowProblem>;

export const dryRunAnswer = z.object({
  file: z.string(),
  fingerprint: z.string(),
  columns: z.array(z.object({ column: z.string(), samples: z.array(z.string()) })),
  mapping: registerMapping,
  /** What the mapping still lacks before anything can be taken in. */
  mappingProblems: z.array(z.object({ column: z.string().optional(), says: z.string(), remedy: z.string() })),
  /** What a suggested mapping supposed, for a person to confirm; empty when the mapping was given. */
  doubts: z.array(z.object({ column: z.string().optional(), says: z.string() })),
  rows: z.number().int(),
  counts: z.object({
    newPeople: z.number().int(),
    knownPeople: z.number().int(),
    newFacts: z.number().int(),
    alreadyHere: z.number().int(),
    rowsWaiting: z.number().int(),
  }),
  problems: z.array(rowProblem),
  /** A few rows as they would be written, in words. */
  preview: z.array(
    z.object({ row: z.number().int(), who: z.string(), isNew: z.boolean(), lines: z.array(z.string()) }),
  ),
  /** Lines of the file before the header that were passed over. */
  passedOver: z.number().int(),
});
export type DryRunAnswer = z.infer<typeof dryRunAnswer>;

export const acceptBody = importBody.extend({ mapping: registerMapping, fingerprint: z.string() });
export const acceptAnswer = z.object({
  taken: z.number().int(),
  people: z.number().int(),
  facts: z.number().int(),
  alreadyHere: z.number().int(),
  waiting: z.number().int(),
});
export type AcceptAnswer = z.infer<typeof acceptAnswer>;

export const waitingRow = z.object({
  register: z.string(),
  fingerprint: z.string(),
  file: z.string(),
  row: z.number().int(),
  cells: z.record(z.string(), z.string()),
  problems: z.array(z.object({ column: z.string(), problem: z.string(), says: z.string(), remedy: z.string() })),
  since: z.string(),
});
export const waitingRowsAnswer = z.object({ rows: z.array(waitingRow) });
export type WaitingRow = z.infer<typeof waitingRow>;
/** Try a waiting row again with corrected cells, or leave it out with a reason. */
export const settleRowBody = z.discriminatedUnion('outcome', [
  z.object({
    outcome: z.literal('try again'),
    register: z.string(),
    fingerprint: z.string(),
    row: z.number().int(),
    cells: z.record(z.string(), z.string()),
    sameAs: z.string().optional(),
    notTheSame: z.boolean().optional(),
  }),
  z.object({
    outcome: z.literal('left out'),
    register: z.string(),
    fingerprint: z.string(),
    row: z.number().int(),
    reason: z.string().trim().min(1),
  }),
]);
