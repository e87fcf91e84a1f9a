/** The fields of a decision not to give a dose now, in the words of its form; a refusal of one is told in the same words. */
export const decisionLabels = {
  reasonCode: 'Reason',
  note: 'What was found',
  couldHaveBeenSeen: 'Could it have been seen before?',
  nextStep: 'What next',
  nextBy: 'By when',
  nextOwner: 'Whose it is',
  tellsThePatient: 'Who tells the patient',
} as const;
