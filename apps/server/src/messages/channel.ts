/** A way to send a short message out of the house. An adapter for each; what it answers is all that is known. */
import type { MessageChannel } from '@twelvemonth/clinical';

export type Outgoing = {
  /** The entry's id: a channel that is asked twice with it sends once. */
  readonly id: string;
  readonly to: string;
  readonly title: string;
  readonly text: string;
  /** The place as a calendar file, for channels that can carry one. */
  readonly calendar?: string;
};

export type Answered =
  | { readonly outcome: 'accepted' }
  | { readonly outcome: 'not accepted'; readonly because: string }
  /** No answer came, or none that can be read: it may have gone out. */
  | { readonly outcome: 'not known'; readonly because: string };

export type Channel = (message: Outgoing) => Promise<Answered>;
/** Those that are set up. */
export type Channels = Partial<Readonly<Record<MessageChannel, Channel>>>;

export const sayTrouble = (error: unknown): string => (error instanceof Error ? error.message : String(error));
/** After so long without an answer nobody knows what became of a message. */
export const answerMilliseconds = 20_000;
