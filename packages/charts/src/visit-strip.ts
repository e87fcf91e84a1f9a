/** The visit strip: the steps of one attendance in a line. Done, running with what is left, waiting, to come. */
import { type Drawing, element, palette, svg, text } from './drawing.ts';

export type VisitStripData = {
  readonly who: string;
  readonly steps: readonly {
    readonly step: string;
    readonly state: 'done' | 'running' | 'waiting' | 'to come';
    readonly says?: string | undefined;
    readonly share?: number | undefined;
  }[];
};

/** Short names over the columns, and how wide each is drawn. */
export const visitColumns: readonly {
  readonly step: string;
  readonly short: string;
  readonly width: number;
  /** Another step that stands in this column: what is injected is not dripped. */
  readonly or?: string;
}[] = [
  { step: 'arrive', short: 'here', width: 36 },
  { step: 'observations', short: 'obs', width: 36 },
  { step: 'checklist', short: 'ask', width: 46 },
  { step: 'decision', short: 'go', width: 30 },
  { step: 'cannula', short: 'cannula', width: 50 },
  { step: 'flush', short: 'flush', width: 38 },
  { step: 'preparation', short: 'prepare', width: 54 },
  { step: 'second check', short: 'check', width: 46 },
  { step: 'infusion', short: 'infuse', width: 148, or: 'injection' },
  { step: 'removal', short: 'remove', width: 50 },
  { step: 'observe', short: 'observe', width: 74 },
  { step: 'leave', short: 'leave', width: 44 },
];
const GAP = 4;
export const visitStripWidth = visitColumns.reduce((sum, column) => sum + column.width + GAP, 0);

const stateWords = { done: 'done', running: 'running', waiting: 'waiting', 'to come': 'to come' } as const;

export function visitStrip(data: VisitStripData): Drawing {
  const parts: string[] = [];
  let x = 0;
  for (const column of visitColumns) {
    const step = data.steps.find((one) => one.step === column.step || one.step === column.or);
    const { width } = column;
    switch (step?.state ?? 'to come') {
      case 'done':
        parts.push(element('rect', { x, y: 6, width, height: 18, fill: palette.done }));
        break;
      case 'running':
        parts.push(
          element('rect', {
            x: x + 1,
            y: 3,
            width: width - 2,
            height: 24,
            fill: palette.sheet,
            stroke: palette.ready,
            'stroke-width': 2,
          }),
          element('rect', {
            x: x + 2,
            y: 4,
            width: (width - 4) * Math.min(1, Math.max(0, step?.share ?? 0.5)),
            height: 22,
            fill: '#bcd0c5',
          }),
          width > 100 ? text(x + 8, 20, step?.says ?? 'running', { size: 13, weight: 650, fill: palette.ready }) : '',
        );
        break;
      case 'waiting':
        parts.push(
          element('rect', {
            x: x + 1,
            y: 3,
            width: width - 2,
            height: 24,
            fill: palette.sheet,
            stroke: palette.wait,
            'stroke-width': 2,
          }),
          element('rect', { x: x + 2, y: 4, width: (width - 4) / 2, height: 22, fill: '#dccfae' }),
        );
        break;
      case 'to come':
        parts.push(element('path', { d: `M${x} 15H${x + width}`, stroke: palette.straw, 'stroke-width': 2 }));
        break;
    }
    x += width + GAP;
  }
  const now =
    data.steps.find((step) => step.state === 'running') ?? data.steps.find((step) => step.state === 'waiting');
  const done = data.steps.filter((step) => step.state === 'done').length;
  return {
    svg: svg(visitStripWidth, 30, ...parts),
    sentence: `${data.who}: ${done} of ${data.steps.length} steps done${now === undefined ? '' : `; ${now.step} ${stateWords[now.state]}${now.says === undefined ? '' : ` (${now.says})`}`}.`,
    table: {
      caption: `Visit of ${data.who}`,
      head: ['step', 'state'],
      rows: data.steps.map((step) => [step.step, step.says === undefined ? step.state : `${step.state}: ${step.says}`]),
    },
  };
}
