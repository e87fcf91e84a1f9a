/** Who of today's list sits in which chair now, the person asked about left out. */
import { visitOn } from '@twelvemonth/clinical';
import type { VisitView } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';
import { fullName } from './person-words.ts';

export const seatedBeside = ({ patient, today }: Person, onTheList: readonly Person[]): VisitView['seated'] =>
  onTheList.flatMap((other) => {
    const visit = other.patient === patient ? undefined : visitOn(other.record, today);
    const chair = visit?.over === false ? visit.arrived.body.chair : undefined;
    return chair === undefined ? [] : [{ chair, name: fullName(other) }];
  });
