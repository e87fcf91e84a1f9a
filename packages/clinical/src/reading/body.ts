/** Weight, height and what follows from the two: body mass index, body surface, ideal and adjusted weight. */
import { type Day, shortDate } from '../calendar/day.ts';
import { withOurUnit } from '../kinds-texts/converted-text.ts';
import { type Ratio, compareRatios, dividedBy, minus, ratioAsNumber, ratioText } from '../exact/ratio.ts';
import { bodyMassIndex, bodyMassIndexSource, bodyMassIndexWarns } from '../formulas/body-mass-index.ts';
import { bodySurfaceDuBois, bodySurfaceMosteller, bodySurfaceSources } from '../formulas/body-surface.ts';
import { adjustedWeightKg, idealWeightKg, idealWeightSources, isAtLeastPercentOf } from '../formulas/ideal-weight.ts';
import { heightCm, weightKg } from '../formulas/units.ts';
import { scaledText } from '../exact/decimal.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Fact } from '../record/patient-record.ts';
import type { Evidence } from '../requirements/evidence.ts';
import { shortest } from '../requirements/shortest.ts';
import type { ReadingLine, ReadingPart } from './reading.ts';

export function bodyReading(evidence: Evidence, protocol: Protocol, today: Day): ReadingPart {
  const { weight, height } = evidence;
  const lines: ReadingLine[] = [];
  const cautions: string[] = [];
  const kg = weight === undefined || typeof weight.value === 'string' ? undefined : weightKg(weight.value);
  const cm = height === undefined ? undefined : heightCm(height.body.quantity);
  if (weight === undefined || typeof weight.value === 'string') cautions.push('Never weighed.');
  else {
    lines.push({
      what: 'weight',
      is: withOurUnit('weight', weight.value),
      of: `${weight.method} on ${shortDate(weight.on)}${changeSince(kg, weight.before)}`,
      put: undefined,
      source: undefined,
      entries: weight.entry === undefined ? [] : [weight.entry],
    });
    const days = protocol.number.weightValidDays;
    if (today - weight.on > days) cautions.push(`The weight is older than ${days} days, as long as one counts here.`);
    if (weight.caution !== undefined) cautions.push(`The weight may mislead: ${weight.caution}.`);
  }
  if (height === undefined) cautions.push('Height not written: no body mass index, body surface or ideal weight.');
  else lines.push(heightLine(height));
  if (weight !== undefined && height !== undefined && kg !== undefined && cm !== undefined)
    lines.push(
      ...ofBoth({
        kg,
        cm,
        evidence,
        protocol,
        entries: [...(weight.entry === undefined ? [] : [weight.entry]), height.id],
      }),
    );
  return { title: 'Body', lines, cautions };
}

const heightLine = ({ id, on, body }: Fact<'height'>): ReadingLine => ({
  what: body.which === 'peak adult' ? 'tallest adult height' : 'height',
  is: withOurUnit('height', body.quantity),
  of: `written on ${shortDate(on)}`,
  put: undefined,
  source: undefined,
  entries: [id],
});

/** ", +2.1 % on 56.2 kg of 9 Oct 2026" */
function changeSince(kg: Ratio | undefined, before: NonNullable<Evidence['weight']>['before']): string {
  const was = before === undefined ? undefined : weightKg(before.value);
  if (kg === undefined || before === undefined || was === undefined || was.top <= 0) return '';
  const percent = (ratioAsNumber(dividedBy(minus(kg, was), was)) * 100).toFixed(1);
  return `, ${percent.startsWith('-') ? '' : '+'}${percent} % on ${withOurUnit('weight', before.value)} of ${shortDate(before.on)}`;
}

type Both = {
  readonly kg: Ratio;
  readonly cm: Ratio;
  readonly evidence: Evidence;
  readonly protocol: Protocol;
  readonly entries: readonly string[];
};

function ofBoth({ kg, cm, evidence, protocol, entries }: Both): ReadingLine[] {
  const [weight, height] = [ratioAsNumber(kg), ratioAsNumber(cm)];
  const numbers = `${shortest(kg, 2)} kg, ${shortest(cm, 1)} cm`;
  const index = bodyMassIndex(height, weight);
  const lines: ReadingLine[] = [
    {
      what: 'body mass index',
      is: `${index.toFixed(1)} kg/m2${bodyMassIndexWarns(index)}`,
      of: numbers,
      put: `${shortest(kg, 2)} kg / (${shortest(cm, 1)} cm in m)^2`,
      source: bodyMassIndexSource,
      entries,
    },
    {
      what: 'body surface',
      is: `${bodySurfaceMosteller(height, weight).toFixed(2)} m2`,
      of: `${numbers}; by Du Bois ${bodySurfaceDuBois(height, weight).toFixed(2)} m2`,
      put: `root of (${shortest(cm, 1)} cm x ${shortest(kg, 2)} kg / 3600)`,
      source: `${bodySurfaceSources.mosteller}; ${bodySurfaceSources.duBois}`,
      entries,
    },
  ];
  const { sex } = evidence;
  if (sex === undefined) return lines;
  const ideal = idealWeightKg(sex, cm);
  if (ideal === undefined)
    return [
      ...lines,
      {
        what: 'ideal weight',
        is: 'not worked out',
        of: `${shortest(cm, 1)} cm: the formula was made from 152.4 cm on`,
        put: undefined,
        source: idealWeightSources.ideal,
        entries,
      },
    ];
  lines.push({
    what: 'ideal weight',
    is: `${ratioText(ideal, 1)} kg`,
    of: `${sex}, ${shortest(cm, 1)} cm`,
    put: `${sex === 'male' ? '50' : '45.5'} kg + 2.3 kg x (${shortest(cm, 1)} cm in inches - 60)`,
    source: idealWeightSources.ideal,
    entries,
  });
  const { adjustedWeightFromPercent: from, adjustedWeightShare: share } = protocol.exact;
  if (compareRatios(kg, ideal) > 0 && isAtLeastPercentOf(kg, ideal, from))
    lines.push({
      what: 'adjusted weight',
      is: `${ratioText(adjustedWeightKg(kg, ideal, share), 1)} kg`,
      of: `the actual weight is ${scaledText(from)} % of the ideal one or more`,
      put: `${ratioText(ideal, 1)} kg + ${scaledText(share)} x (${shortest(kg, 2)} - ${ratioText(ideal, 1)}) kg`,
      source: idealWeightSources.adjusted,
      entries,
    });
  return lines;
}
