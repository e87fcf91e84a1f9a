/** Everything the rest of the product may use of the clinical core. */
export * from './calendar/day.ts';
export * from './calendar/partial-date.ts';
export * from './calendar/unit-calendar.ts';
export * from './exact/decimal.ts';
export * from './exact/quantity.ts';
export * from './kinds/entry-kind.ts';
export * from './kinds/index.ts';
export * from './ledger/entry.ts';
export * from './ledger/role.ts';
export * from './ledger/subject.ts';
