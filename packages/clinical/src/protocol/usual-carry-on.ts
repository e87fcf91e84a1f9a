/** What the starters let speak for carrying on after the planned doses; a unit strikes out, adds, and says where it comes from. */
import type { CarryOn } from './carry-on.ts';

const NOGG: Pick<CarryOn, 'source' | 'status'> = {
  source: 'NOGG 2021, Gregson 2022, doi 10.1007/s11657-022-01061-5: up to six years',
  status: 'from memory',
};
const ASBMR: Pick<CarryOn, 'source' | 'status'> = {
  source: 'ASBMR 2016, Adler, JBMR 31:16: up to six years of infusions',
  status: 'read',
};

export const usualCarryOn: readonly CarryOn[] = [
  { id: 'age', ...NOGG },
  { id: 'hip or spine fracture', ...NOGG },
  { id: 'fracture on treatment', ...NOGG },
  { id: 'hip T-score', ...NOGG },
  { id: 'steroid', ...NOGG },
];

export const usualCarryOnUs: readonly CarryOn[] = [
  { id: 'age', ...ASBMR },
  { id: 'hip or spine fracture', ...ASBMR },
  { id: 'fracture on treatment', ...ASBMR },
  { id: 'hip T-score', ...ASBMR },
  { id: 'high-fracture-risk', asks: 'a high risk of a fracture by the instrument the unit uses', ...ASBMR },
  { id: 'steroid', ...NOGG },
];
