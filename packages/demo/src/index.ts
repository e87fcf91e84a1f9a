/** The demo service of Marlowe Vale: invented people, invented staff, every entry written through the same rules as a real one. */
export { type DemoOptions, type DemoStep, DEMO_PEOPLE, demoActs, replayDemo } from './replay.ts';
export { type DemoStaff, type UnitId, demoStaff } from './staff.ts';
