/**
 * The engine against the checker: written apart from one page (docs/readiness.md), sharing no code. The full run of 10,000
 * ledgers is a command of its own (docs/safety/oracle.md); this and its neighbour are a share of it, from the same seeds.
 */
import { agreeOnLedgers } from './agreeing.ts';

agreeOnLedgers(1, 500);
