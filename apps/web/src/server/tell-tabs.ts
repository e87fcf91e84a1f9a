/** Told to every other tab of this browser that listens on the channel: a channel never leaves its own origin. */
export const tellTabs = (channel: BroadcastChannel, message: unknown): void =>
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- the rule takes a channel for a window; its method has no such argument
  channel.postMessage(message);
