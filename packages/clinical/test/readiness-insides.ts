/** The parts of the engine its own properties look into, beside what the package gives to everyone. */
export * from '@twelvemonth/clinical';
export { outcomeOf } from '../src/readiness/after-plan.ts';
export { firstPlan } from '../src/readiness/plan.ts';
export { timelineFrom, withEvidence, worldOf } from '../src/readiness/world.ts';
