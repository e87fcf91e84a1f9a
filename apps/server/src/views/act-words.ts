/** What the button of a step says on the day's page. */
export const actWords: Readonly<Partial<Record<string, string>>> = {
  observations: 'Take observations',
  checklist: 'Ask the questions',
  decision: 'Decide',
  cannula: 'Place the cannula',
  flush: 'Flush',
  preparation: 'Prepare',
  'second check': 'Check this dose',
  injection: 'Give the injection',
  infusion: 'Open the infusion',
  removal: 'Remove the cannula',
  observe: 'Record how they are',
  leave: 'See them off',
};
