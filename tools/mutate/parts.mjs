/** What is mutated, part by part, and the tests each part is tried on (paths under packages/clinical/src and /test). */
const rules = [
  'requirements-*.test.ts',
  'readiness-worked-cases.test.ts',
  'fifteen-rules.test.ts',
  'regimens.test.ts',
  'switches.test.ts',
];

export const parts = {
  formulas: { sources: ['formulas/**/*.ts'], tests: ['formulas/*.test.ts'] },
  requirements: {
    sources: ['requirements/**/*.ts'],
    tests: [...rules, 'readiness-go.test.ts'],
  },
  course: {
    sources: ['course/**/*.ts'],
    tests: [
      ...rules,
      'course.test.ts',
      'course-events.test.ts',
      'review-sheet.test.ts',
      'decide/course-review.test.ts',
    ],
  },
  standing: {
    sources: ['standing/**/*.ts'],
    tests: [
      'standing-*.test.ts',
      '*-clock.test.ts',
      'course.test.ts',
      'regimens.test.ts',
      'decide/visit.test.ts',
      'decide/lists-and-protocol.test.ts',
    ],
  },
};
