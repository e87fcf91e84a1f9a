/**
 * One year of places filled in a process that does nothing else: reads the problem from the file named, fills it once, prints
 * what it cost and the most memory this process had. The generator's memory and that of other sizes stay out of it.
 */
import { readFileSync } from 'node:fs';
import { deserialize } from 'node:v8';
import { type FillProblem, fillingOf } from '../../packages/planning/src/fill/filling.ts';

const [, , file = '', tries = ''] = process.argv;
const problem = deserialize(readFileSync(file)) as FillProblem;
const before = process.memoryUsage().rss;
const { cost } = fillingOf(problem, Number(tries));
console.log(JSON.stringify({ cost, before, most: process.resourceUsage().maxRSS * 1024 }));
