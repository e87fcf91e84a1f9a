/** Shared screens, and the PIN and badge each person sets for themselves. */
import type { FastifyInstance } from 'fastify';
import { sharedPlaceOf } from '../acts/shared-screen.ts';
import type { AtHand } from '../at-hand.ts';
import { Refused, notHere } from '../problem.ts';
import { serveRoute } from '../serve-route.ts';
import { headersOf } from '../sign-in/cookie-headers.ts';
import { tooManyTries, wrongNameOrPassword } from './sign-in.ts';

const fieldWrong = (field: string, says: string): Refused =>
  new Refused(422, 'field-wrong', says, { reasons: [{ name: 'field-wrong', says, field }] });

export function serveSigning(app: FastifyInstance, atHand: AtHand): void {
  const { accounts, attempts, devices, quickSecrets } = atHand;

  serveRoute(app, atHand, 'enrolDevice', async ({ body, who, reply }) => {
    if ((await atHand.units.named(body.unit)) === undefined) return notHere('unit');
    reply.header('set-cookie', await devices.enrol(body.name, body.unit, who.member.staff));
    return { name: body.name };
  });
  serveRoute(app, atHand, 'withdrawDevice', async ({ body }) => {
    await devices.withdraw(body.device);
    return {};
  });

  serveRoute(app, atHand, 'mySignature', async ({ who }) => quickSecrets.has(who.member.staff));
  serveRoute(app, atHand, 'setMySignature', async ({ body, who, request }) => {
    const { staff, username } = who.member;
    const attempt = attempts.begin(username, request.ip);
    if ('waitSeconds' in attempt) return tooManyTries(attempt.waitSeconds);
    if ((await accounts.verify(username, body.password)) === undefined)
      return fieldWrong('password', wrongNameOrPassword);
    attempt.succeeded();
    if (body.pin !== undefined && isGuessedFirst(body.pin))
      return fieldWrong('pin', 'The same digit again and again, or digits in a row, are guessed first.');
    if (body.badge !== undefined && (await quickSecrets.setBadge(staff, body.badge)) === 'taken')
      return fieldWrong('badge', 'This badge belongs to somebody else here.');
    if (body.pin !== undefined) await quickSecrets.setPin(staff, body.pin);
    return quickSecrets.has(staff);
  });

  serveRoute(app, atHand, 'signing', async ({ params, request }) => {
    const place = await sharedPlaceOf(params.patient, headersOf(request), atHand);
    return place instanceof Refused
      ? { people: [] }
      : { device: place.device.name, people: place.present.map(({ staff, name }) => ({ staff, name })) };
  });
}

/** 111111, 123456, 987654: every step between digits is the same, and at most one. */
function isGuessedFirst(pin: string): boolean {
  const steps = new Set(Array.from(pin.slice(1), (digit, index) => Number(digit) - Number(pin[index])));
  const [step = 0] = steps;
  return steps.size === 1 && Math.abs(step) <= 1;
}
