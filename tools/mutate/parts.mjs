/** What is mutated, part by part, and the tests each part is tried on (paths under packages/clinical/src and /test). */
export const parts = {
  formulas: { sources: ['formulas/**/*.ts'], tests: ['formulas/*.test.ts'] },
  requirements: {
    sources: ['requirements/**/*.ts'],
    tests: ['requirements-*.test.ts', 'readiness-worked-cases.test.ts', 'fifteen-rules.test.ts'],
  },
  course: {
    sources: ['course/**/*.ts'],
    tests: ['course*.test.ts', 'requirements-others.test.ts', 'decide/course-review.test.ts'],
  },
  standing: {
    sources: ['standing/**/*.ts'],
    tests: ['standing-*.test.ts', 'denosumab-clock.test.ts', 'decide/notes.test.ts'],
  },
};
