/** The long drills, by a command of their own: `npm run endurance`. The suite has a short one of each. */
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/endurance/**/*.drill.ts'],
    testTimeout: 1_800_000,
    hookTimeout: 240_000,
    isolate: false,
    bail: 1,
  },
});
