/** Whom one speaks to about a person, in words: who comes first, whether the person agreed, what a proxy showed. */
import { contactPeople, contactPersonText } from '@twelvemonth/clinical';
import type { Person } from '../register/people.ts';

export const speakToInWords = ({ record, today }: Pick<Person, 'record' | 'today'>): string[] =>
  contactPeople(record, today).map(({ body }) => contactPersonText(body));
