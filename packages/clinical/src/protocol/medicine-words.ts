/**
 * Bone medicines named in free text: by the stems of their generic names, whatever the spelling around them. It can only find;
 * that nothing is found says nothing (stems: WHO, International Nonproprietary Names, `from memory`).
 */
import { type BoneMedicine, isBisphosphonate } from './medicines.ts';

/** In small letters, without marks. */
export const plainText = (text: string): string => text.normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase();

/** "alendronic acid", "Risedronat", "zoledronate", "a biphosphonate". */
export const namesBisphosphonate = (text: string): boolean =>
  /dron(?:at|ic|s)|zoled|bis?-?phosph|di-?phosph/.test(plainText(text));

const stems: readonly (readonly [string, BoneMedicine])[] = [
  ['denosum', 'denosumab 60 mg'],
  ['denosum', 'denosumab 120 mg'],
  ['romosoz', 'romosozumab 210 mg'],
  ['teripara', 'teriparatide'],
];

/** Whether text names the medicine, or where it is a bisphosphonate, any bisphosphonate. */
export const namesMedicine = (text: string, medicine: BoneMedicine): boolean =>
  isBisphosphonate(medicine)
    ? namesBisphosphonate(text)
    : stems.some(([stem, of]) => of === medicine && plainText(text).includes(stem));
