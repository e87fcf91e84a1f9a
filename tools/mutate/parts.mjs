/** What is mutated, part by part, and the tests each part is tried on, the quick ones first (under packages/clinical/src and /test). */
const rules = [
  'answers-in-full.test.ts',
  'requirements-*.test.ts',
  'weight-change.test.ts',
  'signed-results.test.ts',
  'switches.test.ts',
  'fifteen-rules.test.ts',
  'regimens.test.ts',
  'regimen-counts.test.ts',
  'readiness-go.test.ts',
  'readiness-worked-cases.test.ts',
];

export const parts = {
  formulas: { sources: ['formulas/**/*.ts'], tests: ['formulas/*.test.ts'] },
  requirements: { sources: ['requirements/**/*.ts'], tests: rules },
  course: {
    sources: ['course/**/*.ts'],
    tests: [
      'review-sheet-in-full.test.ts',
      'answers-in-full.test.ts',
      'course-events.test.ts',
      'review-sheet.test.ts',
      'course.test.ts',
      'requirements-course.test.ts',
      'requirements-interval.test.ts',
      'regimens.test.ts',
      'regimen-counts.test.ts',
      'switches.test.ts',
      'decide/course-review.test.ts',
    ],
  },
  standing: {
    sources: ['standing/**/*.ts'],
    tests: [
      'standing-*.test.ts',
      '*-clock.test.ts',
      'looked-at-again.test.ts',
      'course.test.ts',
      'regimens.test.ts',
      'regimen-counts.test.ts',
      'decide/*.test.ts',
    ],
  },
};
