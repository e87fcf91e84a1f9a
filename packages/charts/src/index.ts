/** Pictures of the service: data in, SVG out, and the same as a sentence and a table. */
export * from './bars.ts';
export * from './course-strip.ts';
export { type Drawing, type Table, palette } from './drawing.ts';
export * from './harm-scale.ts';
export * from './incidence-curve.ts';
export * from './people-field.ts';
export * from './planned-visit.ts';
export * from './ranges.ts';
export * from './verdict-mark.ts';
export * from './visit-strip.ts';
export * from './window-bar.ts';
