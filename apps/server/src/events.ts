/**
 * Live updates: one stream a browser. A notice names ledgers and their last seq and nothing else; whoever shows one of them
 * asks again. A stream ends with the session it was opened in.
 */
import type { CommitNotice } from '@twelvemonth/store';

type Stream = {
  readonly session: string;
  readonly staff: string;
  readonly send: (event: string, data: unknown) => void;
  readonly end: () => void;
};

/** A workstation keeps a handful of pages open; more than this of one session is a fault of the page. */
const streamsOfOneSession = 20;

export type Events = ReturnType<typeof eventStreams>;

export function eventStreams() {
  const open = new Set<Stream>();
  const endWhere = (holds: (stream: Stream) => boolean): void => {
    for (const stream of open) {
      if (!holds(stream)) continue;
      open.delete(stream);
      stream.end();
    }
  };
  return {
    /** Returns a function that forgets the stream, or undefined if the session has too many. */
    add: (stream: Stream): (() => void) | undefined => {
      let already = 0;
      for (const other of open) if (other.session === stream.session) already += 1;
      if (already >= streamsOfOneSession) return undefined;
      open.add(stream);
      return () => void open.delete(stream);
    },
    tell: (notice: CommitNotice): void => {
      for (const stream of open) stream.send('commit', notice);
    },
    endSession: (session: string): void => endWhere((stream) => stream.session === session),
    endOf: (staff: string): void => endWhere((stream) => stream.staff === staff),
    endAll: (): void => endWhere(() => true),
  };
}
