/** What anyone may know before signing in: which service this is, whether it is the demo, whether it is set up. No patient. */
import { plainDate } from '@twelvemonth/clinical';
import type { StatusView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import { certificateViewOf } from '../certificate.ts';
import { wallNow } from '../clock.ts';
import { zoneBeforeAnyUnit } from '../register/units.ts';
import { serviceName } from './settings.ts';
import { unitViewOf } from './units.ts';

export async function statusOf(atHand: AtHand): Promise<StatusView> {
  const { store, accounts, clock, demo } = atHand;
  const units = await atHand.units.all();
  const certificate = atHand.certificate === undefined ? undefined : certificateViewOf(atHand.certificate, wallNow());
  const readOnly = store.readOnly?.says;
  return {
    product: 'Twelvemonth',
    version: atHand.version,
    service: await serviceName(atHand),
    demo: demo !== undefined,
    today: plainDate(units[0]?.today ?? clock.local(zoneBeforeAnyUnit).today),
    serverTime: clock.now(),
    units: units.map(unitViewOf),
    commit: (await store.tail()).commit,
    ...(readOnly === undefined ? {} : { readOnly }),
    ...(certificate?.warns === true ? { certificateEnds: certificate.says } : {}),
    needsFirstAdministrator: demo === undefined && accounts.everyone().length === 0,
    ...(demo === undefined
      ? {}
      : {
          demoPassword: demo.password,
          demoPeople: demo.people.flatMap((username) => {
            const member = accounts.named(username);
            return member === undefined ? [] : [{ username, name: member.name, roles: [...member.roles] }];
          }),
        }),
  };
}
