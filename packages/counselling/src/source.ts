/** Where a number comes from and how far it was seen. A number without one cannot be written down here. */
export type Seen = 'read' | 'secondary' | 'memory';

export type Source = {
  /** The publication: author, year, journal, volume and page, and its doi where it is known. */
  readonly citation: string;
  readonly seen: Seen;
  readonly note?: string;
};

/** Part of a group, in per cent. `events` and `people` where the publication gives them. */
export type Share = {
  readonly percent: number;
  readonly events?: number;
  readonly people?: number;
  readonly source: Source;
};

/** A range in which the true value lies with a confidence of 95 per cent. */
export type Interval = { readonly from: number; readonly to: number };

const seenWords: Readonly<Record<Seen, string>> = {
  read: 'the published text was read',
  secondary: 'seen in a copy by somebody else',
  memory: 'from memory, not yet seen: a clinician confirms it before it is relied on',
};

export const sourceText = ({ citation, seen, note }: Source): string =>
  `${citation} (${seenWords[seen]}${note === undefined ? '' : `; ${note}`})`;
