/**
 * Who said the birth date of a page may look at it for two hours, as long as a slow hand may need: a cookie that names the page, sealed with a key that this
 * process made and nobody else has. After a restart the date is asked again.
 */
import { createHmac, randomBytes, timingSafeEqual } from 'node:crypto';

const lastsMilliseconds = 120 * 60_000;
const name = 'own-page';

export type Passes = {
  /** The cookie to set. */
  readonly give: (page: string, isHttps: boolean) => string;
  readonly holds: (page: string, cookies: string | undefined) => boolean;
};

export function passes(now: () => number): Passes {
  const key = randomBytes(32);
  const seal = (text: string): string => createHmac('sha256', key).update(text).digest('base64url');
  return {
    give: (page, isHttps) => {
      const until = Math.round(now()) + lastsMilliseconds;
      const value = `${until}.${seal(`${page} ${until}`)}`;
      return `${name}=${value}; Path=/p/; Max-Age=${lastsMilliseconds / 1000}; HttpOnly; SameSite=Strict${isHttps ? '; Secure' : ''}`;
    },
    holds: (page, cookies) => {
      const [, until = '', sealed = ''] = new RegExp(`(?:^|;\\s*)${name}=(\\d+)\\.([\\w-]+)`).exec(cookies ?? '') ?? [];
      if (until === '' || Number(until) < now()) return false;
      const [expected, said] = [Buffer.from(seal(`${page} ${until}`)), Buffer.from(sealed)];
      return expected.length === said.length && timingSafeEqual(expected, said);
    },
  };
}
