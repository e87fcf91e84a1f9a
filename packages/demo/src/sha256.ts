/** SHA-256 (FIPS 180-4), for the content hash of a protocol sheet; pure, so that the demo needs no platform. Test: against node:crypto. */

const primes = ((): readonly number[] => {
  const found: number[] = [];
  for (let candidate = 2; found.length < 64; candidate += 1)
    if (found.every((prime) => candidate % prime !== 0)) found.push(candidate);
  return found;
})();
/** First 32 bits of the fractional part. */
const fraction = (value: number): number => Math.floor((value - Math.floor(value)) * 2 ** 32) >>> 0;
const roundConstants = primes.map((prime) => fraction(Math.cbrt(prime)));
const start = primes.slice(0, 8).map((prime) => fraction(Math.sqrt(prime)));

const turned = (word: number, by: number): number => (word >>> by) | (word << (32 - by));

export function sha256Hex(text: string): string {
  const bytes = new TextEncoder().encode(text);
  const blocks = Math.ceil((bytes.length + 9) / 64);
  const message = new DataView(new ArrayBuffer(blocks * 64));
  bytes.forEach((byte, index) => message.setUint8(index, byte));
  message.setUint8(bytes.length, 0x80);
  message.setUint32(blocks * 64 - 8, Math.floor(bytes.length / 2 ** 29));
  message.setUint32(blocks * 64 - 4, (bytes.length << 3) >>> 0);
  const state = [...start];
  for (let block = 0; block < blocks; block += 1) mix(state, message, block * 64);
  return state.map((word) => (word >>> 0).toString(16).padStart(8, '0')).join('');
}

function mix(state: number[], message: DataView, offset: number): void {
  const words = new Uint32Array(64);
  for (let i = 0; i < 16; i += 1) words[i] = message.getUint32(offset + i * 4);
  const word = (i: number): number => words[i] ?? 0;
  for (let i = 16; i < 64; i += 1) {
    const [a, b] = [word(i - 15), word(i - 2)];
    const small = turned(a, 7) ^ turned(a, 18) ^ (a >>> 3);
    const large = turned(b, 17) ^ turned(b, 19) ^ (b >>> 10);
    words[i] = (word(i - 16) + small + word(i - 7) + large) >>> 0;
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state;
  for (let i = 0; i < 64; i += 1) {
    const one =
      (h +
        (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) +
        ((e & f) ^ (~e & g)) +
        (roundConstants[i] ?? 0) +
        word(i)) >>>
      0;
    const two = ((turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c))) >>> 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + one) >>> 0, c, b, a, (one + two) >>> 0];
  }
  [a, b, c, d, e, f, g, h].forEach((value, index) => {
    state[index] = ((state[index] ?? 0) + value) >>> 0;
  });
}
