/** What is at risk, in the words of the sheet. */
import type { RiskOf } from '@twelvemonth/counselling';

export const spokenRisk: Readonly<Record<RiskOf, { readonly title: string; readonly do: string }>> = {
  'hip fracture': { title: 'A broken hip', do: 'break a hip' },
  'major fracture': { title: 'A broken hip, spine, wrist or arm', do: 'break one of these' },
  'any fracture': { title: 'Any broken bone', do: 'break a bone' },
};
