/**
 * What a scan of a pack says. Vectors: GS1 General Specifications (worked check digits, day 00, determination of century) and
 * the standard's own example number 09506000134352.
 */
import { checkDigit, plainDate } from '@twelvemonth/clinical';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { elementString } from '../src/pack-code/element-string.ts';
import { expiryFrom } from '../src/pack-code/expiry.ts';
import { readPack } from '../src/pack-code/pack.ts';

const gs = '\u001D';
const here = { expectsSerial: true, year: 2026 };
const packOf = (scanned: string, habits: Partial<Parameters<typeof readPack>[1]> = {}) => {
  const read = readPack(scanned, { ...here, ...habits });
  if ('trouble' in read) throw new Error(read.trouble.says);
  return { ...read.pack, expiresOn: read.pack.expiresOn === undefined ? undefined : plainDate(read.pack.expiresOn) };
};
const troubleOf = (scanned: string) => {
  const read = readPack(scanned, here);
  return 'trouble' in read ? read.trouble.name : 'none';
};

describe('check digits', () => {
  it.each([
    ['0950600013435', 2],
    ['950110153000', 3],
    ['629104150021', 3],
    ['0501234567890', 0],
    ['4012345', 5],
    ['10614141234567890', 8],
    ['1061414100041', 5],
  ])('of %s is %i', (digits, expected) => expect(checkDigit(digits)).toBe(expected));
});

describe('a pack that is read whole', () => {
  it('gives product number, expiry, batch and serial', () => {
    expect(packOf(`]d201095060001343521727123110AB123${gs}21S1`)).toEqual({
      productNumber: '09506000134352',
      expiresOn: '2027-12-31',
      batch: 'AB123',
      serial: 'S1',
      lookAt: [],
    });
  });

  it('is the same in any order of its fields, without the symbology in front, and with the scanner’s own separator', () => {
    const whole = packOf(`]d201095060001343521727123110AB123${gs}21S1`);
    expect(packOf(`21S1${gs}10AB123${gs}172712310109506000134352`)).toEqual(whole);
    expect(packOf(`${gs}01095060001343521727123110AB123${gs}21S1\r\n`)).toEqual(whole);
    // A scanner that types like a keyboard may send F8 as a sign of its own, or a bracket like the one of the symbology.
    for (const sent of ['~', ']'])
      expect(packOf(`]d201095060001343521727123110AB123${sent}21S1`, { separatorSentAs: sent })).toEqual(whole);
  });

  it('keeps small letters and the signs a batch may hold', () => {
    expect(packOf(`010950600013435210aB/1-2%"${gs}21S1`).batch).toBe('aB/1-2%"');
  });
});

describe('what has to be looked at', () => {
  it('a serial that is missing where one is expected is told, with the batch to look at', () => {
    const read = packOf(']d201095060001343521727123110AB123');
    expect([read.batch, read.serial]).toEqual(['AB123', undefined]);
    expect(read.lookAt.join()).toContain('the separator may be missing');
  });

  it('where packs carry no serial a batch may hold any figures', () => {
    expect(packOf('01095060001343521727123110AB12321S1', { expectsSerial: false }).batch).toBe('AB12321S1');
  });

  it('a month without a day is its last day, and says so', () => {
    expect(packOf(`01095060001343521727020010PA-1${gs}21S1`)).toMatchObject({
      expiresOn: '2027-02-28',
      lookAt: [expect.stringContaining('month only')],
    });
  });
});

describe('a scan that is refused, by name', () => {
  it.each([
    ['nothing scanned', ''],
    ['not GS1', ']d101095060001343521727123110AB123'],
    ['not GS1', 'PA-2391'],
    // FNC1 ends a field of variable length that is not the last (General Specifications, "Concatenation"): lost, the serial is read into the batch.
    ['separator missing', ']d201095060001343521727123110AB12321S1'],
    ['cut short', '01095060001343'],
    ['cut short', '010950600013435210'],
    ['wrong check digit', '010950600013435310A'],
    ['no product number', `10AB123${gs}17271231`],
    ['no such date', '010950600013435217260931'],
    ['two values', '0109506000134352010001234560001210A'],
    ['character not allowed', `010950600013435210A^B${gs}21S1`],
    ['no such field', '0109506000134352XX'],
    ['too long', `010950600013435210${'A'.repeat(21)}`],
  ])('%s', (name, scanned) => expect(troubleOf(scanned)).toBe(name));
});

describe('the expiry date', () => {
  it.each([
    ['270200', 2026, '2027-02-28'],
    ['280200', 2026, '2028-02-29'],
    ['261200', 2026, '2026-12-31'],
    ['260101', 2026, '2026-01-01'],
    ['000101', 2026, '2000-01-01'],
    ['760101', 2026, '2076-01-01'],
    ['770101', 2026, '1977-01-01'],
    ['990101', 2026, '1999-01-01'],
    ['000101', 2050, '2100-01-01'],
    ['990101', 2049, '2099-01-01'],
  ])('%s scanned in %i is %s', (digits, year, date) => {
    const expiry = expiryFrom(digits, year);
    expect(expiry && plainDate(expiry.expiresOn)).toBe(date);
  });

  it.each(['260931', '261301', '260229', '2612', 'AB1231'])('%s is no date', (digits) =>
    expect(expiryFrom(digits, 2026)).toBeUndefined(),
  );
});

it('whatever is scanned is either read or refused with a sentence: nothing is thrown, nothing hangs', () => {
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string({ unit: 'binary', maxLength: 120 }),
        fc.string({ unit: fc.constantFrom('0', '1', '2', '7', 'A', gs), maxLength: 80 }),
      ),
      (text) => {
        const read = readPack(text, here);
        expect('trouble' in read ? read.trouble.says : read.pack.productNumber).not.toBe('');
      },
    ),
    { numRuns: 5_000, seed: 11 },
  );
});

it('fields put together come apart as they were', () => {
  const value = fc.stringMatching(/^[A-Za-z0-9/-]{1,20}$/);
  fc.assert(
    fc.property(value, value, fc.boolean(), (batch, serial, serialFirst) => {
      const variable = serialFirst ? [`21${serial}`, `10${batch}`] : [`10${batch}`, `21${serial}`];
      const read = elementString(`0109506000134352${variable.join(gs)}`);
      expect(
        'fields' in read && Object.fromEntries(read.fields.map((field) => [field.identifier, field.value])),
      ).toEqual({
        '01': '09506000134352',
        '10': batch,
        '21': serial,
      });
    }),
    { numRuns: 500, seed: 12 },
  );
});
