/** Signing in and out, and who is signed in. */
import { type Role, actSchema, rolesFor } from '@twelvemonth/clinical';
import type { MeView } from '@twelvemonth/exchange';
import type { FastifyInstance, FastifyReply } from 'fastify';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import { serveAnyone, serveRoute } from '../serve-route.ts';
import type { Member } from '../sign-in/accounts.ts';
import { headersOf } from '../sign-in/cookie-headers.ts';
import { type RouteName, mayAsk, whoMay } from '../who-may-read.ts';

const acts = actSchema.options.map((option) => option.shape.name.value);

/** Every act and every route the roles may ask for, by name: what a screen offers. */
const mayOf = (roles: readonly Role[]): string[] => [
  ...acts.filter((act) => rolesFor(act).some((role) => roles.includes(role))),
  ...(Object.keys(whoMay) as RouteName[]).filter((route) => mayAsk(route, roles)),
];

export const meOf = (member: Member): MeView => ({
  staff: member.staff,
  name: member.name,
  username: member.username,
  roles: [...member.roles],
  ...(member.unit === undefined ? {} : { unit: member.unit }),
  may: mayOf(member.roles),
});

export const tooManyTries = (seconds: number): Refused =>
  new Refused(429, 'too-many-tries', `Too many tries. Try again in ${seconds} seconds.`, {
    headers: { 'retry-after': String(seconds) },
  });

/** The name or the password; never which. */
export const wrongNameOrPassword = 'The name or the password is not right.';

function setCookies(reply: FastifyReply, cookies: readonly string[]): void {
  reply.header('set-cookie', [...cookies]);
}

export function serveSignIn(app: FastifyInstance, atHand: AtHand): void {
  serveAnyone(app, 'signIn', async ({ body, request, reply }) => {
    const attempt = atHand.attempts.begin(body.username, request.ip);
    if ('waitSeconds' in attempt) return tooManyTries(attempt.waitSeconds);
    const signedIn = await atHand.accounts.signIn(body.username, body.password, headersOf(request));
    if (signedIn === undefined) {
      request.log.warn({ address: request.ip }, 'sign-in refused');
      return new Refused(401, 'wrong-name-or-password', wrongNameOrPassword);
    }
    attempt.succeeded();
    setCookies(reply, signedIn.cookies);
    return meOf(signedIn.member);
  });

  serveRoute(app, atHand, 'signOut', async ({ who, request, reply }) => {
    setCookies(reply, await atHand.accounts.signOut(headersOf(request)));
    atHand.events.endSession(who.session);
    return reply.code(204).send();
  });

  serveRoute(app, atHand, 'me', async ({ who }) => meOf(who.member));
}
