/** The usual questions of the day. A unit's protocol may word and weigh them otherwise. Common practice, no source. */
import type { DayQuestion } from './day-question.ts';

export const usualDayQuestions: readonly DayQuestion[] = [
  {
    id: 'unwell-now',
    asks: 'Unwell today, or fever, vomiting, diarrhoea or infection in the last days?',
    holdsOn: 'yes',
    then: 'not ready',
    says: 'unwell',
  },
  {
    id: 'ill-since-bloods',
    asks: 'Ill, in hospital, or had a scan with contrast since the blood test?',
    holdsOn: 'yes',
    then: 'not ready',
    says: 'ill since the bloods',
  },
  {
    id: 'drunk-enough',
    asks: 'Drunk plenty yesterday and today (or as much as allowed)?',
    holdsOn: 'no',
    then: 'not ready',
    says: 'not drunk enough',
  },
  {
    id: 'new-medicine',
    asks: 'Any new medicine since we last asked?',
    holdsOn: 'yes',
    then: 'cannot say',
    says: 'a new medicine to look at',
  },
  {
    id: 'teeth',
    asks: 'Pain in teeth or jaw, a loose tooth, a socket not healed, dental work pending?',
    holdsOn: 'yes',
    then: 'cannot say',
    says: 'teeth or jaw',
    staysUntilCleared: true,
    exception: 'teeth and jaw',
  },
  {
    id: 'thigh',
    asks: 'New pain in thigh, hip or groin?',
    holdsOn: 'yes',
    then: 'not ready',
    says: 'thigh, hip or groin pain: X-ray first',
    staysUntilCleared: true,
  },
  {
    id: 'eye',
    asks: 'A red, painful or light-shy eye, now or after the last dose?',
    holdsOn: 'yes',
    then: 'cannot say',
    says: 'eye inflammation',
    staysUntilCleared: true,
  },
  {
    id: 'other-bone-medicine',
    asks: 'Any other bone medicine, here or elsewhere (tablet, injection, drip)?',
    holdsOn: 'yes',
    then: 'cannot say',
    says: 'another bone medicine',
  },
  {
    id: 'consent-today',
    asks: 'Still wants the dose today?',
    holdsOn: 'no',
    then: 'not ready',
    says: 'does not want it today',
  },
];
