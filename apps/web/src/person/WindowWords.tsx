import type { ReadinessWire } from '@twelvemonth/exchange';
import { dayInWords } from '../words/dates.ts';
import { sentence } from '../words/texts.ts';

/** Ends with one full stop. */
const stopped = (words: string): string => (/[.?!]$/.test(words) ? words : `${words}.`);

/** The window in words: dates, sessions, what is waited for, what comes next, what ends it, what else could be. */
export function WindowWords({ readiness }: { readiness: ReadinessWire }) {
  const { window, noWindow } = readiness;
  if (window === undefined) {
    return noWindow === undefined ? null : (
      <p>
        {sentence(stopped(noWindow.says))}
        {noWindow.needs.length > 0 && ` Needed first: ${noWindow.needs.join('; ')}.`}
        {noWindow.ifSettled !== undefined && ` ${sentence(stopped(noWindow.ifSettled))}`}
      </p>
    );
  }
  const parts = [
    stopped(`Window ${window.says}`),
    window.firstSession === undefined
      ? 'No session of this unit lies inside it yet.'
      : `First session inside it ${dayInWords(window.firstSession)}${window.lastSession === undefined || window.lastSession === window.firstSession ? '' : `, last ${dayInWords(window.lastSession)}`}.`,
    window.waitingFor.length > 0 && `Waiting for ${window.waitingFor.map(({ what }) => what).join(', then ')}.`,
    window.next !== undefined && stopped(`Next: ${window.next}`),
    window.runsOut !== undefined && stopped(`Then: ${window.runsOut}`),
    window.runOn !== undefined && stopped(sentence(window.runOn)),
    ...window.otherwise.map((other) => stopped(sentence(other))),
  ].filter((part): part is string => part !== false);
  return <p className="quiet">{parts.join(' ')}</p>;
}
