/** What a person of the service, and a date, can be in a register. */
/** Ages and dates. Common practice, no source. */
export const plausibleAge = { least: 18, most: 110 } as const;
/** Two doses nearer than this many days are remarked on; the protocol's interval decides later. Common practice, no source. */
export const dosesNearDays = 300;
/** First year in which a dose of each medicine can have been given, trials included. From memory. */
export const firstYearOf: Readonly<Record<string, number>> = {
  'zoledronic acid 5 mg': 2000,
  'zoledronic acid 4 mg': 1999,
  'denosumab 60 mg': 2001,
  'denosumab 120 mg': 2001,
  'ibandronate 3 mg': 1998,
  'romosozumab 210 mg': 2009,
  pamidronate: 1985,
};
