/**
 * Medicines that raise creatinine without a fall of filtration: they keep the kidney's tubes from passing it on (clinical sheet P10,
 * from memory). Told beside a clearance as a caution and never more: it passes nobody, and the limits stand as they are.
 */
import { day as dayOf, shortDate } from '../calendar/day.ts';
import type { Fact } from '../record/patient-record.ts';
import type { Evidence } from './evidence.ts';
import { nameKey } from './medicine-name.ts';

/** By generic name, as it may stand within a longer one; co-trimoxazole holds trimethoprim. */
const raising = ['trimethoprim', 'co-trimoxazole', 'cimetidine', 'fenofibrate', 'cobicistat', 'dolutegravir'];

const raises = ({ body }: Fact<'medicine'>): boolean => {
  const name = nameKey(body.name);
  return raising.some((each) => name.includes(each));
};

/** One sentence for each that was taken on the day of the sample; the newest entry of a medicine tells whether it was. */
export function creatinineRaisingCautions({
  medicines,
  creatinine,
}: Pick<Evidence, 'medicines' | 'creatinine'>): readonly string[] {
  if (creatinine === undefined || medicines.length === 0) return [];
  const newest = new Map<string, Fact<'medicine'>>();
  for (const one of medicines) if (one.on <= creatinine.on && raises(one)) newest.set(nameKey(one.body.name), one);
  return [...newest.values()]
    .filter(({ body }) => body.stoppedOn === undefined || dayOf(body.stoppedOn) >= creatinine.on)
    .map(
      ({ body, on }) =>
        `${body.name}, recorded from ${shortDate(on)}, can raise creatinine without harm to the kidneys: the clearance by the sample of ${shortDate(creatinine.on)} may read too low. The limit stands; a prescriber decides whether to sample again without it.`,
    );
}
