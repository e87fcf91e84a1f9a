/** Letters as values, and what they become. */
export * from './family-doctor.ts';
export * from './letter.ts';
