/** The search part of an address without one of its keys. */
export function without<Search extends object, Key extends keyof Search>(search: Search, key: Key): Omit<Search, Key> {
  const rest = { ...search };
  delete rest[key];
  return rest;
}
