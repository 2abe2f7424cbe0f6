/** The commands on plan files as pure functions: they take a plan and the arguments and return an answer or one line. */

import { planActs } from "#lib/acts/plan-acts.ts";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { balance } from "#lib/balance/balance.ts";
import { classClock } from "#lib/clock/clock.ts";
import { cueTrack } from "#lib/cues/cue-track.ts";
import { fitToLength, fittedPlan } from "#lib/fit/fit.ts";
import { loadRows } from "#lib/load/load.ts";
import { bestOrder } from "#lib/order/order.ts";
import type { Heading, Plan } from "#lib/plan/schema.ts";
import { trackVtt } from "#lib/tracks/tracks.ts";

export type CommandAnswer =
  | { readonly ok: true; readonly json: unknown /** 1: something is wrong with the plan. */; readonly exit: 0 | 1 }
  /** The text of a file of another format. */
  | { readonly ok: true; readonly text: string; readonly exit: 0 }
  /** The call cannot be answered: one line that says why. */
  | { readonly ok: false; readonly say: string };

interface Command {
  /** The argument it needs besides the file, as the usage line names it. */
  readonly wants?: string;
  /** The options it knows, each beginning with "--". */
  readonly options?: readonly string[];
  readonly answer: (plan: Plan, asked: string | undefined, options: ReadonlySet<string>) => CommandAnswer;
}

const done = (json: unknown, exit: 0 | 1 = 0): CommandAnswer => ({ ok: true, json, exit });

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
      const { talkSeconds, talkShare } = track;
      const cues = track.cues.map(({ item, kind, from, to, text }) => ({ item, kind, from, to, text }));
      const dropped = track.dropped.map(({ item, kind, text, shortBy }) => ({ item, kind, text, shortBy }));
      return done({ cues, dropped, talkSeconds, talkShare });
    },
  },
  load: { answer: (plan) => done({ rows: loadRows(plan) }) },
  acts: { answer: (plan) => done({ rows: planActs(plan) }) },
  balance: {
    answer: (plan) => {
      const { groups, push, pull, longest, setups } = balance(plan);
      return done({ groups, push, pull, longest, setups });
    },
  },
};

export const COMMAND_NAMES: readonly string[] = Object.keys(COMMANDS);

export const isCommand = (name: string): boolean => Object.hasOwn(COMMANDS, name);

/** The argument that a command needs besides the file; undefined when it needs none. */
export const wantedBeside = (name: string): string | undefined => (isCommand(name) ? COMMANDS[name]?.wants : undefined);

/** The options a command knows. */
export const optionsOf = (name: string): readonly string[] =>
  (isCommand(name) ? COMMANDS[name]?.options : undefined) ?? [];

/** Runs a command on a valid plan. `asked` is its further argument, if one was given. Never throws. */
export function runPlanCommand(
  name: string,
  plan: Plan,
  asked?: string,
  options: readonly string[] = [],
): CommandAnswer {
  const command = isCommand(name) ? COMMANDS[name] : undefined;
  if (command) return command.answer(plan, asked, new Set(options));
  return { ok: false, say: `There is no command "${name}". Use one of: ${COMMAND_NAMES.join(", ")}` };
}

function order(plan: Plan, headingId: string | undefined): CommandAnswer {
  const headings = plan.items.filter((item): item is Heading => item.kind === "heading");
  const blocks = headings.length > 0 ? `Use one of: ${someOf(headings.map((h) => h.id))}` : "This plan has no headings";
  if (headingId === undefined) return { ok: false, say: `Name the block by the id of its heading. ${blocks}` };
  if (!headings.some((h) => h.id === headingId))
    return { ok: false, say: `There is no block "${headingId}". ${blocks}` };
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
