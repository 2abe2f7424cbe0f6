/** The commands on plan files as pure functions: a plan and what was asked in, an answer or one line out. */

import { checkPlan } from "#lib/analysis/check-plan.ts";
import { balance } from "#lib/balance/balance.ts";
import { classClock } from "#lib/clock/clock.ts";
import { cueTrack } from "#lib/cues/cue-track.ts";
import { fitToLength, fittedPlan } from "#lib/fit/fit.ts";
import { loadRows } from "#lib/load/load.ts";
import { bestOrder } from "#lib/order/order.ts";
import type { Heading, Plan } from "#lib/plan/schema.ts";
import { trackVtt } from "#lib/tracks/tracks.ts";

export type Answer =
  | { readonly ok: true; readonly json: unknown /** 1: the answer is that something is wrong. */; readonly exit: 0 | 1 }
  /** A file of another kind, as it is to be written. */
  | { readonly ok: true; readonly text: string; readonly exit: 0 }
  /** The call is not one that can be answered: one line for whoever made it. */
  | { readonly ok: false; readonly say: string };

interface Command {
  /** What it wants besides the file, as the usage line names it. */
  readonly wants?: string;
  /** The words beginning with "--" that it knows. */
  readonly options?: readonly string[];
  readonly answer: (plan: Plan, asked: string | undefined, options: ReadonlySet<string>) => Answer;
}

const done = (json: unknown, exit: 0 | 1 = 0): Answer => ({ ok: true, json, exit });

const COMMANDS: Readonly<Record<string, Command>> = {
  check: {
    answer: (plan) => {
      const { total, length, findings } = checkPlan(plan);
      const answer = findings.map(({ rule, level, items, message, values }) => ({
        rule,
        level,
        items,
        message,
        values,
      }));
      return done({ total, length, findings: answer }, findings.some((f) => f.level === "must") ? 1 : 0);
    },
  },
  clock: {
    answer: (plan) => {
      const { rows, total } = classClock(plan);
      return done({ total, rows });
    },
  },
  fit: {
    answer: (plan) => {
      const fit = fitToLength(plan);
      if (!fit.possible) return done({ fit }, 1);
      const { total, cost, changed } = fit;
      return done({ ...fittedPlan(plan, fit), fit: { total, cost, changed } });
    },
  },
  order: { wants: "HEADING-ID", answer: order },
  cues: {
    options: ["--vtt"],
    answer: (plan, _, options) => {
      const track = cueTrack(plan);
      if (options.has("--vtt")) return { ok: true, text: trackVtt(plan.title, track.cues), exit: 0 };
      const { cues, dropped, talkSeconds, talkShare } = track;
      return done({ cues, dropped, talkSeconds, talkShare });
    },
  },
  load: { answer: (plan) => done({ rows: loadRows(plan) }) },
  balance: {
    answer: (plan) => {
      const { groups, push, pull, longest, setups } = balance(plan);
      return done({ groups, push, pull, longest, setups });
    },
  },
};

export const COMMAND_NAMES: readonly string[] = Object.keys(COMMANDS);

export const isCommand = (name: string): boolean => Object.hasOwn(COMMANDS, name);

/** The word a command wants besides the file, or undefined when it wants none. */
export const wantedBeside = (name: string): string | undefined => (isCommand(name) ? COMMANDS[name]?.wants : undefined);

/** The options a command knows. */
export const optionsOf = (name: string): readonly string[] =>
  (isCommand(name) ? COMMANDS[name]?.options : undefined) ?? [];

/** Answers a command on a valid plan. `asked` is the word it wants, where one was given. Never throws. */
export function answer(name: string, plan: Plan, asked?: string, options: readonly string[] = []): Answer {
  const command = isCommand(name) ? COMMANDS[name] : undefined;
  if (command) return command.answer(plan, asked, new Set(options));
  return { ok: false, say: `There is no command "${name}"; there are: ${COMMAND_NAMES.join(", ")}` };
}

function order(plan: Plan, headingId: string | undefined): Answer {
  const headings = plan.items.filter((item): item is Heading => item.kind === "heading");
  const blocks = headings.length > 0 ? `there are: ${someOf(headings.map((h) => h.id))}` : "this plan has no headings";
  if (headingId === undefined) return { ok: false, say: `Name the block by its heading's id; ${blocks}` };
  if (!headings.some((h) => h.id === headingId))
    return { ok: false, say: `There is no block "${headingId}"; ${blocks}` };
  const found = bestOrder(plan, headingId);
  if (!found.ok) return done({ possible: false, say: found.say }, 1);
  const { before, after, proven, items } = found;
  return done({ before, after, proven, items });
}

const MOST_NAMED = 30;
function someOf(ids: readonly string[]): string {
  const more = ids.length - MOST_NAMED;
  return `${ids.slice(0, MOST_NAMED).join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
}
