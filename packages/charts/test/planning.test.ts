// Pictures of planning: the sentence and the table say what the picture shows; nothing of a name reaches the SVG unescaped.
import { barsDrawing, hoursLine, plannedVisit, rangesDrawing } from '@twelvemonth/charts';
import { describe, expect, it } from 'vitest';

const visit = {
  who: 'Mrs <Ito>',
  from: 510,
  until: 660,
  arrives: 510,
  leaves: 610,
  chair: 3,
  steps: [
    { step: 'cannula', from: 510, to: 530, nurse: 'whole' },
    { step: 'infusion', from: 530, to: 560, nurse: 'shared' },
    { step: 'watch', from: 570, to: 600, nurse: 'none' },
    { step: 'leaving', from: 600, to: 610, nurse: 'whole' },
  ],
} as const;

describe('a planned visit', () => {
  const drawn = plannedVisit(visit, 300);

  it('says when somebody comes and leaves, and in which chair', () => {
    expect(drawn.sentence).toBe('Mrs <Ito>: comes 08:30, leaves 10:10, chair 3.');
    expect(drawn.table.rows).toEqual([
      ['cannula', '08:30', '08:50'],
      ['infusion', '08:50', '09:20'],
      ['watch', '09:30', '10:00'],
      ['leaving', '10:00', '10:10'],
    ]);
    expect(drawn.svg).not.toContain('Ito');
    expect(plannedVisit({ ...visit, chair: undefined }, 300).sentence).toContain('no chair');
  });

  it('tells steps apart without colour: filled, framed, dashed', () => {
    expect(drawn.svg.match(/<rect/g)).toHaveLength(4);
    expect(drawn.svg.match(/stroke-dasharray/g)).toHaveLength(1);
    // Two minutes a unit: the infusion begins at 40 and is 60 long, less the gap of one.
    expect(drawn.svg).toContain('x="40.5" width="59"');
  });

  it('has the whole hours over it on the same scale', () => {
    expect(hoursLine(510, 660, 300)).toContain('x="60"');
    expect(hoursLine(510, 660, 300).match(/<text/g)).toHaveLength(2);
    expect(hoursLine(510, 665, 310), 'the last hour is a whole word').toContain('text-anchor="end">11:00<');
  });
});

describe('bars', () => {
  const bars = ['16:30', '16:45', '17:00'].map((label, index) => ({ label, value: index + 1, says: `${index + 1}` }));
  const data = {
    caption: 'When the last has left',
    sentence: 'By 17:00 on half.',
    head: ['from', 'of 100'],
    bars,
  } as const;

  it('say each value in the table, and what comes after the mark is framed, not filled', () => {
    const { table, svg } = barsDrawing({ ...data, mark: { before: 2, says: 'closes 17:00' } }, 300);
    expect(table.rows).toEqual([
      ['16:30', '1'],
      ['16:45', '2'],
      ['17:00', '3'],
    ]);
    expect(svg).toContain('closes 17:00');
    const fills = [...svg.matchAll(/<rect[^>]* fill="(#\w+)"/g)].map(([, fill]) => fill);
    expect(fills[0]).toBe(fills[1]);
    expect(fills[2]).not.toBe(fills[0]);
  });

  it('keep the first and the last word within the drawing, however narrow the bars', () => {
    const bars = Array.from({ length: 26 }, (_, week) => ({ label: `${week} Nov`, value: 1, says: '1' }));
    const { svg } = barsDrawing({ ...data, bars }, 650);
    expect(svg).toMatch(/<text[^>]* x="0"[^>]* text-anchor="start"[^>]*>0 Nov</);
    expect(svg).not.toMatch(/<text[^>]* x="(?:6[3-9]\d)[^"]*"[^>]* text-anchor="middle"/);
  });

  it('of nothing are drawn as nothing', () => {
    expect(barsDrawing({ ...data, bars: [] }, 300).svg).not.toContain('<rect');
  });
});

describe('something uncertain over time', () => {
  const data = {
    id: 'demand',
    sentence: 'Asked for: 4 places a week.',
    table: { caption: 'Places', head: ['until', 'places'], rows: [['March', '4']] },
    mean: [4, 4, 4],
    low80: [3, 3, 3],
    high80: [5, 5, 5],
    low95: [2, 2, 2],
    high95: [8, 8, 8],
    unit: 'places a week',
    ticks: [{ at: 0, says: 'Nov 2026' }],
  } as const;

  it('is a line in two bands, the inner one hatched and the outer one edged: told apart in grey', () => {
    const { svg, sentence, table } = rangesDrawing(data, 348);
    expect(svg).toContain('fill="url(#hatch-demand)"');
    // The scale ends at 8, the picture is 158 high between its head and foot: 4 is half way.
    expect(svg).toContain('M40 105L190 105L340 105');
    expect(sentence).toBe(data.sentence);
    expect(table).toBe(data.table);
    expect(svg).not.toContain('stroke-dasharray');
  });

  it('what it is held against is dashed and has its word, what was before is dotted; the scale reaches them', () => {
    const { svg } = rangesDrawing({ ...data, against: { value: 30, says: '30 places <now>' }, before: [6, 6, 6] }, 348);
    expect(svg).toContain('stroke-dasharray="8 4"');
    expect(svg).toContain('stroke-dasharray="1 4"');
    expect(svg).toContain('30 places &lt;now&gt;');
    expect(svg).toContain('>40</text>');
  });
});
