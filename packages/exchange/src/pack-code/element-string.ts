/**
 * A GS1 element string taken apart into its fields, as a scanner hands it over. The separator is FNC1, which arrives as the
 * control character GS; scanners that type like a keyboard may send another character instead, which the unit tells us.
 * Source: GS1 General Specifications, section "Concatenation of element strings".
 */
import { identifierAt, longestValue } from './application-identifiers.ts';

export type Field = { readonly identifier: string; readonly value: string };

export type ScanTrouble = {
  readonly name:
    | 'nothing scanned'
    | 'not GS1'
    | 'no such field'
    | 'cut short'
    | 'too long'
    | 'character not allowed'
    | 'two values'
    | 'no product number'
    | 'wrong check digit'
    | 'no such date'
    | 'separator missing';
  /** What is wrong and what to do, for whoever holds the pack. */
  readonly says: string;
};

const separator = '\u001D';
/** The separator as a sign one can see and store: its picture in Unicode, which no code can hold. */
const separatorShown = '\u241D';
/** What the symbology identifier in front may say: DataMatrix, GS1-128 and QR that carry GS1 data. */
const carriesGs1 = new Set([']d2', ']C1', ']Q3', ']e0']);
/** GS1 character set 82 (General Specifications, figure "GS1 AI encodable character set 82"). */
const encodable = /^[A-Za-z0-9!"%&'()*+,\-./:;<=>?_]*$/;

export const again = 'Scan it again, or type what the pack says and have it read by a second person.';

/** The fields in the order scanned. `separatorSentAs`: the character this unit's scanners type instead of GS. */
export function elementString(
  scanned: string,
  separatorSentAs?: string,
): { readonly fields: readonly Field[] } | { readonly trouble: ScanTrouble } {
  const symbology = /^\][A-Za-z][0-9]/.exec(scanned)?.[0];
  if (symbology !== undefined && !carriesGs1.has(symbology))
    return trouble(
      'not GS1',
      `This code is not a GS1 code (${symbology}). Scan the square code with batch and expiry.`,
    );
  const afterSymbology = scanned.slice(symbology?.length ?? 0).replace(/[\r\n\t ]+$/, '');
  let rest = withSeparator(afterSymbology, separatorSentAs, separator);
  if (rest.startsWith(separator)) rest = rest.slice(1);
  if (rest === '') return trouble('nothing scanned', 'Nothing was scanned. Hold the scanner over the square code.');
  const fields: Field[] = [];
  while (rest !== '') {
    const found = identifierAt(rest);
    if (found === undefined)
      return fields.length === 0
        ? trouble('not GS1', `This is not a GS1 code: it begins with "${rest.slice(0, 4)}". ${again}`)
        : trouble(
            'no such field',
            `After (${fields.at(-1)?.identifier}) no field begins with "${rest.slice(0, 4)}": a separator may be missing. ${again}`,
          );
    const identifier = rest.slice(0, found.digits);
    const body = rest.slice(found.digits);
    const end = found.valueLength ?? (body.includes(separator) ? body.indexOf(separator) : body.length);
    const value = body.slice(0, end);
    if (found.valueLength !== undefined && (value.length < found.valueLength || value.includes(separator)))
      return trouble(
        'cut short',
        `Field (${identifier}) has ${value.split(separator)[0]?.length ?? 0} of ${found.valueLength} characters: the scan was cut short. ${again}`,
      );
    if (value === '') return trouble('cut short', `Field (${identifier}) is empty: the scan was cut short. ${again}`);
    if (value.length > longestValue(identifier))
      return trouble(
        'too long',
        `Field (${identifier}) has ${value.length} characters, at most ${longestValue(identifier)} are possible: a separator may be missing. ${again}`,
      );
    if (!encodable.test(value))
      return trouble(
        'character not allowed',
        `Field (${identifier}) holds a character no GS1 code can hold: "${value}". The scanner may be set for another keyboard. ${again}`,
      );
    const earlier = fields.find((field) => field.identifier === identifier);
    if (earlier !== undefined && earlier.value !== value)
      return trouble(
        'two values',
        `The code gives two values for (${identifier}): ${earlier.value} and ${value}. Put the pack aside and ask the pharmacy.`,
      );
    if (earlier === undefined) fields.push({ identifier, value });
    const after = body.slice(end);
    rest = after.startsWith(separator) ? after.slice(1) : after;
  }
  return { fields };
}

const withSeparator = (code: string, separatorSentAs: string | undefined, as: string): string =>
  [separator, separatorShown, separatorSentAs ?? ''].reduce(
    (text, sent) => (sent === '' ? text : text.replaceAll(sent, as)),
    code,
  );

/** A scan as it is kept: every sign as it came, the separator as one that can be seen. */
export const scanAsKept = (scanned: string, separatorSentAs?: string): string =>
  withSeparator(scanned.replace(/[\r\n\t ]+$/, ''), separatorSentAs, separatorShown);

function trouble(name: ScanTrouble['name'], says: string): { readonly trouble: ScanTrouble } {
  return { trouble: { name, says } };
}
