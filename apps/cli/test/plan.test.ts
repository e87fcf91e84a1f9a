// Plan a day: every plan is counted by a second checker, optima by general solvers and by trying everything, refusals with a remedy.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readAnyDay } from '@twelvemonth/planning';
import { describe, expect, it } from 'vitest';
import { bestByTryingAll } from '../../../packages/planning/test/oracle/all-plans.ts';
import { type SharedDay, checkDay } from '../../../packages/planning/test/oracle/day-check.ts';
import { writtenDay } from './a-day.ts';
import { fileIn, jsonOf, ownFolder, twelvemonth } from './run-command.ts';

type Planned = {
  readonly answer: string;
  readonly isProven: boolean;
  readonly objective: {
    readonly unseen: number;
    readonly overtimeMinutes: number;
    readonly waitMinutes: number;
    readonly finish: string;
  };
  readonly referee: readonly string[];
  readonly reasons: readonly string[];
  readonly remedies: readonly string[];
  readonly plan: readonly {
    readonly name: string;
    readonly arrives: string;
    readonly steps: readonly { readonly step: string; readonly from: string }[];
    readonly preparation: string | null;
    readonly secondCheck: string | null;
    readonly watchedIn: string | null;
    readonly chair?: number;
    readonly locked?: string;
  }[];
};

const folder = ownFolder();
let files = 0;
const file = (content: unknown): string => fileIn(folder, `day-${(files += 1)}.json`, JSON.stringify(content));
const plan = (content: unknown, ...options: string[]) => jsonOf<Planned>(['plan', file(content), ...options]);

const minuteOf = (text: string): number => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));

describe('a shared day', () => {
  const pathOf = (id: string): string => fileURLToPath(new URL(`../../../bench/days/${id}.json`, import.meta.url));

  // Source: the optima proven by a general constraint solver, stored in each instance under "best".
  it.each(['A08-1', 'A08-2', 'A12-1', 'A12-2'])(
    '%s: the proven optimum, as a checker of another hand counts it',
    async (id) => {
      const raw = JSON.parse(readFileSync(pathOf(id), 'utf8')) as SharedDay & {
        readonly best: { readonly waitMin: number; readonly makespanMin: number; readonly proven: boolean };
      };
      const found = await jsonOf<Planned>(['plan', pathOf(id)]);
      const tick = (time: string | null | undefined): number =>
        time == null ? 0 : (minuteOf(time) - minuteOf('08:30')) / 5;
      const times = found.plan.map(({ arrives, steps, preparation, secondCheck, watchedIn }) => {
        const [obs, chk, can, inf, rem] = steps.map(({ from }) => tick(from)) as [
          number,
          number,
          number,
          number,
          number,
        ];
        const dis = tick(steps.at(-1)?.from);
        return {
          arr: tick(arrives),
          obs,
          chk,
          can,
          inf,
          rem,
          dis,
          prep: tick(preparation),
          sec: tick(secondCheck),
          chair: watchedIn === 'chair',
        };
      });
      expect(raw.best.proven).toBe(true);
      expect(found).toMatchObject({ code: 0, isProven: true, referee: [] });
      expect(checkDay(raw, times)).toEqual({ wait: raw.best.waitMin / 5, finish: raw.best.makespanMin / 5 });
      expect(found.objective).toMatchObject({ unseen: 0, waitMinutes: raw.best.waitMin });
    },
  );
});

describe('a day of the unit', () => {
  it('is planned as well as trying every plan can', async () => {
    const minutes = Object.fromEntries(
      [
        'observations',
        'checklist',
        'cannula',
        'preparation',
        'secondCheck',
        'keeps',
        'removal',
        'watch',
        'leave',
        'injection',
      ].map((step) => [step, 15]),
    );
    const day = writtenDay({
      closes: '11:00',
      gridMinutes: 15,
      nurses: 1,
      chairs: 1,
      minutes,
      visits: [
        { name: 'Mrs Ito', kind: 'later infusion', infusionMinutes: 15, brought: true, notBefore: '08:30' },
        { name: 'Miss Lund', kind: 'injection', brought: true, notBefore: '08:30' },
      ],
    });
    const read = readAnyDay(day);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const best = bestByTryingAll(read.day, 4);
    const found = await plan(day);
    expect(best?.wait).toBeGreaterThan(0);
    expect(found).toMatchObject({ code: 0, isProven: true });
    expect(found.objective.waitMinutes).toBe((best?.wait ?? 0) * 15);
    expect(minuteOf(found.objective.finish)).toBe(minuteOf('08:30') + (best?.finish ?? 0) * 15);
  });

  it('reads as a list by time of coming, with bound, referee and the answer to why', async () => {
    const ran = await twelvemonth(['plan', file(writtenDay()), '--why', 'Mr Vale']);
    expect(ran.code).toBe(0);
    expect(ran.out).toMatch(/4 people, everyone is seen\. The last leaves at \d\d:\d\d; the unit closes at 13:00\./);
    expect(ran.out).toContain('Proven best');
    expect(ran.out).toContain('Referee: every rule is kept.');
    expect(ran.out).toMatch(/^09:00 .* Mr Okafor/m);
    expect(ran.out).toMatch(/Mr Vale could not come at \d\d:\d\d instead\./);
    expect(ran.aside).toContain('starting values (common practice, no source)');
  });

  it('is planned as the guide shows it', async () => {
    const guide = readFileSync(new URL('../../../docs/guide/planning.md', import.meta.url), 'utf8');
    const [, example = ''] = /```json\n([^]*?)```/.exec(guide) ?? [];
    expect(await plan(JSON.parse(example))).toMatchObject({ code: 0, referee: [], objective: { unseen: 0 } });
  });

  // Source: the product text, 4.2: at least 15 minutes at a constant rate; the number of the starter sheets.
  it('is told with a caution when an infusion is shorter than any may be', async () => {
    const lasting = (infusionMinutes: number) =>
      file(writtenDay({ visits: [{ name: 'Mrs Ito', kind: 'later infusion', infusionMinutes }] }));
    const caution = 'CAUTION: planned shorter than 15 minutes, which no zoledronic acid 5 mg may run: Mrs Ito.';
    expect((await twelvemonth(['plan', lasting(10)])).aside).toContain(caution);
    expect((await twelvemonth(['plan', lasting(15)])).aside).not.toContain('CAUTION');
  });

  it('is the same to the letter from the same seed', async () => {
    const path = file(writtenDay());
    const [one, other] = [await twelvemonth(['plan', path, '--json']), await twelvemonth(['plan', path, '--json'])];
    expect(one.out).toBe(other.out);
  });
});

describe('an impossible day gets no plan', () => {
  const tooShort = (goneBy: string) =>
    writtenDay({ visits: [{ name: 'Mrs Ito', kind: 'first infusion', infusionMinutes: 20, goneBy }] });

  it('but what is impossible, and the least that makes it possible', async () => {
    const found = await plan(tooShort('09:30'));
    expect(found).toMatchObject({ code: 1, answer: 'impossible', isProven: true });
    expect(found.plan).toBeUndefined();
    // 10 + 10 + 10 + 20 + 5 + 30 + 5 minutes of care.
    expect(found.reasons[0]).toBe(
      'Mrs Ito needs 90 minutes and has 60 minutes between 08:30 and 09:30: 30 minutes too few.',
    );
    expect(found.remedies).toContain('Mrs Ito may leave at 10:00: 30 minutes later.');
    expect((await plan(tooShort('10:00'))).code).toBe(0);
    expect((await plan(tooShort('09:55'))).code).toBe(1);
  });

  it('where there is no second checker', async () => {
    const ran = await twelvemonth(['plan', file(writtenDay({ secondCheckers: 0 }))]);
    expect(ran.code).toBe(1);
    expect(ran.out).toContain('no second checker at the right time');
    expect(ran.out).toContain('One more second checker all day.');
    expect(ran.out).not.toContain('cannula');
  });
});

describe('a plan that is brought along', () => {
  it('is passed by the referee when it is ours, and objected to in sentences when somebody is moved', async () => {
    const { code: _, ...ours } = await plan(writtenDay());
    const again = await plan(ours, '--check');
    expect(again).toMatchObject({ code: 0, answer: 'judged', referee: [], plan: ours.plan, objective: ours.objective });
    const two = writtenDay().visits.filter(({ kind }) => kind === 'injection');
    const both = writtenDay({ nurses: 1, visits: [...two, { ...two[0], name: 'Miss Hale' }] });
    const lund = ours.plan.find(({ name }) => name === 'Miss Lund');
    const dragged = { day: both, plan: [lund, { ...lund, name: 'Miss Hale' }] };
    const ran = await twelvemonth(['plan', file(dragged), '--check']);
    expect(ran.code).toBe(1);
    expect(ran.out).toMatch(/\d\d:\d\d: two people need a nurse at once \(.*Miss Lund.*Miss Hale/);
  });

  it('is not counted when times are missing', async () => {
    const arrivals = [{ name: 'Mrs Ito', arrives: '08:30' }];
    const found = await plan({ day: writtenDay(), plan: arrivals }, '--check');
    expect(found).toMatchObject({ code: 1 });
    expect(found.objective).toBeUndefined();
    expect(found.referee).toContain('Mr Okafor is not seen.');
  });

  it('is planned again from now on: what has begun stays, and who must hear of it is named', async () => {
    const { code: _, ...ours } = await plan(writtenDay());
    const changed = writtenDay({
      chairs: [
        { from: '08:30', to: '13:00' },
        { from: '08:30', to: '09:00' },
      ],
    });
    const again = await plan({ ...ours, day: changed }, '--now', '09:00');
    expect(again).toMatchObject({ code: 0, answer: 'planned again', referee: [] });
    for (const before of ours.plan) {
      const after = again.plan.find(({ name }) => name === before.name);
      if (minuteOf(before.arrives) >= minuteOf('09:00')) continue;
      expect(after?.arrives).toBe(before.arrives);
      const begun = before.steps.filter(({ from }) => minuteOf(from) < minuteOf('09:00'));
      expect(after?.steps.slice(0, begun.length)).toEqual(begun);
    }
  });
});

describe('what cannot be used', () => {
  const [ito] = writtenDay().visits;
  it.each([
    [
      'a time off the grid',
      writtenDay({ closes: '12:58' }),
      'closes: 12:58 is not on the grid of 5 minutes: write 12:55 or 13:00.',
    ],
    ['no time', writtenDay({ opens: 'early' }), 'opens: is not a time: write it as 08:30.'],
    [
      'a missing field',
      { ...writtenDay(), chairs: undefined },
      'chairs: write a whole number for the whole day, or a list',
    ],
    [
      'a field of another name',
      writtenDay({ chair: 3 }),
      'chair: is not a field here: leave it out, or correct its spelling.',
    ],
    [
      'an infusion without minutes',
      writtenDay({ visits: [{ name: 'A', kind: 'later infusion' }] }),
      'visits.0.infusionMinutes: is missing: write the minutes the prescription runs.',
    ],
    [
      'two of one name',
      writtenDay({ visits: [ito, ito] }),
      'visits.1.name: there are two of "Mrs Ito": tell them apart.',
    ],
    ['nobody', writtenDay({ visits: [] }), 'visits: is empty: there must be at least one.'],
    [
      'a kind nobody knows',
      writtenDay({ visits: [{ ...ito, kind: 'drip' }] }),
      'visits.0.kind: must be one of: first infusion, later infusion, injection.',
    ],
    [
      'transport without a time',
      writtenDay({ visits: [{ ...ito, brought: true }] }),
      'visits.0.notBefore: is missing: write when the transport brings the person.',
    ],
    [
      'a plan for a stranger',
      { day: writtenDay(), plan: [{ name: 'Nobody', arrives: '08:30' }] },
      'plan.0.name: nobody of the day is called "Nobody": correct the name',
    ],
  ])('%s is told with its field and what to write', async (_, content, says) => {
    const ran = await twelvemonth(['plan', file(content)]);
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(ran.aside).toContain(says);
  });

  it('a name, a time or a number that is not meant', async () => {
    const path = file(writtenDay());
    expect((await twelvemonth(['plan', path, '--why', 'Nobody'])).aside).toContain('nobody of the day is called that');
    expect((await twelvemonth(['plan', path, '--seed', 'x'])).aside).toContain('--seed is a whole number');
    expect((await twelvemonth(['plan', path, '--check'])).aside).toContain('has no plan in it');
    expect((await twelvemonth(['plan', 'absent.json'])).code).toBe(3);
    expect((await twelvemonth(['plan'])).code).toBe(2);
  });
});

describe('a plan drawn by hand', () => {
  const drawn = async () => (await plan(writtenDay())).plan;
  type Line = Awaited<ReturnType<typeof drawn>>[number];
  const asTold = ({ name, arrives, steps, preparation, secondCheck, watchedIn }: Line) => ({
    name,
    arrives,
    steps: steps.map(({ step, from }) => ({ step, from })),
    preparation,
    secondCheck,
    watchedIn,
  });

  it('is improved around what is locked, which stays to the minute and in its chair', async () => {
    const lines = (await drawn()).map(asTold);
    const locked = lines.map((line) =>
      line.name === 'Mrs Ito' ? { ...line, chair: 2, locked: 'time and chair' } : line,
    );
    const said = await jsonOf<Planned>([
      'plan',
      file({ day: writtenDay(), plan: locked.filter(({ name }) => name !== 'Mr Vale') }),
      '--improve',
    ]);
    expect(said.answer).toBe('improved');
    expect(said.referee).toEqual([]);
    const her = said.plan.find(({ name }) => name === 'Mrs Ito')!;
    expect({ ...asTold(her), chair: her.chair, locked: her.locked }).toEqual({
      ...lines.find(({ name }) => name === 'Mrs Ito'),
      chair: 2,
      locked: 'time and chair',
    });
    expect(said.plan.map(({ name }) => name)).toContain('Mr Vale');
  });

  it('is not improved where two locks are in each other’s way: it says which, and ends with 1', async () => {
    const lines = (await drawn()).map(asTold);
    const ito = lines.find(({ name }) => name === 'Mrs Ito')!;
    const both = lines.flatMap((line) =>
      line.name === 'Mrs Ito'
        ? [{ ...line, locked: 'time' }]
        : line.name === 'Mr Okafor'
          ? [{ ...line, arrives: ito.arrives, locked: 'time' }]
          : [],
    );
    const { code, out } = await twelvemonth(['plan', file({ day: writtenDay(), plan: both }), '--improve']);
    expect(code).toBe(1);
    expect(out).toContain('Nothing was planned: what is locked breaks a rule by itself.');
    expect(out).toContain('Mr Okafor');
  });

  it('a locked chair without its number is refused, field by field', async () => {
    const lines = (await drawn()).map(asTold).map((line) => ({ ...line, locked: 'chair' }));
    const { code, aside } = await twelvemonth(['plan', file({ day: writtenDay(), plan: lines }), '--improve']);
    expect(code).toBe(2);
    expect(aside).toContain('plan.0.chair');
  });
});

describe('near-equal plans', () => {
  it('are tried out on the same days where the best ends on time too seldom, and the sentence says what was asked', async () => {
    const path = file(writtenDay({ id: 'a tight day', closes: '11:30', mayRunTo: '13:00', onTimePercent: 95 }));
    const own = await jsonOf<Planned>([
      'plan',
      file(writtenDay({ id: 'a tight day', closes: '11:30', mayRunTo: '13:00' })),
    ]);
    const { onTime, ...held } = await jsonOf<
      Planned & {
        readonly onTime: { readonly askedPercent: number; readonly reached: number; readonly ofBest: number };
      }
    >(['plan', path, '--effort', '300']);
    expect(onTime.askedPercent).toBe(95);
    expect(onTime.reached).toBeGreaterThanOrEqual(onTime.ofBest);
    expect(held.referee).toEqual([]);
    expect(held.objective.overtimeMinutes).toBeLessThanOrEqual(own.objective.overtimeMinutes);
    expect(held.objective.waitMinutes).toBeLessThanOrEqual(own.objective.waitMinutes + 10);
    expect((await twelvemonth(['plan', path, '--effort', '300', '--on-time', '60'])).out).toMatch(
      /Finishes by 11:30 in \d+ of 100 rehearsals; at least 60 are asked for\./,
    );
    expect((await twelvemonth(['plan', path, '--on-time', '60', '--check'])).code).toBe(2);
  });
});
