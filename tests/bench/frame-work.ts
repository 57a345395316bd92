/** One event of a browser's trace: times in microseconds, `tdur` those that the thread itself was at work. */
interface Traced {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
}

/** What is to be traced for `frameWork`. */
export const FRAME_TRACE = ['toplevel', 'cc'];

/**
 * What each frame takes of the page's own thread, ms: all that it does from one frame to the next, input, scripts, layout
 * and handing over. Time in which other processes have the processor is not counted.
 *
 * @param trace as Chromium writes it
 */
export function frameWork(trace: string): number[] {
  const { traceEvents } = JSON.parse(trace) as { traceEvents: readonly Traced[] };
  const whole = traceEvents.filter(({ ph, tdur }) => ph === 'X' && tdur !== undefined);
  const frames = whole.filter(({ name }) => name === 'ProxyMain::BeginMainFrame');
  const thread = ({ pid, tid }: Traced) => `${pid} ${tid}`;
  const counts = new Map<string, number>();
  for (const one of frames) counts.set(thread(one), (counts.get(thread(one)) ?? 0) + 1);
  const [page] = [...counts].sort(([, a], [, b]) => b - a)[0] ?? [];
  if (!page) throw new Error('the trace holds no frames');
  const ofPage = (one: Traced) => thread(one) === page;
  const ends = frames.filter(ofPage).map(({ ts, dur = 0 }) => ts + dur);
  ends.sort((a, b) => a - b);
  const work = ends.map(() => 0);
  let frame = 0;
  const tasks = whole.filter((one) => one.name === 'ThreadControllerImpl::RunTask' && ofPage(one));
  for (const { ts, tdur = 0 } of tasks.sort((a, b) => a.ts - b.ts)) {
    while (frame < ends.length && ends[frame] <= ts) frame++;
    if (frame < ends.length) work[frame] += tdur / 1000;
  }
  return work;
}
