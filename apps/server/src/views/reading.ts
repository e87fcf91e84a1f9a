/** Body, kidneys and bone of a person for the screen. */
import { type Day, type Protocol, type SubjectRecord, bodyKidneysBone } from '@twelvemonth/clinical';
import type { ReadingPartView } from '@twelvemonth/exchange';

export const readingOf = (record: SubjectRecord, protocol: Protocol, today: Day): ReadingPartView[] =>
  bodyKidneysBone(record, protocol, today).map(({ title, lines, cautions }) => ({
    title,
    lines: lines.map(({ what, is, of, put, source, entries }) => ({
      what,
      is,
      of,
      ...(put === undefined ? {} : { put }),
      ...(source === undefined ? {} : { source }),
      entries: [...entries],
    })),
    cautions: [...cautions],
  }));
