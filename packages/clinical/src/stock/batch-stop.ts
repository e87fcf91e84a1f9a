/** Whether a batch is stopped: in quarantine, or recalled. A stop holds until a pharmacist has lifted that very one. */
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';

type Stop = Fact<'batch-stopped'>;

/** Every stop that nobody has lifted, the oldest first. One that was lifted without naming a stop lifted all before it. */
export function standingStops(batch: SubjectRecord): readonly Stop[] {
  const released = factsOf(batch, 'batch-released');
  return factsOf(batch, 'batch-stopped')
    .filter((stop) =>
      released.every(({ seq, body }) => (body.stop === undefined ? seq < stop.seq : body.stop !== stop.id)),
    )
    .toSorted((a, b) => a.seq - b.seq);
}

const holds = ({ body }: Stop, productNumber: string | undefined): boolean =>
  body.productNumber === undefined || productNumber === undefined || body.productNumber === productNumber;

/** What stops a pack of the batch; undefined: nothing does. Where the pack's product number is not known, any stop holds. */
export const stopOf = (batch: SubjectRecord, productNumber?: string): Stop | undefined =>
  standingStops(batch).findLast((stop) => holds(stop, productNumber));
