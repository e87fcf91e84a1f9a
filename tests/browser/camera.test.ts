/**
 * The code of a pack read by the device's camera. The browser of these tests has no detector of its own, so one stands in for it
 * that "sees" a code after its second look: this shows that the camera is asked for, read, refused and switched off, and nothing
 * about how well a real detector reads a real pack.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import {
  listPacks,
  listToday,
  packCode,
  planToday,
  readyToPrepare,
  wilhelmina,
} from '../../apps/server/test/support/at-the-chair.ts';
import { setUp } from '../../apps/server/test/support/own-server.ts';
import { fingersFit } from '../support/fingers.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';

let at: Service;
let page: Page;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  await listToday(at.server, 'wilhelmina', 1, wilhelmina);
  await listPacks(at.server);
  await readyToPrepare(at.server, 'wilhelmina', 2);
  page = await at.signedIn('nurse', '/people/wilhelmina/visit', tablet);
});
afterAll(() => at.close());

/** Tracks of every camera picture that was lent, so that it can be told whether they were given back. */
declare const lent: MediaStreamTrack[];

async function standIn(code: string | undefined): Promise<void> {
  await page.addInitScript((sees) => {
    const all: MediaStreamTrack[] = [];
    let looks = 0;
    Object.assign(globalThis, {
      lent: all,
      BarcodeDetector: class {
        static getSupportedFormats(): Promise<string[]> {
          return Promise.resolve(['data_matrix']);
        }
        detect(): Promise<{ rawValue: string | undefined }[]> {
          looks += 1;
          return Promise.resolve(looks < 2 ? [] : [{ rawValue: sees }]);
        }
      },
    });
    navigator.mediaDevices.getUserMedia = async () => {
      if (sees === undefined) throw new DOMException('', 'NotAllowedError');
      const stream = Object.assign(document.createElement('canvas'), { width: 64, height: 48 }).captureStream(5);
      all.push(...stream.getTracks());
      return Promise.resolve(stream);
    };
  }, code);
  await page.reload();
}
const on = (): Promise<void> => hands(page).press('Read it with the camera');

it('a browser without a detector says so, and typing is offered', async () => {
  await hands(page).sees(/This browser cannot read square codes with a camera. Without a scanner, type/);
  await page.getByRole('button', { name: 'It cannot be scanned: type it' }).waitFor();
});

it('a camera that is not allowed is told, with what to do', async () => {
  await standIn(undefined);
  await on();
  await hands(page).sees(/The camera was not allowed. Allow it for this page in the browser, or go on without it/);
  await checked(page, 'camera-refused');
  await fingersFit(page, 'camera-refused');
});

it('what it sees is read as a scan, and the camera is off afterwards', async () => {
  await standIn(packCode());
  await on();
  const says = page.getByRole('region', { name: 'What the code says' });
  await says.getByText('PA-2391', { exact: true }).waitFor();
  expect(await page.evaluate(() => lent.map(({ readyState }) => readyState))).toEqual(['ended']);
});

it('stopped by hand, the camera is off too', async () => {
  await standIn('');
  await on();
  await hands(page).press('Stop the camera');
  await page.getByRole('button', { name: 'Read it with the camera' }).waitFor();
  expect(await page.evaluate(() => lent.map(({ readyState }) => readyState))).toEqual(['ended']);
});
