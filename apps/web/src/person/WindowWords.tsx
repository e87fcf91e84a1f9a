import type { ReadinessWire } from '@twelvemonth/exchange';
import { dayInWords } from '../words/dates.ts';
import { sentence } from '../words/texts.ts';

/** The window in words: dates, sessions, what is waited for, what comes next, what ends it, what else could be. */
export function WindowWords({ readiness }: { readiness: ReadinessWire }) {
  const { window, noWindow } = readiness;
  if (window === undefined) {
    return noWindow === undefined ? null : (
      <p>
        {sentence(noWindow.says)}
        {noWindow.needs.length > 0 && ` Needed first: ${noWindow.needs.join('; ')}.`}
        {noWindow.ifSettled !== undefined && ` ${sentence(noWindow.ifSettled)}`}
      </p>
    );
  }
  const parts = [
    `Window ${window.says}.`,
    window.firstSession === undefined
      ? 'No session of this unit lies inside it yet.'
      : `First session inside it ${dayInWords(window.firstSession)}${window.lastSession === undefined || window.lastSession === window.firstSession ? '' : `, last ${dayInWords(window.lastSession)}`}.`,
    window.waitingFor.length > 0 &&
      `Waiting for ${window.waitingFor.map(({ what, until }) => `${what} (${dayInWords(until)})`).join(', then ')}.`,
    window.next !== undefined && `Next: ${window.next}.`,
    window.runsOut !== undefined && `Then: ${window.runsOut}.`,
    window.runOn !== undefined && `${sentence(window.runOn)}.`,
    ...window.otherwise.map((other) => `${sentence(other)}.`),
  ].filter((part): part is string => part !== false);
  return <p className="quiet">{parts.map((part) => part.replace(/\.\.$/, '.')).join(' ')}</p>;
}
