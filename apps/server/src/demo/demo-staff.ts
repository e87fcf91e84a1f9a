/** The invented people one can sign in as. They share one password, shown to everyone who opens the demo. */
import type { Role } from '@twelvemonth/clinical';
import type { Accounts } from '../sign-in/accounts.ts';
import { hashOfPassword } from '../sign-in/passwords.ts';

export const demoPassword = 'paper and ink 2026';

export type DemoPerson = {
  readonly staff: string;
  readonly name: string;
  readonly username: string;
  readonly roles: readonly Role[];
  readonly unit?: string;
};
export type DemoSignIn = { readonly password: string; readonly people: readonly string[] };

/** Adds whoever is not there yet; hashes once. */
export async function seedDemoStaff(accounts: Accounts, people: readonly DemoPerson[]): Promise<DemoSignIn> {
  const missing = people.filter(({ staff }) => accounts.member(staff) === undefined);
  if (missing.length > 0) {
    const hash = await hashOfPassword(demoPassword);
    for (const person of missing) await accounts.add(person, hash);
  }
  return { password: demoPassword, people: people.map(({ username }) => username) };
}
