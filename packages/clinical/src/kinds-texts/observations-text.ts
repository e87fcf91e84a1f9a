import type { BodyOfKind } from '../kinds/index.ts';
import { degreesText } from './temperature-text.ts';

/** "pulse 72/min, pressure 130/76 mmHg": what was measured, in a fixed order. */
export function observationsText(body: BodyOfKind<'observations'>): string {
  const { temperatureCelsius, temperatureFahrenheit } = body;
  const parts = [
    body.pulsePerMinute === undefined ? undefined : `pulse ${body.pulsePerMinute}/min`,
    body.systolicMmHg === undefined ? undefined : `pressure ${body.systolicMmHg}/${body.diastolicMmHg ?? '?'} mmHg`,
    temperatureCelsius === undefined
      ? undefined
      : `temperature ${degreesText({ temperatureCelsius, temperatureFahrenheit })}`,
    body.saturationPercent === undefined ? undefined : `saturation ${body.saturationPercent}%`,
    body.breathsPerMinute === undefined ? undefined : `breaths ${body.breathsPerMinute}/min`,
    body.newIrregularPulse === true ? 'new irregular pulse' : undefined,
    body.onOxygen === undefined ? undefined : body.onOxygen ? 'on oxygen' : 'on air',
    body.consciousness,
  ];
  return parts.filter((part) => part !== undefined).join(', ') || 'nothing measured';
}
