/** What signing at shared screens needs at hand. */
import type { AtHand } from '../at-hand.ts';
import type { Accounts } from './accounts.ts';
import { openDevices } from './devices.ts';
import { openQuickSecrets } from './quick-secrets.ts';
import { signatureLog } from './signature-log.ts';

export const sharedSigning = (
  { tables, secret, https }: Accounts,
  now: () => string,
): Pick<AtHand, 'devices' | 'quickSecrets' | 'signatureLog' | 'standingSignatures'> => ({
  devices: openDevices(tables, now, { https }),
  quickSecrets: openQuickSecrets(tables, secret),
  signatureLog: signatureLog(tables, now),
  standingSignatures: new Map(),
});
