import type { Fact } from './patient-record.ts';

/** A person's no that no consent has come after: by its day and, on one day, by when it was written. */
export const noAfterConsent = (
  consent: Fact<'consent'> | undefined,
  refusal: Fact<'refusal'> | undefined,
): Fact<'refusal'> | undefined =>
  refusal === undefined ||
  (consent !== undefined && (consent.on > refusal.on || (consent.on === refusal.on && consent.seq > refusal.seq)))
    ? undefined
    : refusal;
