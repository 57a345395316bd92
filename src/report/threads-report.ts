import { lineList } from '../block/line-list.js';
import { SEEN } from '../color/contrast.js';
import type { Finding } from '../finding.js';
import type { ThreadChoice } from '../formats/dressing.js';
import type { StashChoice, ThreadPlan } from '../stash-threads.js';
import { lookHere, type Paint } from './look-here.js';
import { counted, rounded, table } from './table.js';

/** Threads of a stash for a dressing, as the data that programs get. */
export interface ThreadsReport {
  readonly assignment: readonly {
    /** null for an ornament */
    readonly seam: number | 'outline' | null;
    readonly titles: readonly string[];
    readonly thread: ThreadChoice;
    readonly before: ThreadChoice;
    readonly shows: ThreadPlan['shows'];
    readonly contrast: number | null;
    readonly why: string;
  }[];
  readonly threads: number;
  readonly changes: number;
  /** whether no other assignment can be better, by the program's own measure; else it is a good one */
  readonly best: boolean;
  readonly outputs: readonly string[];
  /** worst first */
  readonly findings: readonly Finding[];
}

export function threadsReport(
  { plans, threads, changes, isBest }: StashChoice,
  said: readonly Finding[],
  outputs: readonly string[],
): ThreadsReport {
  return {
    assignment: plans.map((plan) => ({
      seam: plan.sewn[0].line,
      titles: plan.sewn.map(({ title }) => title),
      thread: plan.thread,
      before: plan.sewn[0].thread,
      shows: plan.shows,
      contrast: plan.contrast === null ? null : rounded(plan.contrast, 2),
      why: reasonOf(plan),
    })),
    threads,
    changes,
    best: isBest,
    outputs,
    findings: [...nothingShows(plans), ...said],
  };
}

/** Why a treatment has its thread: how it shows, and what it had to give way to. */
function reasonOf({
  shows,
  contrast,
  isBestShown,
  apart,
  meetsItself,
  isOnPrint,
  thread,
  sewn,
}: ThreadPlan): string {
  const ratio = contrast === null ? '' : ` (${(Math.floor(10 * contrast) / 10).toFixed(1)})`;
  const shown = {
    clear: `clear on its fabrics${ratio}`,
    visible: `visible on its fabrics${ratio}`,
    lost: `hardly shows on some of its fabrics${ratio}`,
    unknown: 'its fabrics are not known',
  }[shows];
  const gaveWay =
    shows === 'clear' || shows === 'unknown'
      ? []
      : [
          isBestShown
            ? 'nothing in the stash shows better'
            : 'those that show better suit its neighbors, its weight or the changes less',
        ];
  const neighbors = [
    ...(apart === null ? [] : [`unlike what it meets (by ${Math.round(apart)} or more)`]),
    ...(meetsItself ? ['meets its like'] : []),
  ];
  const heavier =
    isOnPrint && thread.weight !== sewn[0].thread.weight ? [`${thread.weight} for the busy print`] : [];
  return [shown, ...gaveWay, ...heavier, ...neighbors].join('; ');
}

/** Where the whole stash fails, which is worth knowing before buying thread. */
function nothingShows(plans: readonly ThreadPlan[]): Finding[] {
  const lost = plans.filter(({ shows, isBestShown }) => shows === 'lost' && isBestShown);
  if (lost.length === 0) return [];
  const lines = lost.flatMap(({ sewn }) => (sewn[0].line === null ? [] : [sewn[0].line]));
  const ornaments = lost.length - lines.length;
  const where = [
    ...(lines.length ? [lineList(lines)] : []),
    ...(ornaments ? [ornaments === 1 ? 'an ornament' : `${ornaments} ornaments`] : []),
  ].join(' and ');
  return [
    {
      level: 'warning',
      code: 'stash-lacks',
      message: `no thread of the stash is to be seen (contrast ${SEEN}) on all fabrics of ${where}; one much lighter or much darker than they are would help`,
    },
  ];
}

/** The same for a person to read. */
export function threadsText(name: string, report: ThreadsReport, paint?: Paint): string {
  const { assignment, threads, changes, best, outputs } = report;
  return [
    `${name}: ${counted(threads, 'thread')} of the stash, ${counted(changes, 'change')} of thread at the machine${best ? '' : '; a good choice, perhaps not the very best'}`,
    '',
    table(
      [
        { heading: 'Seam' },
        { heading: 'What' },
        { heading: 'Thread' },
        { heading: 'Code' },
        { heading: 'Why' },
      ],
      assignment.map(({ seam, titles, thread, why }) => [
        seam === null ? '' : String(seam),
        titles.join(', '),
        `${thread.name} ${thread.weight}`,
        thread.code ?? '',
        why,
      ]),
    ),
    '',
    lookHere(report.findings, paint),
    ...(outputs.length ? ['', `Made ${outputs.join(', ')}`] : []),
  ].join('\n');
}
