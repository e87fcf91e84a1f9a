/**
 * One text for one value: keys in order, nothing left to the writer's taste. What is hashed is exactly what is stored, so
 * both databases keep this text as text and never as JSON of their own.
 */

/** Throws on anything that JSON would silently change (dates, NaN, class instances): a body is plain data or a defect. */
export function canonicalText(value: unknown): string {
  if (value === null || typeof value === 'boolean' || typeof value === 'string') return JSON.stringify(value);
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new TypeError(`${value} cannot be written down: numbers in a body are finite`);
    return JSON.stringify(value);
  }
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(',')}]`;
  if (typeof value === 'object' && isPlain(value)) {
    const fields = Object.entries(value).filter(([, field]) => field !== undefined);
    fields.sort(([left], [right]) => (left < right ? -1 : 1));
    return `{${fields.map(([name, field]) => `${JSON.stringify(name)}:${canonicalText(field)}`).join(',')}}`;
  }
  throw new TypeError(`a body holds plain data only, not ${describe(value)}`);
}

const isPlain = (value: object): boolean => {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
};

const describe = (value: unknown): string =>
  typeof value === 'object' && value !== null ? (value.constructor?.name ?? 'an object') : typeof value;

/** A text both databases store unchanged: PostgreSQL refuses NUL, and half a surrogate pair becomes another character. */
export function storable(text: string, what: string): string {
  if (text.includes('\0') || !text.isWellFormed())
    throw new TypeError(`${what} holds a character that cannot be stored`);
  return text;
}

/** Texts joined so that no two different lists share a result. */
export const lengthPrefixed = (parts: readonly string[]): string =>
  parts.map((part) => `${part.length}:${part}`).join('');
