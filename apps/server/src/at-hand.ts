/** What a running server has at hand: handed to every route, made once at the start. */
import type { Store } from '@twelvemonth/store';
import type { Clock } from './clock.ts';
import type { DemoSignIn } from './demo/demo-staff.ts';
import type { Channels } from './messages/channel.ts';
import type { Events } from './events.ts';
import type { Notes } from './register/notes.ts';
import type { People } from './register/people.ts';
import type { Units } from './register/units.ts';
import type { Accounts } from './sign-in/accounts.ts';
import type { Attempts } from './sign-in/attempts.ts';
import type { StandingSignatures } from './acts/shared-screen.ts';
import type { Devices } from './sign-in/devices.ts';
import type { LookLog } from './sign-in/looks.ts';
import type { QuickSecrets } from './sign-in/quick-secrets.ts';
import type { SignatureLog } from './sign-in/signature-log.ts';

export type AtHand = {
  readonly store: Store;
  readonly clock: Clock;
  readonly accounts: Accounts;
  readonly attempts: Attempts;
  readonly looks: LookLog;
  readonly devices: Devices;
  readonly quickSecrets: QuickSecrets;
  readonly signatureLog: SignatureLog;
  readonly standingSignatures: StandingSignatures;
  readonly events: Events;
  readonly notes: Notes;
  readonly units: Units;
  readonly people: People;
  /** Ways to send a message out of the house, where they are set up. */
  readonly channels: Channels;
  /** Where what came back about messages is moved; undefined: nowhere. */
  readonly returnedFolder: string | undefined;
  /** Where people open their own pages; undefined: not served here. */
  readonly ownPageAddress: () => string | undefined;
  /** What this server shows to browsers, PEM; undefined: it speaks no TLS itself. */
  readonly certificate: string | undefined;
  /** Set in the demo only. */
  readonly demo: DemoSignIn | undefined;
  readonly version: string;
};
