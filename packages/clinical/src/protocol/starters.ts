/** The sheets a unit may begin from. What they say differently is one table each; docs/guide/starters.md puts them side by side. */
import type { ProtocolSheet } from './protocol.ts';
import { starterUk } from './starter-uk.ts';
import { starterUs } from './starter-us.ts';
import { starterSheet } from './starter.ts';

export const starterProtocols: readonly ProtocolSheet[] = [starterUk, starterSheet, starterUs];
