/** Helping a person decide: benefit and harm in one number and one time, both ways, each figure with its source. */
export * from './benefit.ts';
export * from './counts.ts';
export * from './fit.ts';
export * from './harms/acute-phase.ts';
export * from './harms/next-time.ts';
export * from './harms/rare.ts';
export * from './person.ts';
export * from './risk.ts';
export * from './sheet.ts';
export * from './source.ts';
export * from './trials/after-a-hip-fracture.ts';
export * from './trials/alternatives.ts';
export * from './trials/few-trials.ts';
export * from './trials/other-schedules.ts';
export * from './trials/trial.ts';
export * from './trials/yearly-drip-in-women.ts';
export * from './words.ts';
