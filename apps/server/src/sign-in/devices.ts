/** Shared screens that an administrator has enrolled: each holds a cookie nobody else has, of which only the hash is kept. */
import type { StaffId } from '@twelvemonth/clinical';
import { createHash, randomBytes } from 'node:crypto';
import { z } from 'zod';
import type { SignInTables } from './accounts.ts';

const row = z.object({
  id: z.string(),
  name: z.string(),
  unit: z.string(),
  enrolledBy: z.string(),
  enrolledAt: z.string(),
  active: z.union([z.boolean(), z.number()]).transform(Boolean),
});
export type Device = z.infer<typeof row>;

export type Devices = ReturnType<typeof openDevices>;

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');
const aYearSeconds = 365 * 24 * 60 * 60;

export function openDevices(tables: SignInTables, now: () => string, { https }: { https: boolean }) {
  const cookieName = https ? '__Host-twelvemonth-device' : 'twelvemonth-device';
  return {
    /** The cookie that makes the browser which asked a shared screen of the unit. */
    enrol: async (name: string, unit: string, enrolledBy: StaffId): Promise<string> => {
      const token = randomBytes(32).toString('base64url');
      await tables.create({
        model: 'sharedDevice',
        data: { name, unit, tokenHash: hashOf(token), enrolledBy, enrolledAt: now(), active: true },
      });
      const secure = https ? '; Secure' : '';
      return `${cookieName}=${token}; Path=/; Max-Age=${aYearSeconds}; HttpOnly; SameSite=Lax${secure}`;
    },
    withdraw: async (device: string): Promise<void> => {
      await tables.update({
        model: 'sharedDevice',
        where: [{ field: 'id', value: device }],
        update: { active: false },
      });
    },
    /** The enrolled screen a request comes from. */
    of: async (headers: Headers): Promise<Device | undefined> => {
      const token = (headers.get('cookie') ?? '')
        .split('; ')
        .find((part) => part.startsWith(`${cookieName}=`))
        ?.slice(cookieName.length + 1);
      if (token === undefined || token === '') return undefined;
      const found = await tables.findOne({
        model: 'sharedDevice',
        where: [{ field: 'tokenHash', value: hashOf(token) }],
      });
      const device = found === null ? undefined : row.parse(found);
      return device?.active === true ? device : undefined;
    },
    /** Whether a unit shares its screens: one at least is enrolled for it. */
    sharesScreens: async (unit: string): Promise<boolean> =>
      z
        .array(row)
        .parse(await tables.findMany({ model: 'sharedDevice', where: [{ field: 'unit', value: unit }], limit: 1000 }))
        .some(({ active }) => active),
    all: async (): Promise<Device[]> =>
      z.array(row).parse(await tables.findMany({ model: 'sharedDevice', limit: 1000 })),
  };
}
