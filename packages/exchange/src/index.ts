/** Everything that crosses a wire: our own HTTP contract, registers as CSV. */
export * from './contract/basics.ts';
export * from './contract/import.ts';
export * from './contract/people.ts';
export * from './contract/readiness.ts';
export * from './contract/routes.ts';
export * from './contract/service.ts';
export * from './contract/sessions.ts';
export * from './register/mapping.ts';
