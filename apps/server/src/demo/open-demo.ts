/** The demo service: made once, opened after. */
import type { Store } from '@twelvemonth/store';
import type { Clock } from '../clock.ts';
import type { ServeOptions } from '../command-line.ts';
import { CannotStart } from '../service-folder.ts';
import type { Accounts } from '../sign-in/accounts.ts';
import type { DemoSignIn } from './demo-staff.ts';

export const demoZone = 'Europe/London';

export async function openDemo(
  _options: ServeOptions,
  _clock: Clock,
  _watching: { readonly say: (line: string) => void; readonly isStopping: () => boolean },
): Promise<{ store: Store; demo: { seeded: (accounts: Accounts) => Promise<DemoSignIn> } | undefined }> {
  throw new CannotStart('There is no demo yet: start with --empty.');
}
