/** Making drafts of known kinds: the shape is the kind's current one, the body is checked by the type. */
import type { PlainDate } from '../calendar/day.ts';
import { type BodyOfKind, type KindName, entryKinds } from '../kinds/index.ts';
import type { Draft, LocalMoment, Uuid } from '../ledger/entry.ts';
import type { Subject } from '../ledger/subject.ts';
import type { Surroundings } from './surroundings.ts';

export const draftOf = <Kind extends KindName>(
  subject: Subject,
  kind: Kind,
  body: BodyOfKind<Kind>,
  effectiveAt: LocalMoment | PlainDate,
  zone: string,
  amends?: Uuid,
): Draft => ({
  subject,
  kind,
  shape: entryKinds[kind].shape,
  body,
  effectiveAt,
  zone,
  ...(amends === undefined ? {} : { amends }),
});

/** A draft of something that is true now. */
export const draftNow = <Kind extends KindName>(
  subject: Subject,
  kind: Kind,
  body: BodyOfKind<Kind>,
  now: Surroundings,
): Draft => draftOf(subject, kind, body, now.moment, now.zone);
