/** How somebody was after a dose, in one line: danger signs first, then what was felt, then what was not asked. */
import { day, shortDate } from '../calendar/day.ts';
import { notAsked } from '../aftercare/told.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import { degreesText } from './temperature-text.ts';
import { plural } from './words.ts';

export function aftercareText(body: BodyOfKind<'aftercare'>): string {
  if (body.outcome === 'not asked further') return `not asked further how they were after the dose: ${body.reason}`;
  const { how, toldBy, feels, felt, signs, temperatureCelsius, temperatureFahrenheit, drinks, paracetamol, words } =
    body;
  const missing = notAsked(body);
  const parts = [
    `after the dose, ${how}${toldBy === 'the person' ? '' : `, told by ${toldBy}`}: ${feels}`,
    signs.length === 0 ? undefined : `danger signs: ${plural(signs, 'and')}`,
    felt.length === 0 ? undefined : feltText(felt),
    temperatureCelsius === undefined
      ? 'temperature not taken'
      : `temperature ${degreesText({ temperatureCelsius, temperatureFahrenheit })}`,
    `drinks ${drinks}`,
    `paracetamol ${paracetamol}`,
    words === undefined ? undefined : `"${words}"`,
    missing.length === 0 ? undefined : `not asked: ${plural(missing, 'and')}`,
  ];
  return parts.filter((part) => part !== undefined).join('; ');
}

const feltText = (felt: Extract<BodyOfKind<'aftercare'>, { outcome: 'asked' }>['felt']): string =>
  plural(
    felt.map(
      ({ what, beganOn, severity, endedOn }) =>
        `${what}, ${severity}, from ${shortDate(day(beganOn))} ${endedOn === undefined ? 'and not over' : `to ${shortDate(day(endedOn))}`}`,
    ),
    'and',
  );
