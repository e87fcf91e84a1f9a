/**
 * The digest of all tails: a short text that vouches for everything written so far, to be kept elsewhere (another machine,
 * the day sheet). It covers each ledger's last seq and hash, taken from the acts, which stay when a ledger expires.
 */
import type { Subject } from '@twelvemonth/clinical';
import { noCommitYet, parseWrote, type CommitTail } from './commit-chain.ts';
import { lengthPrefixed } from './canonical-text.ts';
import { sha256 } from './digest.ts';
import type { VerificationSource } from './verification.ts';

const mark = 'twelvemonth tails 1';
const commitsAtOnce = 500;

type TailsSource = Pick<VerificationSource, 'commitsAfter' | 'actsOf'>;

export async function tailsDigest(source: TailsSource): Promise<string> {
  const { tail, digest } = await tailsUntil(source, Number.MAX_SAFE_INTEGER);
  return `${mark}\ncommit ${tail.commit}\nhash ${tail.hash}\nledgers ${digest}\n`;
}

/** What of an earlier digest no longer holds. */
export async function againstDigest(
  source: TailsSource,
  text: string,
): Promise<{ readonly commit?: number; readonly says: string } | undefined> {
  const match = /^twelvemonth tails 1\ncommit (\d{1,15})\nhash ([0-9a-f]{64})\nledgers ([0-9a-f]{64})\n*$/.exec(
    text.replaceAll('\r\n', '\n'),
  );
  if (match === null) return { says: 'The text to compare with is not a digest of this program.' };
  const commit = Number(match[1]);
  const { tail, digest } = await tailsUntil(source, commit);
  if (tail.commit < commit) {
    const missing = commit - tail.commit;
    return {
      commit: tail.commit + 1,
      says: `${missing === 1 ? '1 commit is' : `${missing} commits are`} missing: the digest was taken at commit ${commit}, the notes end at ${tail.commit}.`,
    };
  }
  if (tail.hash !== match[2] || digest !== match[3])
    return { commit, says: `The notes up to commit ${commit} are not those of which the digest was taken.` };
  return undefined;
}

async function tailsUntil(
  source: TailsSource,
  until: number,
): Promise<{ readonly tail: CommitTail; readonly digest: string }> {
  const tails = new Map<Subject, readonly [seq: number, hash: string]>();
  let tail = noCommitYet;
  while (tail.commit < until) {
    const commits = await source.commitsAfter(tail.commit, Math.min(commitsAtOnce, until - tail.commit));
    const last = commits.at(-1);
    if (last === undefined) break;
    for (const act of await source.actsOf(tail.commit + 1, last.commit)) {
      for (const { subject, seq, hash } of parseWrote(act.wroteText)) tails.set(subject, [seq, hash]);
    }
    tail = last;
  }
  const parts = [...tails]
    .toSorted(([left], [right]) => (left < right ? -1 : 1))
    .flatMap(([subject, [seq, hash]]) => [subject, String(seq), hash]);
  return { tail, digest: sha256(lengthPrefixed(parts)) };
}
