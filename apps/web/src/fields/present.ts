/** What was entered, without what was left open: the server says which of it it needs. */
export const present = (of: object): object =>
  Object.fromEntries(Object.entries(of).filter(([, value]) => value !== undefined));
