/** Everything that crosses a wire: our own HTTP contract, registers as CSV. */
export * from './contract/basics.ts';
export * from './contract/import.ts';
export * from './contract/people.ts';
export * from './contract/readiness.ts';
export * from './contract/routes.ts';
export * from './contract/service.ts';
export * from './contract/sessions.ts';
export * from './register/mapping.ts';
export * from './register/answer.ts';
export * from './register/dry-run.ts';
export { type KnownPerson, knownPerson } from './register/known.ts';
export type { ProblemName, RowProblem } from './register/problem.ts';
export { inWords, type TakeIn } from './register/lines.ts';
export { type Likeness, type PersonName, likeness, numberKey } from './register/similar.ts';
export type { Doubt } from './register/file-habits.ts';
export { type Suggestion, suggestMapping } from './register/suggest.ts';
export { type FileProblem, type Table, type TableRow, readRegister, registerLimits } from './register/table.ts';
export * from './register/try-again.ts';
