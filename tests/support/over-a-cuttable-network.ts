import type { AddressInfo } from 'node:net';
import type { Page } from 'playwright-core';
import { password, people } from '../../apps/server/test/support/own-server.ts';
import { cuttableNetwork } from './cuttable-network.ts';
import { signIn } from './hands.ts';
import { type Service, tablet } from './service.ts';

export type Cuttable = Awaited<ReturnType<typeof cuttableNetwork>>;

/** The nurse's tablet, which keeps the day, behind a network of its own that can be cut. */
export async function overACuttableNetwork(at: Service): Promise<{ readonly network: Cuttable; readonly page: Page }> {
  const network = await cuttableNetwork((at.server.app.server.address() as AddressInfo).port);
  const page = await at.visitor(tablet, undefined, { keepsDay: true });
  await page.goto(network.url);
  await signIn(page, people.nurse.username, password);
  return { network, page };
}
