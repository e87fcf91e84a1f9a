/** Values as DER writes them (ITU-T X.690), as far as a certificate needs them. */

const tagged = (tag: number, ...parts: readonly Uint8Array[]): Buffer => {
  const content = Buffer.concat(parts);
  const bytes: number[] = [];
  for (let rest = content.length; rest > 0; rest >>>= 8) bytes.unshift(rest & 0xff);
  const length = content.length < 0x80 ? [content.length] : [0x80 | bytes.length, ...bytes];
  return Buffer.concat([Buffer.from([tag, ...length]), content]);
};

export const sequence = (...parts: readonly Uint8Array[]): Buffer => tagged(0x30, ...parts);
export const set = (...parts: readonly Uint8Array[]): Buffer => tagged(0x31, ...parts);
export const boolean = (value: boolean): Buffer => tagged(0x01, Buffer.from([value ? 0xff : 0x00]));
export const octets = (content: Uint8Array): Buffer => tagged(0x04, content);
export const words = (text: string): Buffer => tagged(0x0c, Buffer.from(text, 'utf8'));

/** A whole number that is not negative, most significant byte first. */
export function whole(bytes: Uint8Array): Buffer {
  let from = 0;
  while (from < bytes.length - 1 && bytes[from] === 0) from += 1;
  const shortest = bytes.subarray(from);
  return tagged(0x02, ((shortest[0] ?? 0) & 0x80) === 0 ? shortest : Buffer.concat([Buffer.from([0]), shortest]));
}

/** Bits by their number; in a DER list of named bits, zeros at the end are not written. */
export function namedBits(...numbers: readonly number[]): Buffer {
  const bytes = Buffer.alloc(Math.floor(Math.max(...numbers) / 8) + 1);
  for (const number of numbers) {
    const at = Math.floor(number / 8);
    bytes[at] = (bytes[at] ?? 0) | (0x80 >> (number % 8));
  }
  return tagged(0x03, Buffer.from([7 - (Math.max(...numbers) % 8)]), bytes);
}

export const bitsOf = (content: Uint8Array): Buffer => tagged(0x03, Buffer.from([0]), content);

/** "2.5.29.17" */
export function identifier(dotted: string): Buffer {
  const [first = 0, second = 0, ...rest] = dotted.split('.').map(Number);
  const bytes = [first * 40 + second, ...rest].flatMap((arc) => {
    const sevens = [arc & 0x7f];
    for (let left = arc >>> 7; left > 0; left >>>= 7) sevens.unshift(0x80 | (left & 0x7f));
    return sevens;
  });
  return tagged(0x06, Buffer.from(bytes));
}

/** A moment to the second in UTC; two digits of the year until 2049 and four from then on (RFC 5280, 4.1.2.5). */
export function moment(instant: string): Buffer {
  const digits = instant.slice(0, 19).replaceAll(/[-:T]/g, '');
  return digits < '2050' ? tagged(0x17, Buffer.from(`${digits.slice(2)}Z`)) : tagged(0x18, Buffer.from(`${digits}Z`));
}

/** `[number] EXPLICIT`, or a constructed implicit one: the parts stand inside it. */
export const within = (number: number, ...parts: readonly Uint8Array[]): Buffer => tagged(0xa0 | number, ...parts);
/** `[number] IMPLICIT` of something that has no parts. */
export const as = (number: number, content: Uint8Array): Buffer => tagged(0x80 | number, content);
