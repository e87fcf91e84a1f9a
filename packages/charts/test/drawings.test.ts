/** Every picture says the same as its sentence and its table, stays inside its frame, and needs no colour to be read. */
import { day } from '@twelvemonth/clinical';
import { describe, expect, it } from 'vitest';
import { textWidth } from '../src/drawing.ts';
import { courseStrip, verdictMark, visitStrip, windowBar } from '../src/index.ts';

const today = day('2026-11-25');
const loading = {
  today,
  window: { first: day('2027-01-08'), last: day('2027-03-02') },
  waiting: 'waiting for vitamin D loading',
  runsOut: 'bloods run out',
  place: { on: day('2027-01-28'), says: 'booked Thu 28 Jan 2027 at 10:40' },
  steps: [{ what: 'take bloods 5 to 25 Jan', from: day('2027-01-05'), until: day('2027-01-25') }],
};

/** All x positions and widths drawn, to see that nothing leaves the frame. */
function horizontalReach(svg: string): number {
  const rects = [...svg.matchAll(/<rect x="([\d.-]+)" y="[\d.-]+" width="([\d.]+)"/g)].map(
    (match) => Number(match[1]) + Number(match[2]),
  );
  return Math.max(0, ...rects);
}

/** Every text of a picture, where it stands and how. */
const textsOf = (svg: string) =>
  [...svg.matchAll(/<text x="([\d.-]+)" y="[\d.-]+" font-size="([\d.]+)"([^>]*)>([^<]*)</g)].map((match) => ({
    x: Number(match[1]),
    size: Number(match[2]),
    anchor: match[3]?.includes('text-anchor="end"') === true ? 'end' : 'start',
    says: match[4] ?? '',
  }));

describe('the window bar', () => {
  it('tells waiting, possible dates, what ends them, the place and the next steps in words', () => {
    const { sentence } = windowBar(loading, { id: 'a' });
    expect(sentence).toBe(
      'Waiting for vitamin D loading. Possible, if good, from Fri 8 Jan 2027 to Tue 2 Mar 2027. Then bloods run out. Booked Thu 28 Jan 2027 at 10:40. Take bloods 5 to 25 Jan.',
    );
  });

  it('lists the same in a table', () => {
    const { table } = windowBar(loading, { id: 'a' });
    expect(table.rows.map((row) => row[0])).toEqual([
      'waiting',
      'dates for a dose',
      'after that',
      'booked',
      'next step',
    ]);
    expect(table.rows[1]).toEqual(['dates for a dose', '8 Jan 2027', '2 Mar 2027', 'possible 8 Jan to 2 Mar 2027']);
  });

  it('is solid only where it is certain, dashed where it is "if good"', () => {
    const certain = windowBar(
      { ...loading, window: { first: today, last: day('2026-12-04'), certainUntil: day('2026-12-04') } },
      { id: 'a' },
    );
    expect(certain.svg).not.toContain('stroke-dasharray="7 4"');
    expect(certain.sentence).toContain('Ready from Wed 25 Nov 2026 to Fri 4 Dec 2026');
    expect(windowBar(loading, { id: 'a' }).svg).toContain('stroke-dasharray="7 4"');
  });

  it('has no band when no date can be given, and says what is waited for', () => {
    const none = windowBar({ today, waiting: 'unwell since 23 Nov 2026', steps: [] }, { id: 'a' });
    expect(none.svg).not.toContain('stroke="#1f6247"');
    expect(none.sentence).toBe('No dates can be given yet: unwell since 23 Nov 2026.');
  });

  it.each([280, 340, 620, 940, 1400])('stays inside a frame %i wide', (width) => {
    expect(horizontalReach(windowBar(loading, { id: 'a', width }).svg)).toBeLessThanOrEqual(width);
  });

  it.each([280, 340, 390, 620, 940])('at %i wide every word is told whole and inside the frame', (width) => {
    const long = {
      ...loading,
      steps: [{ ...loading.steps[0], what: 'take bloods (creatinine, calcium and vitamin D) and weigh' } as const],
    } as typeof loading;
    const told = textsOf(windowBar(long, { id: 'a', width }).svg);
    const words = told.map(({ says }) => says).join(' ');
    for (const each of [loading.waiting, 'possible 8 Jan to 2 Mar 2027', loading.runsOut, long.steps[0]?.what ?? ''])
      expect(words).toContain(each);
    expect(words).not.toContain('…');
    const outside = told.filter(({ says, x, anchor, size }) => {
      const left = anchor === 'end' ? x - textWidth(says, size) : x;
      return left < 0 || left + textWidth(says, size) > width;
    });
    expect(outside).toEqual([]);
  });

  it('is the same bytes for the same data', () => {
    expect(windowBar(loading, { id: 'a' }).svg).toBe(windowBar(loading, { id: 'a' }).svg);
  });

  it('writes what people typed as text, never as markup', () => {
    const hostile = windowBar({ ...loading, waiting: '<script>alert(1)</script>' }, { id: 'a' });
    expect(hostile.svg).not.toContain('<script>');
  });

  it('needs no inline style, so that a strict content policy shows it', () => {
    expect(windowBar(loading, { id: 'a' }).svg).not.toContain('style=');
  });
});

describe('the course strip', () => {
  const course = {
    today,
    doses: [{ on: day('2025-03-14'), number: 1, part: false }],
    due: { on: day('2026-03-14'), number: 2 },
    marks: [{ kind: 'fracture' as const, from: day('2024-11-02'), says: 'wrist' }],
  };

  it('draws a filled drop for a dose given and a hollow one for a dose due', () => {
    const { svg } = courseStrip(course);
    expect(svg.match(/fill="#1f6247" stroke="#1f6247"/g)).toHaveLength(1);
    expect(svg.match(/fill="#fffdf8" stroke="#1f6247"/g)).toHaveLength(1);
  });

  it('tells the same in order of time', () => {
    expect(courseStrip(course).table.rows).toEqual([
      ['2 Nov 2024', 'fracture: wrist'],
      ['14 Mar 2025', 'dose 1 given'],
      ['14 Mar 2026', 'dose 2 due'],
    ]);
    expect(courseStrip(course).sentence).toContain('One dose, the last on 14 Mar 2025; dose 2 due on 14 Mar 2026.');
  });

  it('marks a part dose as one', () => {
    expect(courseStrip({ ...course, doses: [{ on: day('2025-03-14'), number: 1, part: true }] }).sentence).toContain(
      'One dose',
    );
    expect(courseStrip({ ...course, doses: [{ on: day('2025-03-14'), number: 1, part: true }] }).table.rows[1]).toEqual(
      ['14 Mar 2025', 'part dose 1'],
    );
  });
});

describe('reviews and planned breaks on the course strip', () => {
  const years = {
    today,
    doses: [{ on: day('2023-03-14'), number: 1, part: false }],
    marks: [
      { kind: 'review' as const, from: day('2024-04-01'), says: 'review: carry on', more: 'hip T -2.8' },
      { kind: 'review' as const, from: day('2024-06-01'), says: 'review: carry on' },
      { kind: 'review' as const, from: day('2024-08-01'), says: 'review: carry on' },
      { kind: 'break' as const, from: day('2026-11-20'), until: day('2029-03-14'), says: 'planned break' },
    ],
  };
  const words = (svg: string) =>
    [...svg.matchAll(/<text x="([\d.-]+)" y="([\d.-]+)"[^>]*>([^<]*)</g)].map(([, x, y, says]) => ({
      x: Number(x),
      y: Number(y),
      says: says ?? '',
    }));
  it.each([320, 940])('no words run over the edge or into each other at a width of %i', (width) => {
    const told = words(courseStrip(years, { width }).svg).filter(({ says }) => /[a-z]/.test(says));
    expect(told).toHaveLength(4);
    for (const [index, { x, y, says }] of told.entries()) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x + textWidth(says, 13)).toBeLessThanOrEqual(width);
      for (const other of told.slice(index + 1).filter((one) => one.y === y))
        expect(Math.abs(other.x - x)).toBeGreaterThanOrEqual(textWidth(x < other.x ? says : other.says, 13));
    }
  });
  it('a review is a diamond, a break a bracket and a broken life-line: told apart without colour', () => {
    const { svg } = courseStrip(years);
    expect(svg.match(/l6 7l-6 7l-6 -7Z/g)).toHaveLength(3);
    expect(svg.match(/stroke-dasharray="6 6"/g)).toHaveLength(1);
  });
  it('the table says the reason, and from when to when', () => {
    expect(courseStrip(years).table.rows).toContainEqual(['1 Apr 2024', 'review: carry on (hip T -2.8)']);
    expect(courseStrip(years).table.rows).toContainEqual(['20 Nov 2026 to 14 Mar 2029', 'planned break']);
  });
});

describe('a full course at phone width', () => {
  const full = {
    today,
    doses: ['2021-03-14', '2022-03-14', '2023-03-14', '2026-03-14'].map((on, index) => ({
      on: day(on),
      number: index + 1,
      part: false,
    })),
    due: { on: day('2027-03-14'), number: 5 },
    marks: [
      { kind: 'tablets' as const, from: day('2019-01-05'), until: day('2021-02-01'), says: 'alendronic acid' },
      { kind: 'fracture' as const, from: day('2020-11-02'), says: 'wrist' },
      { kind: 'fracture' as const, from: day('2021-03-01'), says: 'spine' },
      { kind: 'fracture' as const, from: day('2021-03-20'), says: 'hip' },
      { kind: 'reaction' as const, from: day('2021-03-15'), says: 'flu-like, aching' },
      { kind: 'fracture' as const, from: day('2021-06-20'), says: 'upper arm' },
      { kind: 'review' as const, from: day('2023-05-01'), says: 'review: planned break' },
      { kind: 'break' as const, from: day('2023-05-01'), until: day('2026-03-14'), says: 'planned break' },
    ],
  };
  const stroke = /stroke="#[0-9a-f]{6}" stroke-width="3"\/>/g;
  it.each([320, 360, 940])(
    'every fracture is drawn over whatever lies on the same days, each by itself, at %i',
    (width) => {
      const { svg } = courseStrip(full, { width });
      const broken = [...svg.matchAll(/<path d="M(\d+) (\d+)L\d+ \d+L\d+ \d+L\d+ (\d+)"[^>]*stroke-width="3"/g)];
      expect(broken).toHaveLength(4);
      // Drawn after the last drop, so nothing covers one; and none lies on another.
      expect(svg.indexOf(broken[0]?.[0] ?? '')).toBeGreaterThan(svg.lastIndexOf('Z" fill='));
      const at = broken.map(([, x]) => Number(x));
      for (const [index, x] of at.entries())
        for (const other of at.slice(index + 1)) expect(Math.abs(other - x)).toBeGreaterThanOrEqual(9);
      expect(svg.match(stroke)?.length).toBeGreaterThanOrEqual(4);
    },
  );
  it('on a drop it breaks above the number; away from one it crosses the line', () => {
    const near = { ...full, marks: [{ kind: 'fracture' as const, from: day('2022-03-14'), says: 'rib' }] };
    const far = { ...full, marks: [{ kind: 'fracture' as const, from: day('2024-09-14'), says: 'rib' }] };
    const bottom = (svg: string) => Number(/L\d+ (\d+)"[^>]*stroke-width="3"/.exec(svg)?.[1]);
    const number = Number(/y="([\d.]+)"[^>]*font-weight="700"/.exec(courseStrip(near, { width: 320 }).svg)?.[1]);
    expect(bottom(courseStrip(near, { width: 320 }).svg)).toBeLessThanOrEqual(number - 10);
    expect(bottom(courseStrip(far, { width: 320 }).svg)).toBeGreaterThan(number);
  });
  it('no words run over the edge, into each other, or out at the top', () => {
    const { svg } = courseStrip(full, { width: 320 });
    const lift = Number(/translate\(0 (\d+)\)/.exec(svg)?.[1] ?? 0);
    const told = [...svg.matchAll(/<text x="([\d.-]+)" y="([\d.-]+)"[^>]*>([^<]*[a-z][^<]*)</g)].map(
      ([, x, y, says]) => ({ x: Number(x), y: Number(y), says: says ?? '' }),
    );
    expect(told).toHaveLength(full.marks.length);
    for (const [index, { x, y, says }] of told.entries()) {
      expect(y + lift).toBeGreaterThanOrEqual(12);
      expect(x + textWidth(says, 13)).toBeLessThanOrEqual(320);
      for (const other of told.slice(index + 1).filter((one) => one.y === y))
        expect(Math.abs(other.x - x)).toBeGreaterThanOrEqual(textWidth(x < other.x ? says : other.says, 13));
    }
  });
});

describe('the visit strip', () => {
  it('says how far the visit is and what runs', () => {
    const strip = visitStrip({
      who: 'W. Ferreira',
      steps: [
        { step: 'arrive', state: 'done' },
        { step: 'infusion', state: 'running', says: '4 min 40 s to go', share: 0.7 },
      ],
    });
    expect(strip.sentence).toBe('W. Ferreira: 1 of 2 steps done; infusion running (4 min 40 s to go).');
    expect(strip.svg).toContain('4 min 40 s to go');
  });
});

describe('the shape of a verdict', () => {
  it('differs in form, not only in colour', () => {
    const shapes = (['ready', 'not ready', 'cannot say', 'does not apply'] as const).map((verdict) =>
      verdictMark(verdict).replaceAll(/#[0-9a-f]{6}/g, ''),
    );
    expect(new Set(shapes).size).toBe(4);
  });
});
