/**
 * Who works here and how they prove it. Passwords, sessions and their cookies are the sign-in library's; what we add is a
 * person's roles and whether they still work here. Nobody signs up by themselves: an administrator adds them.
 */
import { type Instant, type Role, type StaffId, roles as everyRole } from '@twelvemonth/clinical';
import type { Store } from '@twelvemonth/store';
import { type BetterAuthOptions, betterAuth } from 'better-auth';
import { getMigrations } from 'better-auth/db/migration';
import { username as usernamePlugin } from 'better-auth/plugins/username';
import { randomBytes, randomUUID } from 'node:crypto';
import { z } from 'zod';
import { lookTable } from './looks.ts';
import { sharedTables } from './shared-tables.ts';
import { hashOfPassword, passwordMatches } from './passwords.ts';

export type Member = {
  readonly staff: StaffId;
  readonly name: string;
  readonly username: string;
  readonly roles: readonly Role[];
  readonly active: boolean;
  /** The unit whose day they see first. */
  readonly unit: string | undefined;
  /** Here for one day only: the account ends by itself. */
  readonly forToday: ForToday | undefined;
};

const forToday = z.object({
  registration: z.string(),
  lastDay: z.string(),
  endsAt: z.string(),
  /** Who made the account, and the other registered person who saw who it is for. */
  addedBy: z.string(),
  witness: z.string(),
  /** An administrator closed it: only an administrator opens it again. */
  closed: z.literal(true).optional(),
});
export type ForToday = Readonly<z.infer<typeof forToday>>;

/** A signed-in person and the session they are signed in with. */
export type SignedIn = { readonly member: Member; readonly session: string };

export type NewMember = {
  readonly name: string;
  readonly username: string;
  readonly roles: readonly Role[];
  readonly staff?: StaffId;
  readonly unit?: string | undefined;
  readonly forToday?: ForToday;
};

/** The length of a working day's session: nobody stays signed in over night. */
const sessionSeconds = 12 * 60 * 60;

const userRow = z.object({
  id: z.string(),
  name: z.string(),
  username: z.string(),
  roles: z.string(),
  active: z.union([z.boolean(), z.number()]),
  unit: z.string().nullish(),
  forToday: z.string().nullish(),
});

const memberOf = (row: unknown): Member => {
  const user = userRow.parse(row);
  return {
    staff: user.id,
    name: user.name,
    username: user.username,
    roles: z.array(z.enum(everyRole)).parse(JSON.parse(user.roles)),
    active: Boolean(user.active),
    unit: user.unit ?? undefined,
    forToday:
      user.forToday === null || user.forToday === undefined ? undefined : forToday.parse(JSON.parse(user.forToday)),
  };
};

function optionsFor(store: Store, secret: string, { https }: { https: boolean }) {
  const { db, type } = store.kyselyHandle();
  return {
    appName: 'Twelvemonth',
    baseURL: https ? 'https://localhost' : 'http://localhost',
    secret,
    database: { db, type, transaction: true },
    telemetry: { enabled: false },
    logger: { level: 'error' },
    // Tries are counted by name and address before the library is asked; our own hook refuses other origins.
    rateLimit: { enabled: false },
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: 12,
      maxPasswordLength: 256,
      password: { hash: hashOfPassword, verify: async ({ hash, password }) => passwordMatches(password, hash) },
    },
    // Names of their own: the store has a table `session` for the unit's sessions.
    session: { modelName: 'sign_in_session', expiresIn: sessionSeconds, disableSessionRefresh: true },
    account: { modelName: 'sign_in_account' },
    verification: { modelName: 'sign_in_verification' },
    user: {
      modelName: 'sign_in_person',
      additionalFields: {
        roles: { type: 'string', required: true, input: false },
        active: { type: 'boolean', required: true, defaultValue: true, input: false },
        unit: { type: 'string', required: false, input: false },
        forToday: { type: 'string', required: false, input: false },
      },
    },
    advanced: {
      useSecureCookies: false,
      disableCSRFCheck: true,
      disableOriginCheck: true,
      cookies: {
        session_token: {
          name: https ? '__Host-twelvemonth' : 'twelvemonth',
          attributes: { httpOnly: true, sameSite: 'lax', secure: https, path: '/' },
        },
      },
    },
    plugins: [
      usernamePlugin({
        minUsernameLength: 3,
        maxUsernameLength: 40,
        displayUsername: false,
        usernameValidator: (name) => /^[a-z0-9.-]+$/.test(name),
      }),
      lookTable,
      sharedTables,
    ],
  } satisfies BetterAuthOptions;
}

/** Opened again by an administrator it is an account like any other. */
function forTodayAfter(before: ForToday | undefined, active: boolean | undefined): ForToday | undefined {
  if (active === undefined || before === undefined) return before;
  return active ? undefined : { ...before, closed: true };
}

async function secretOf(store: Store): Promise<string> {
  const kept = await store.setting('sign-in-secret');
  if (kept !== undefined) return kept;
  const made = randomBytes(32).toString('base64url');
  await store.setSetting('sign-in-secret', made);
  return made;
}

export type SignInTables = Accounts['tables'];
export type Accounts = Awaited<ReturnType<typeof openAccounts>>;

export async function openAccounts(store: Store, { https, now }: { https: boolean; now: () => Instant }) {
  const secret = await secretOf(store);
  const options = optionsFor(store, secret, { https });
  const { runMigrations } = await getMigrations(options);
  await runMigrations();
  const auth = betterAuth(options);
  const library = await auth.$context;
  const members = new Map<StaffId, Member>();
  for (const row of await library.adapter.findMany({ model: 'user', limit: 100_000 })) {
    const member = memberOf(row);
    members.set(member.staff, member);
  }

  /** An account for a day is closed once that day is over. */
  const asOfNow = (member: Member): Member =>
    member.forToday !== undefined && now() >= member.forToday.endsAt ? { ...member, active: false } : member;
  const everyone = (): readonly Member[] => [...members.values()].map(asOfNow);
  const named = (username: string): Member | undefined =>
    everyone().find((member) => member.username === username.toLowerCase());

  /** Adds a person; `hash` is a password already hashed. */
  async function add(
    { name, username, roles, unit, forToday: day, staff = randomUUID() }: NewMember,
    hash: string,
  ): Promise<Member | 'name-taken'> {
    if (named(username) !== undefined) return 'name-taken';
    // The library wants an address; ours lead nowhere (RFC 2606).
    const email = `${username}@staff.invalid`;
    const row = await library.internalAdapter.createUser(
      {
        id: staff,
        name,
        username,
        email,
        emailVerified: true,
        roles: JSON.stringify(roles),
        active: true,
        unit: unit ?? null,
        forToday: day === undefined ? null : JSON.stringify(day),
      },
      { method: 'admin' },
    );
    await library.internalAdapter.createAccount({
      userId: staff,
      providerId: 'credential',
      accountId: staff,
      password: hash,
    });
    const member = memberOf(row);
    members.set(staff, member);
    return member;
  }

  /** The person, if name and password are right and they still work here. Makes no session. */
  async function verify(username: string, password: string): Promise<Member | undefined> {
    const member = named(username);
    const account =
      member === undefined ? undefined : await library.internalAdapter.findCredentialAccount(member.staff);
    // An unknown name costs as much as a wrong password, so that names cannot be found out by the time an answer takes.
    const right = await passwordMatches(password, account?.password ?? nobody);
    return right && member?.active === true ? member : undefined;
  }
  const nobody = await hashOfPassword(randomUUID());

  return {
    verify,
    add,
    /** The session cookie to set, if name and password are right. */
    signIn: async (
      username: string,
      password: string,
      headers: Headers,
    ): Promise<{ member: Member; cookies: string[] } | undefined> => {
      const member = await verify(username, password);
      if (member === undefined) return undefined;
      const { headers: answered } = await auth.api.signInUsername({
        body: { username: member.username, password },
        headers,
        returnHeaders: true,
      });
      return { member, cookies: answered.getSetCookie() };
    },
    /** Ends the session and gives the cookies that make the browser forget it. */
    signOut: async (headers: Headers): Promise<string[]> => {
      const { headers: answered } = await auth.api.signOut({ headers, returnHeaders: true });
      return answered.getSetCookie();
    },
    session: async (headers: Headers): Promise<SignedIn | undefined> => {
      const found = await auth.api.getSession({ headers });
      if (found === null) return undefined;
      // As the database has it now: another server of the same service may have changed roles or let someone go.
      const read = memberOf(found.user);
      members.set(read.staff, read);
      const member = asOfNow(read);
      return member.active ? { member, session: found.session.id } : undefined;
    },
    change: async (
      staff: StaffId,
      change: { roles?: readonly Role[]; active?: boolean; password?: string; forToday?: ForToday },
    ): Promise<Member | undefined> => {
      const before = members.get(staff);
      if (before === undefined) return undefined;
      const after: Member = {
        ...before,
        roles: change.roles ?? before.roles,
        active: change.active ?? before.active,
        forToday: change.forToday ?? forTodayAfter(before.forToday, change.active),
      };
      await library.internalAdapter.updateUser(staff, {
        roles: JSON.stringify(after.roles),
        active: after.active,
        forToday: after.forToday === undefined ? null : JSON.stringify(after.forToday),
      });
      members.set(staff, after);
      if (change.password !== undefined)
        await library.internalAdapter.updatePassword(staff, await hashOfPassword(change.password));
      if (!after.active || change.password !== undefined) await library.internalAdapter.deleteUserSessions(staff);
      return after;
    },
    named,
    everyone,
    member: (staff: StaffId): Member | undefined => {
      const member = members.get(staff);
      return member === undefined ? undefined : asOfNow(member);
    },
    /** How entries name their author; a person unknown here (another installation's) keeps their id. */
    nameOf: (staff: StaffId): string => members.get(staff)?.name ?? staff,
    /** The rows of our own tables, through the library's connection. */
    tables: library.adapter,
    /** Known to this service only. */
    secret,
    https,
    looks: {
      create: async (look: Record<string, unknown>) => library.adapter.create({ model: 'look', data: look }),
      of: async (patient: string) =>
        library.adapter.findMany({
          model: 'look',
          where: [{ field: 'patient', value: patient }],
          limit: 1000,
          sortBy: { field: 'at', direction: 'desc' },
        }),
    },
  };
}
