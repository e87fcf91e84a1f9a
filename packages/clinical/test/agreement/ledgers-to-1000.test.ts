/** The other half of the share that `ledgers-to-500.test.ts` begins: two files, so that two cores share them. */
import { agreeOnLedgers } from './agreeing.ts';

agreeOnLedgers(501, 1000);
