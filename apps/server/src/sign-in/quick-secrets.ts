/**
 * A PIN or a badge: quick proofs that count only on an enrolled screen, in an open session, for a step of a visit. A PIN is
 * hashed like a password; a badge, long and random, by HMAC so that it can be found. Five wrong PINs in a row and it is of
 * no use until its owner sets it anew with the password: the count is kept with the PIN, a restart does not forget it.
 */
import type { StaffId } from '@twelvemonth/clinical';
import { createHmac } from 'node:crypto';
import { z } from 'zod';
import type { SignInTables } from './accounts.ts';
import { hashOfPassword, passwordMatches } from './passwords.ts';

const row = z.object({ id: z.string(), staff: z.string(), sort: z.string(), hash: z.string(), wrong: z.number() });
type Sort = 'pin' | 'badge';

const triesOfPin = 5;

export type QuickSecrets = ReturnType<typeof openQuickSecrets>;

export function openQuickSecrets(tables: SignInTables, secret: string) {
  /** One try at a time for one person, so that many at once are still counted. */
  const queues = new Map<StaffId, Promise<unknown>>();

  const found = async (where: Record<'sort', Sort> & Partial<Record<'staff' | 'hash', string>>) => {
    const kept = await tables.findOne({
      model: 'quickSecret',
      where: Object.entries(where).map(([field, value]) => ({ field, value })),
    });
    return kept === null ? undefined : row.parse(kept);
  };
  const change = async (id: string, update: Record<string, unknown>): Promise<void> => {
    await tables.update({ model: 'quickSecret', where: [{ field: 'id', value: id }], update });
  };
  async function keep(staff: StaffId, sort: Sort, hash: string): Promise<void> {
    const before = await found({ staff, sort });
    if (before === undefined) await tables.create({ model: 'quickSecret', data: { staff, sort, hash, wrong: 0 } });
    else await change(before.id, { hash, wrong: 0 });
  }
  const hashOfBadge = (badge: string): string =>
    createHmac('sha256', secret).update(badge.trim().normalize('NFKC')).digest('hex');
  const ownerOfBadge = async (badge: string): Promise<StaffId | undefined> =>
    (await found({ sort: 'badge', hash: hashOfBadge(badge) }))?.staff;

  async function tryPin(staff: StaffId, pin: string): Promise<'right' | 'wrong' | 'locked'> {
    const kept = await found({ staff, sort: 'pin' });
    if (kept === undefined) {
      // As slow as a wrong one: who has a PIN cannot be found out by the time an answer takes.
      await hashOfPassword(pin);
      return 'wrong';
    }
    if (kept.wrong >= triesOfPin) return 'locked';
    // Counted before it is looked at, and only from the count that was read: another process on the same store counts too.
    const counted = await tables.updateMany({
      model: 'quickSecret',
      where: [
        { field: 'id', value: kept.id },
        { field: 'wrong', value: kept.wrong },
      ],
      update: { wrong: kept.wrong + 1 },
    });
    if (counted === 0) return tryPin(staff, pin);
    if (!(await passwordMatches(pin, kept.hash))) return 'wrong';
    await change(kept.id, { wrong: 0 });
    return 'right';
  }

  return {
    setPin: async (staff: StaffId, pin: string): Promise<void> => keep(staff, 'pin', await hashOfPassword(pin)),
    setBadge: async (staff: StaffId, badge: string): Promise<'kept' | 'taken'> => {
      const owner = await ownerOfBadge(badge);
      if (owner !== undefined && owner !== staff) return 'taken';
      await keep(staff, 'badge', hashOfBadge(badge));
      return 'kept';
    },
    /** Which of the two somebody has. */
    has: async (staff: StaffId) => ({
      pin: (await found({ staff, sort: 'pin' })) !== undefined,
      badge: (await found({ staff, sort: 'badge' })) !== undefined,
    }),
    tryPin: async (staff: StaffId, pin: string): Promise<'right' | 'wrong' | 'locked'> => {
      const turn = (queues.get(staff) ?? Promise.resolve()).then(async () => tryPin(staff, pin));
      queues.set(
        staff,
        turn.catch(() => undefined),
      );
      return turn;
    },
    ownerOfBadge,
  };
}
