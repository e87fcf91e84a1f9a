/** A planned visit on the hours of the day: what needs a nurse is filled, what runs by itself is striped, a wait is a line. */
import { type Drawing, element, palette, svg, text } from './drawing.ts';

export type PlannedVisitData = {
  readonly who: string;
  /** Minutes after midnight: the hours shown. */
  readonly from: number;
  readonly until: number;
  readonly arrives: number;
  readonly leaves: number;
  readonly chair: number | undefined;
  readonly steps: readonly {
    readonly step: string;
    readonly from: number;
    readonly to: number;
    readonly nurse: 'whole' | 'shared' | 'none';
  }[];
};

const height = 34;
const minutesPerHour = 60;

const timeOf = (minute: number): string =>
  `${String(Math.floor(minute / minutesPerHour)).padStart(2, '0')}:${String(minute % minutesPerHour).padStart(2, '0')}`;

/** The hours over the visits, drawn on the same scale. */
export function hoursLine(from: number, until: number, width: number): string {
  const labels: string[] = [];
  for (let hour = Math.ceil(from / minutesPerHour) * minutesPerHour; hour < until; hour += minutesPerHour) {
    const at = ((hour - from) / Math.max(1, until - from)) * width;
    labels.push(
      text(at, 13, timeOf(hour), {
        size: 12,
        fill: palette.secondInk,
        anchor: at < 20 ? 'start' : at > width - 20 ? 'end' : 'middle',
      }),
    );
  }
  return svg(width, 16, ...labels);
}

export function plannedVisit(
  { who, from, until, arrives, leaves, chair, steps }: PlannedVisitData,
  width: number,
): Drawing {
  const x = (minute: number): number => ((minute - from) / Math.max(1, until - from)) * width;
  const hours: string[] = [];
  for (let hour = Math.ceil(from / minutesPerHour) * minutesPerHour; hour < until; hour += minutesPerHour)
    hours.push(element('path', { d: `M${x(hour)} 0V${height}`, stroke: palette.faintRule, 'stroke-width': 1 }));
  const bars = steps.map((step) => {
    const place = { x: x(step.from) + 0.5, width: Math.max(1, x(step.to) - x(step.from) - 1) };
    if (step.nurse === 'whole') return element('rect', { ...place, y: 9, height: 16, fill: palette.done });
    const frame = { ...place, y: 10, height: 14, fill: palette.sheet, stroke: palette.done };
    const dashes = step.nurse === 'none' ? '3 3' : undefined;
    return element('rect', { ...frame, 'stroke-width': 1.5, 'stroke-dasharray': dashes });
  });
  const infusion = steps.find(({ nurse }) => nurse === 'shared');
  const label =
    infusion === undefined || chair === undefined
      ? ''
      : text((x(infusion.from) + x(infusion.to)) / 2, 21, String(chair), { size: 12, weight: 650, anchor: 'middle' });
  const seat = chair === undefined ? 'no chair' : `chair ${chair}`;
  return {
    svg: svg(
      width,
      height,
      ...hours,
      element('path', { d: `M${x(arrives)} 17H${x(leaves)}`, stroke: palette.straw, 'stroke-width': 2 }),
      ...bars,
      label,
    ),
    sentence: `${who}: comes ${timeOf(arrives)}, leaves ${timeOf(leaves)}, ${seat}.`,
    table: {
      caption: `Planned visit of ${who}`,
      head: ['step', 'from', 'to'],
      rows: steps.map((step) => [step.step, timeOf(step.from), timeOf(step.to)]),
    },
  };
}
