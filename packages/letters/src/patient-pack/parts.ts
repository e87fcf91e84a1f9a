/** The four parts of the pack and the easy page, from the facts of one person. */
import type { Day } from '@twelvemonth/clinical';
import type { PackBlock, PackPart } from './blocks.ts';
import type { NoAmount, PackFacts, PackParacetamol, PackPartName } from './facts.ts';
import type { PackSpeaker } from './speaker.ts';
import type { PackWords } from './words-en-gb.ts';

const paragraph = (text: string): PackBlock => ({ kind: 'paragraph', text });
const heading = (text: string): PackBlock => ({ kind: 'heading', text });
const list = (...items: readonly (string | undefined)[]): PackBlock => ({
  kind: 'list',
  items: items.filter((item) => item !== undefined),
});

type PartOf = (facts: PackFacts, speaker: PackSpeaker) => PackPart | undefined;

export const partNamed: Readonly<Record<PackPartName, PartOf>> = {
  'getting ready': gettingReady,
  'the day': theDay,
  afterwards,
  'next year': nextYear,
};

function dateAndTime({ visit }: PackFacts, { say, date, time }: PackSpeaker): string {
  return visit === undefined ? say('noDate') : say('yourDate', { date: date(visit.on), time: time(visit.arriveAt) });
}

function gettingReady(facts: PackFacts, speaker: PackSpeaker): PackPart | undefined {
  const { say, items, within } = speaker;
  const { unit, bloods, askAbout, firstTimer, noneAhead } = facts;
  if (noneAhead !== undefined) return undefined;
  return {
    title: say('readyTitle'),
    blocks: [
      paragraph([dateAndTime(facts, speaker), say('where', { unit: unit.name }), howLong(facts, speaker)].join(' ')),
      paragraph(say('cannotCome', { telephone: unit.telephone })),
      heading(say('before')),
      list(
        bloods === undefined ? say('bloodsUnknown') : say('bloods', { when: within(bloods) }),
        vitaminDOf(facts, speaker),
        say('teeth'),
        askAbout.length === 0 ? undefined : say('askAbout', { medicines: askAbout.join(', ') }),
      ),
      { kind: 'warning', heading: say('tellUs'), items: items('tellUsItems') },
      heading(say('dayBefore')),
      list(say('drink'), say('eat'), say('tablets')),
      heading(say('bring')),
      list(...items('bringItems'), firstTimer ? say('bringFirst') : undefined),
    ],
  };
}

/** A course that ends only after the place has no day to be told: that place has to move first. */
function vitaminDOf({ vitaminDCourse, visit }: PackFacts, { say, date }: PackSpeaker): string {
  if (vitaminDCourse === undefined) return say('vitaminDDaily');
  if (vitaminDCourse.is === 'to be started') return say('vitaminDToStart');
  const { endsOn } = vitaminDCourse;
  return visit !== undefined && endsOn > visit.on ? say('vitaminDAsk') : say('vitaminDCourse', { date: date(endsOn) });
}

const minutesInHalfAnHour = 30;

/** The whole of the clock on the next sheet, rounded to half hours, so that the two sheets agree. */
function howLong({ minutes }: PackFacts, { say, items }: PackSpeaker): string {
  const times = items('howLongTimes');
  const halves = Math.round(minutesOfVisit(minutes) / minutesInHalfAnHour);
  const time = times[Math.min(Math.max(halves - 2, 0), times.length - 1)];
  return say('howLong', { time });
}

/** Minutes after arrival at which a step begins, as a day usually goes (practice page 1b; common practice, no source). */
const minutesUntil = { ask: 5, needle: 25, drip: 35 } as const;

/** From arriving to going home, as the clock of the day tells it. */
export const minutesOfVisit = ({ drip, watch }: PackFacts['minutes']): number => minutesUntil.drip + drip + watch;

function theDay(facts: PackFacts, { say, items, date, time }: PackSpeaker): PackPart | undefined {
  const { visit, minutes, noneAhead } = facts;
  if (noneAhead !== undefined) return undefined;
  const dripEnds = minutesUntil.drip + minutes.drip;
  const steps = [
    [0, say('clockArrive')],
    [minutesUntil.ask, say('clockAsk')],
    [minutesUntil.needle, say('clockNeedle')],
    [minutesUntil.drip, say('clockDrip', { minutes: String(minutes.drip) })],
    [dripEnds, say('clockWatch', { minutes: String(minutes.watch) })],
    [minutesOfVisit(minutes), say('clockHome')],
  ] as const;
  // Without a place the steps are numbered: a time would be made up.
  const rows = steps.map(
    ([after, says], index) =>
      [visit === undefined ? String(index + 1) : time(later(visit.arriveAt, after)), says] as const,
  );
  return {
    title: say('dayTitle'),
    blocks: [
      ...(visit === undefined ? [] : [paragraph(date(visit.on))]),
      heading(say('clock')),
      { kind: 'clock', rows },
      ...(visit === undefined ? [] : [paragraph(say('clockRough'))]),
      paragraph(say('putOff')),
      { kind: 'warning', heading: say('atOnce'), items: items('atOnceItems') },
    ],
  };
}

/** "10:50" 35 minutes later is "11:25"; a list never runs past midnight. */
function later(time: string, minutes: number): string {
  const [hour = 0, minute = 0] = time.split(':').map(Number);
  const all = hour * 60 + minute + minutes;
  return `${String(Math.floor(all / 60) % 24).padStart(2, '0')}:${String(all % 60).padStart(2, '0')}`;
}

function afterwards(facts: PackFacts, speaker: PackSpeaker): PackPart {
  const { say, items } = speaker;
  const { unit, firstTimer } = facts;
  return {
    title: say('afterTitle'),
    blocks: [
      { kind: 'warning', heading: say('emergency'), items: items('emergencyItems') },
      heading(say('feel')),
      paragraph(say('feelSays')),
      paragraph(say(firstTimer ? 'feelFirst' : 'feelLater')),
      paragraph(say('feelRest')),
      heading(say('painTitle')),
      list(...paracetamolItems(facts.paracetamol, speaker)),
      heading(say('ring', { telephone: unit.telephone })),
      list(...items('ringItems')),
      paragraph(say('closedLine')),
      heading(say('keepGoing')),
      list(...items('keepGoingItems')),
    ],
  };
}

const whyAsk: Readonly<Record<NoAmount, keyof PackWords | undefined>> = {
  'not asked': undefined,
  'no table': undefined,
  liver: 'painAskLiver',
  'weight not known': 'painAskWeight',
  'weight too old': 'painAskWeight',
  'below the table': 'painAskLow',
};

/** An amount only where the table gives one for this weight and the liver was asked about; otherwise whom to ask. */
function paracetamolItems(amount: PackParacetamol, { say, date }: PackSpeaker): readonly string[] {
  if (!amount.told) {
    const why = whyAsk[amount.because];
    return [say('painAsk'), ...(why === undefined ? [] : [say(why)]), say('painOther'), say('painLong')];
  }
  const times = String(amount.timesADay);
  return [
    say(amount.tabletsADose[1] > 1 ? 'painDoseTwo' : 'painDoseOne', { times }),
    say('painMost', { hours: String(amount.hoursBetween), most: String(amount.mostTabletsADay) }),
    say('painWeight', { weight: amount.weightKg, date: date(amount.weighedOn) }),
    say('painOther'),
    say('painLong'),
  ];
}

function nextYear({ given, next, unit, today }: PackFacts, { say, date, within }: PackSpeaker): PackPart | undefined {
  if (next === undefined) return undefined;
  const telephone = unit.telephone;
  const rows: (readonly [string, string])[] = [
    ...(given === undefined
      ? []
      : [
          [say('givenOn'), date(given.on)] as const,
          [say('givenDose'), String(given.number)] as const,
          ...(given.batch === undefined ? [] : [[say('givenBatch'), given.batch] as const]),
        ]),
    ...(next.is === 'dose' ? [[say('nextDue'), date(next.due)] as const] : []),
  ];
  return {
    title: say('nextTitle'),
    blocks: [
      ...(rows.length === 0 ? [] : [{ kind: 'facts' as const, rows }]),
      paragraph(
        next.is === 'review'
          ? say('review')
          : next.calledFrom > today
            ? say('whoCalls', { date: date(next.calledFrom) })
            : say('calledNow'),
      ),
      { kind: 'warning', heading: worryIn(next.worryOn, today, telephone, { say, date }), items: [] },
      ...(next.is === 'dose' && next.bloods !== undefined
        ? [paragraph(say('nextBloods', { when: within(next.bloods) }))]
        : []),
      paragraph(say('moving')),
      paragraph(say('moved')),
    ],
  };
}

/** A day to worry on that has passed is no day to give. */
const worryIn = (on: Day, today: Day, telephone: string, { say, date }: Pick<PackSpeaker, 'say' | 'date'>): string =>
  on > today ? say('worry', { date: date(on), telephone }) : say('worryNow', { telephone });

/** One page for those for whom four are too many: what must be known, and whom to call. */
export function easyPage(facts: PackFacts, speaker: PackSpeaker): PackPart | undefined {
  const { say, date, within } = speaker;
  const { unit, next, bloods, paracetamol, today } = facts;
  if (facts.noneAhead !== undefined && facts.given === undefined) return undefined;
  const telephone = unit.telephone;
  return {
    title: say('easyTitle'),
    blocks: [
      paragraph(dateAndTime(facts, speaker)),
      paragraph(say('where', { unit: unit.name })),
      list(
        bloods === undefined ? undefined : say('bloods', { when: within(bloods) }),
        say('easyDrink'),
        say('easyFeel'),
        ...(paracetamol.told
          ? [...paracetamolItems(paracetamol, speaker).slice(0, 2), say('painOther')]
          : paracetamolItems(paracetamol, speaker).slice(0, 1)),
      ),
      { kind: 'warning', heading: say('easyEmergency'), items: [] },
      { kind: 'warning', heading: say('easyRing', { telephone }), items: [] },
      ...(next === undefined ? [] : [paragraph(worryIn(next.worryOn, today, telephone, { say, date }))]),
    ],
  };
}
