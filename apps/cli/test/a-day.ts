/** A day in the unit's own format, to be changed by each test. */
export type WrittenVisit = Record<string, unknown> & { readonly name: string };

export const writtenDay = (more: Readonly<Record<string, unknown>> = {}) => ({
  id: 'Wednesday 2 December 2026',
  opens: '08:30',
  closes: '13:00',
  gridMinutes: 5,
  nurses: [
    { from: '08:30', to: '13:00' },
    { from: '08:30', to: '12:00' },
  ],
  watchedPerNurse: 4,
  chairs: 2,
  watchPlaces: 1,
  preparers: 1,
  secondCheckers: 1,
  visits: [
    { name: 'Mrs Ito', kind: 'first infusion', infusionMinutes: 20 },
    {
      name: 'Mr Okafor',
      kind: 'later infusion',
      infusionMinutes: 15,
      brought: true,
      notBefore: '09:00',
      goneBy: '11:00',
    },
    { name: 'Miss Lund', kind: 'injection' },
    { name: 'Mr Vale', kind: 'later infusion', infusionMinutes: 30, mayWait: false },
  ] as WrittenVisit[],
  ...more,
});
