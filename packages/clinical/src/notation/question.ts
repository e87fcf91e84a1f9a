/** Questions a case asks of its ledger, and what it expects to hear: `readiness on 10 Mar 2026 -> ready`. */
import type { PlainDate } from '../calendar/day.ts';
import { atEnd, scannerOf, take, takeDate, takeWords, type LineScanner } from './line-scanner.ts';
import { takeMoment } from './moment-text.ts';

export type Question = {
  /** Counted from 1. */
  readonly line: number;
  readonly asks: 'readiness' | 'record';
  /** "zoledronic acid", where it is said. */
  readonly of?: string;
  /** The date asked about. */
  readonly on: PlainDate;
  /** The day it is asked on, where that is another. */
  readonly today?: PlainDate;
  /** Only what was known by then. */
  readonly knownBy?: string;
  /** What should come out, in words. */
  readonly expected?: string;
};

export const looksLikeQuestion = (text: string): boolean => /^\s*(?:readiness|as of)\b/.test(text);

/** Reads `readiness [for ...] on D [asked on T] [as of M] [-> expected]` or `as of D [-> expected]`. */
export function takeQuestion(
  text: string,
  line: number,
  zone: string,
): { question: Question } | { scanner: LineScanner } {
  const arrow = text.indexOf('->');
  const expected = arrow === -1 ? undefined : text.slice(arrow + 2).trim();
  const scanner = scannerOf(arrow === -1 ? text : text.slice(0, arrow));
  const asks = takeWords(scanner, 'readiness') ? 'readiness' : 'record';
  let of: string | undefined;
  if (asks === 'readiness') {
    if (takeWords(scanner, 'for')) of = take(scanner, /(?!on\b)\S+(?: +(?!on\b)\S+)*/y, 'what for')?.trim();
    if (!takeWords(scanner, 'on')) return { scanner };
  } else if (!takeWords(scanner, 'as of')) return { scanner };
  const on = takeDate(scanner)?.value;
  if (on === undefined) return { scanner };
  const today = takeWords(scanner, 'asked on') ? takeDate(scanner)?.value : undefined;
  const knownBy = asks === 'readiness' && takeWords(scanner, 'as of') ? takeMoment(scanner, zone) : undefined;
  if (!atEnd(scanner)) return { scanner };
  return {
    question: {
      line,
      asks,
      on,
      ...(of === undefined ? {} : { of }),
      ...(today === undefined ? {} : { today }),
      ...(knownBy === undefined ? {} : { knownBy }),
      ...(expected === undefined ? {} : { expected }),
    },
  };
}
