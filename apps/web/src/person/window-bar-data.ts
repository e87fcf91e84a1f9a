/** The window bar of one person, from their readiness as it crosses the wire. */
import type { WindowBarData } from '@twelvemonth/charts';
import { day } from '@twelvemonth/clinical';
import type { PlaceView, ReadinessWire } from '@twelvemonth/exchange';
import { dayInWords } from '../words/dates.ts';
import { dotted } from '../words/texts.ts';

const waitingWords = ({ window, noWindow }: ReadinessWire): string => {
  if (window === undefined) return noWindow?.says ?? 'no dates yet';
  // The root of the chain, without its dates: the bar shows those.
  const root = window.waitingFor[0]?.what.replace(/ (?:to|from|until|usable) \d.*$/, '');
  return root === undefined ? 'waiting' : `waiting for ${root}`;
};

export function windowBarData(readiness: ReadinessWire, place: PlaceView | undefined): WindowBarData {
  const { window } = readiness;
  const inside =
    place !== undefined &&
    window !== undefined &&
    place.on >= window.first &&
    (window.last === undefined || place.on <= window.last);
  const proviso = inside
    ? readiness.on === place.on && readiness.verdictOn !== 'ready'
      ? 'if good'
      : undefined
    : 'outside the window';
  return {
    today: day(readiness.today),
    waiting: waitingWords(readiness),
    steps: readiness.nextSteps.map(({ what, earliest, latest }) => ({
      what,
      from: day(earliest),
      until: day(latest ?? earliest),
    })),
    ...(window === undefined
      ? {}
      : {
          window: {
            first: day(window.first),
            ...(window.last === undefined ? {} : { last: day(window.last) }),
            ...(window.certainUntil === undefined ? {} : { certainUntil: day(window.certainUntil) }),
          },
        }),
    ...(window?.runsOut === undefined ? {} : { runsOut: window.runsOut }),
    ...(place === undefined
      ? {}
      : {
          place: {
            on: day(place.on),
            says: dotted(`booked ${dayInWords(place.on)} ${place.arriveAt}`, proviso),
          },
        }),
  };
}
