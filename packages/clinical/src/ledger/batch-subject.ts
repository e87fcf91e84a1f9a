/** Whose notes a batch's and a pack's are: batch numbers and serials as ids, whatever signs they hold. */
import { type Subject, subject } from './subject.ts';

const longestId = 80;

/** Letters, digits and hyphens stay; every other sign becomes its code between underscores, so that no two texts share an id. */
const asId = (text: string): string =>
  text.replaceAll(/[^A-Za-z0-9-]/g, (sign) => `_${(sign.codePointAt(0) ?? 0).toString(16)}_`).slice(0, longestId);

/** A batch number as it is compared: as printed, typed with spaces or in small letters it is the same batch. */
export const sameBatch = (batch: string): string => batch.replaceAll(/\s/g, '').toUpperCase();

export const batchSubject = (batch: string): Subject => subject('batch', asId(sameBatch(batch)));

/** One pack in the world. Source: GS1 General Specifications, "Serial number": unique within a product number. */
export const packSubject = (productNumber: string, serial: string): Subject =>
  subject('pack', `${productNumber}.${asId(serial)}`);
