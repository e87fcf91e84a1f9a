/**
 * What a scan of a pack says: product number, batch, expiry, serial. A reading, never a check: the second person reads the
 * pack with their own eyes.
 */
import { type Day, hasRightCheckDigit } from '@twelvemonth/clinical';
import { type ScanTrouble, again, elementString } from './element-string.ts';
import { expiryFrom } from './expiry.ts';

export type PackReading = {
  /** Global trade item number, 14 digits. */
  readonly productNumber: string;
  readonly batch: string | undefined;
  readonly expiresOn: Day | undefined;
  readonly serial: string | undefined;
  /** What to look at on the pack before going on. */
  readonly lookAt: readonly string[];
};

export type ScannerHabits = {
  /** The character the unit's scanners type in place of the separator. */
  readonly separatorSentAs?: string;
  /** The unit's packs carry a serial: its absence is worth a word, and a batch that may have swallowed it is none. */
  readonly expectsSerial: boolean;
  /** Year of the scan, for the century of the expiry date. */
  readonly year: number;
};

/** A batch that may hold the serial too: the sign of a serial (21) stands inside it. */
const swallowsSerial = /.21./;

export function readPack(
  scanned: string,
  { separatorSentAs, expectsSerial, year }: ScannerHabits,
): { readonly pack: PackReading } | { readonly trouble: ScanTrouble } {
  const taken = elementString(scanned, separatorSentAs);
  if ('trouble' in taken) return taken;
  const valueOf = (identifier: string) => taken.fields.find((field) => field.identifier === identifier)?.value;
  const productNumber = valueOf('01');
  if (productNumber === undefined)
    return {
      trouble: {
        name: 'no product number',
        says: 'The code has no product number (01). Scan the code on the pack itself, not on the carton.',
      },
    };
  if (!hasRightCheckDigit(productNumber))
    return {
      trouble: {
        name: 'wrong check digit',
        says: `Product number ${productNumber} has a wrong check digit: the scan was misread. Scan it again.`,
      },
    };
  const expiryDigits = valueOf('17');
  const expiry = expiryDigits === undefined ? undefined : expiryFrom(expiryDigits, year);
  if (expiryDigits !== undefined && expiry === undefined)
    return {
      trouble: {
        name: 'no such date',
        says: `The expiry ${expiryDigits} (year, month, day) is not a date. Read the date on the pack; ask the pharmacy if it reads the same.`,
      },
    };
  const batch = valueOf('10');
  const serial = valueOf('21');
  if (expectsSerial && serial === undefined && batch !== undefined && swallowsSerial.test(batch))
    return {
      trouble: {
        name: 'separator missing',
        says: `The separator after the batch is missing: the code reads batch ${batch} and no serial number, and packs here carry one. ${again}`,
      },
    };
  const lookAt = [
    ...(batch === undefined ? ['The code has no batch: read it from the pack.'] : []),
    ...(expiry === undefined ? ['The code has no expiry: read it from the pack.'] : []),
    ...(expiry?.monthOnly === true ? ['The code gives a month only: it is taken as the last day of that month.'] : []),
    ...(expectsSerial && serial === undefined
      ? [
          `The code has no serial number, and packs here carry one: the separator may be missing, so look at the batch${batch === undefined ? '' : ` (${batch})`} too.`,
        ]
      : []),
  ];
  return { pack: { productNumber, batch, expiresOn: expiry?.expiresOn, serial, lookAt } };
}
