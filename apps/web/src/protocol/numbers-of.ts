/** The numbers one would begin from: those of a version already here, or of a starter sheet. */
import { numberKeyNames, numberKeys, starterProtocols } from '@twelvemonth/clinical';
import type { ProtocolView } from '@twelvemonth/exchange';

type Known = {
  readonly key: string;
  readonly means: string;
  readonly unit: string;
  readonly value?: string | undefined;
  readonly suggestion?: string | undefined;
};

export function numbersOf(version: string, data: ProtocolView): readonly Known[] {
  const here = data.versions.find((each) => each.version === version);
  if (here !== undefined) return here.numbers;
  const sheet = starterProtocols.find((each) => each.version === version);
  if (sheet === undefined) return [];
  return numberKeyNames.map((key) => {
    const { value, suggestion } = sheet.numbers[key];
    return { key, means: numberKeys[key].means, unit: numberKeys[key].unit, value: value ?? undefined, suggestion };
  });
}
