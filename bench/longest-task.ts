/**
 * The longest the page's main thread was busy at one go, told by the browser's own trace. By the clock it is what a person waits;
 * in processor time it leaves out what other work on the machine took meanwhile. Both include the slowing down of the processor.
 */
import type { CDPSession } from 'playwright-core';

export type LongestTask = { readonly byTheClockMilliseconds: number; readonly processorMilliseconds: number };

/** One entry of the trace event format; microseconds. */
type Traced = {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  readonly dur?: number;
  /** Processor time of the thread. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
};

const taskNames = new Set(['RunTask', 'ThreadControllerImpl::RunTask']);

export async function longestTaskWhile(session: CDPSession, happens: () => Promise<void>): Promise<LongestTask> {
  const events: Traced[] = [];
  const take = ({ value }: { readonly value: readonly object[] }): void => {
    events.push(...(value as readonly Traced[]));
  };
  session.on('Tracing.dataCollected', take);
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['toplevel', 'devtools.timeline'] },
  });
  await happens();
  const complete = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.end');
  await complete;
  session.off('Tracing.dataCollected', take);
  const thread = ({ pid, tid }: Traced): string => `${pid} ${tid}`;
  const main = new Set(
    events.filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain').map(thread),
  );
  const tasks = events.filter((event) => taskNames.has(event.name) && main.has(thread(event)));
  if (tasks.length === 0) throw new Error('the trace holds no task of the page');
  const longest = (of: 'dur' | 'tdur'): number => Math.max(...tasks.map((task) => task[of] ?? 0)) / 1_000;
  return { byTheClockMilliseconds: longest('dur'), processorMilliseconds: longest('tdur') };
}
