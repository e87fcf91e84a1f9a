/** What is told at the door once a dose was given: its batch, when the next is due, from when we ring, and when bloods are for it. */
import { type Visit, plainDate } from '@twelvemonth/clinical';
import type { VisitView } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';

export function seeOffOf({ course }: Person, visit: Visit | undefined): Pick<VisitView, 'nextDue' | 'seeOff'> {
  const batch = visit?.dose?.body.batch;
  const { due, recall } = course;
  return {
    ...(due === undefined ? {} : { nextDue: plainDate(due) }),
    ...(visit?.dose === undefined
      ? {}
      : {
          seeOff: {
            ...(batch === undefined ? {} : { batch }),
            ...(recall === undefined ? {} : { ringFrom: plainDate(recall.from) }),
            ...(recall?.bloods === undefined
              ? {}
              : { bloods: { from: plainDate(recall.bloods.from), until: plainDate(recall.bloods.until) } }),
          },
        }),
  };
}
