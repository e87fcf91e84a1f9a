/** What-ifs as short texts, for a command line: "chairs=5", "return=80". */
import type { Changes } from './changes.ts';

/** What may be changed, with what a value means. */
export const changeNames = {
  sessions: 'sessions a week',
  places: 'places a session',
  nurses: 'nurses at the chairs',
  chairs: 'chairs',
  infusion: 'minutes an infusion runs',
  'blood-weeks': 'weeks that bloods count, drawn at referral',
  referrals: 'new referrals a week',
  return: 'of 100 alive, how many come for dose 2',
  burst: 'people more whose first dose is due in one week, as 40@10 for 40 in week 10',
} as const;

type ChangeName = keyof typeof changeNames;

const most = 10_000;
const hundred = 100;

/** Undefined where a text is no change. */
export function spokenChange(text: string): Changes | undefined {
  const [name, value] = text.split('=');
  if (name === undefined || value === undefined || !(name in changeNames)) return undefined;
  if (name === 'burst') {
    const told = /^(\d+)@(\d+)$/.exec(value);
    return told === null ? undefined : { burst: { people: Number(told[1]), week: Number(told[2]) } };
  }
  const number = Number(value);
  if (value.trim() === '' || !Number.isFinite(number) || number < 0 || number > most) return undefined;
  return changeOf(name as Exclude<ChangeName, 'burst'>, number);
}

function changeOf(name: Exclude<ChangeName, 'burst'>, value: number): Changes | undefined {
  switch (name) {
    case 'sessions':
      return { sessionsPerWeek: value };
    case 'places':
      return { placesPerSession: value };
    case 'nurses':
      return { nurses: value };
    case 'chairs':
      return { chairs: value };
    case 'infusion':
      return { infusionMinutes: value };
    case 'blood-weeks':
      return value < 1 ? undefined : { bloodsDrawn: 'at referral', bloodsValidWeeks: value };
    case 'referrals':
      return { referralsPerWeek: value };
    case 'return':
      return value > hundred ? undefined : { returnsForSecond: value / hundred };
  }
}
