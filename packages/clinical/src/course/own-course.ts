/**
 * What of the notes belongs to the course of the prescribed regimen: not the doses of a treatment that is counted apart, not
 * the reviews of the medicine before (docs/readiness.md R0, R7).
 */
import type { Day } from '../calendar/day.ts';
import { type Protocol, regimenNamed, underRegimen } from '../protocol/protocol.ts';
import type { Fact } from '../record/patient-record.ts';

/** Counting doses without those given for another disease; of a regimen counted apart only its own. */
export function ownDoses(
  counting: readonly Fact<'dose'>[],
  prescriptions: readonly Fact<'prescription'>[],
  protocol: Protocol,
): readonly Fact<'dose'>[] {
  const { regimen } = protocol;
  const isApart = ({ body }: Fact<'prescription'>): boolean =>
    regimenNamed(protocol, body.regimen)?.countedApart === true;
  if (!regimen.countedApart && !prescriptions.some(isApart)) return counting;
  return counting.filter((dose) => {
    const order = prescriptions.findLast(({ on }) => on <= dose.on);
    if (regimen.countedApart) return order?.body.regimen === regimen.id;
    return order === undefined || !isApart(order);
  });
}

/** The day on which another medicine was prescribed than the one before; undefined: always this one. */
function medicineSince(prescriptions: readonly Fact<'prescription'>[], protocol: Protocol): Day | undefined {
  const medicineOf = ({ body }: Fact<'prescription'>) => underRegimen(protocol, body.regimen).regimen.medicine;
  for (let index = prescriptions.length - 1; index > 0; index -= 1) {
    const [before, order] = [prescriptions[index - 1], prescriptions[index]];
    if (before === undefined || order === undefined) return undefined;
    if (medicineOf(before) !== protocol.regimen.medicine) return order.on;
  }
  return undefined;
}

/** Reviews about the medicine now prescribed: one of the day it was chosen is about the medicine before. */
export function ownReviews(
  reviews: readonly Fact<'course-review'>[],
  prescriptions: readonly Fact<'prescription'>[],
  protocol: Protocol,
): readonly Fact<'course-review'>[] {
  const since = medicineSince(prescriptions, protocol);
  return since === undefined ? reviews : reviews.filter(({ on }) => on > since);
}

/** Doses since the newest review that opened a new course. */
export function dosesOfCourse(
  counting: readonly Fact<'dose'>[],
  reviews: readonly Fact<'course-review'>[],
): readonly Fact<'dose'>[] {
  const opened = reviews.findLast(({ body }) => body.outcome === 'new course');
  return opened === undefined ? counting : counting.filter((dose) => dose.on >= opened.on);
}
