/** Who works here: the first administrator, then everyone they add. */
import { type Role, roles as everyRole, starterProtocols } from '@twelvemonth/clinical';
import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import type { AtHand } from '../at-hand.ts';
import { Refused, notHere } from '../problem.ts';
import { serveAnyone, serveRoute } from '../serve-route.ts';
import type { Member } from '../sign-in/accounts.ts';
import { headersOf } from '../sign-in/cookie-headers.ts';
import { hashOfPassword } from '../sign-in/passwords.ts';
import { meOf } from './sign-in.ts';

export const staffViewOf = ({ staff, name, username, roles, active, forToday }: Member) => ({
  staff,
  name,
  username,
  roles: [...roles],
  active,
  ...(forToday === undefined ? {} : { forToday: { lastDay: forToday.lastDay, registration: forToday.registration } }),
});

const rolesFrom = (names: readonly string[]): readonly Role[] | Refused => {
  const read = z.array(z.enum(everyRole)).safeParse(names);
  if (read.success) return [...new Set(read.data)];
  const says = `A role is one of: ${everyRole.join(', ')}.`;
  return new Refused(422, 'field-wrong', says, { reasons: [{ name: 'field-wrong', says, field: 'roles' }] });
};

export const nameTaken = (): Refused => {
  const says = 'Somebody here already has this name for signing in.';
  return new Refused(409, 'name-taken', says, { reasons: [{ name: 'name-taken', says, field: 'username' }] });
};

const thisMachine = new Set(['127.0.0.1', '::1', '::ffff:127.0.0.1']);

export function serveStaff(app: FastifyInstance, atHand: AtHand): void {
  const { accounts } = atHand;
  /** Two first visitors at once: only one of them becomes the administrator. */
  let beingSetUp = false;

  serveAnyone(app, 'firstAdministrator', async ({ body, request, reply }) => {
    if (accounts.everyone().length > 0 || beingSetUp)
      return new Refused(403, 'already-set-up', 'This service has an administrator.');
    // The connection itself and, behind a proxy, whoever the proxy speaks for: one of the two can be made up.
    if (![request.ip, request.socket.remoteAddress ?? ''].every((address) => thisMachine.has(address))) {
      return new Refused(
        403,
        'this-machine-only',
        'Set the service up from the machine it runs on, at its localhost address.',
      );
    }
    const { name, username, password, service, starter } = body;
    if (starter !== undefined && !starterProtocols.some(({ version }) => version === starter)) {
      const says = 'There is no such starter.';
      return new Refused(422, 'field-wrong', says, { reasons: [{ name: 'field-wrong', says, field: 'starter' }] });
    }
    beingSetUp = true;
    try {
      const added = await accounts.add({ name, username, roles: ['administrator'] }, await hashOfPassword(password));
      if (added === 'name-taken') return nameTaken();
      await atHand.store.setSetting('service', service);
      if (starter !== undefined) await atHand.store.setSetting('starter', starter);
      const signedIn = await accounts.signIn(username, password, headersOf(request));
      reply.header('set-cookie', signedIn?.cookies ?? []);
      return meOf(added);
    } finally {
      beingSetUp = false;
    }
  });

  serveRoute(app, atHand, 'addStaff', async ({ body }) => {
    const roles = rolesFrom(body.roles);
    if (roles instanceof Refused) return roles;
    const added = await accounts.add(
      { name: body.name, username: body.username, roles },
      await hashOfPassword(body.password),
    );
    return added === 'name-taken' ? nameTaken() : staffViewOf(added);
  });

  serveRoute(app, atHand, 'changeStaff', async ({ body, who }) => {
    const roles = body.roles === undefined ? undefined : rolesFrom(body.roles);
    if (roles instanceof Refused) return roles;
    const before = accounts.member(body.staff);
    if (before === undefined) return notHere('person');
    if (before.staff === who.member.staff && (body.active === false || roles?.includes('administrator') === false)) {
      return new Refused(422, 'not-yourself', 'Another administrator has to do this: you would lock yourself out.');
    }
    const changed = await accounts.change(body.staff, {
      ...(roles === undefined ? {} : { roles }),
      ...(body.active === undefined ? {} : { active: body.active }),
      ...(body.password === undefined ? {} : { password: body.password }),
    });
    if (changed === undefined) return notHere('person');
    if (!changed.active || body.password !== undefined) atHand.events.endOf(body.staff);
    return staffViewOf(changed);
  });
}
