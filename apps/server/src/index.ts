/** What the browser tests and other programs use to run a server of their own. */
export { type ServeOptions, readCommandLine } from './command-line.ts';
export { demoPassword } from './demo/demo-staff.ts';
export { type Running, type Watching, start } from './start.ts';
