/**
 * The checks of the running program: when a plan is checked, and what happens with the result. The thread that serves people
 * only says which plan; reading and checking happen on other threads, and no save or relay waits for them (INV-20).
 */
import { putCheck, readCheck } from "#db/repos/check-repo.ts";
import { lastSeq, readGeneration } from "#db/repos/doc-log-repo.ts";
import type { PlanRow } from "#db/repos/plan-repo.ts";
import { formatDocName } from "#lib/protocol/messages.ts";
import { Burst } from "#server/base/burst.ts";
import type { CheckAnswer, Checks } from "#server/context/checks.ts";
import type { Springline } from "#server/context/springline.ts";
import { Assessing } from "./assessing.ts";
import { FoundLast } from "./found-last.ts";
import { CheckQueue, type Urgency } from "./queue.ts";
import type { CheckRunner } from "./runner.ts";

export interface ChecksSetup {
  readonly app: Pick<Springline, "db" | "log" | "words">;
  readonly runner: CheckRunner;
  /** Identifies this program: stored results of another version are not used. */
  readonly programMark: string;
  readonly ms?: { readonly quiet: number; readonly longest: number };
  /** Called with every result, once it is stored. */
  readonly heard: (answer: CheckAnswer) => void;
}

/**
 * Every page works out its own findings with each key press. The server's findings are for lists, for pages that join and
 * as a second opinion, so they need not be as frequent.
 */
const WRITTEN_MS = { quiet: 2000, longest: 30_000 };

export function createChecks(setup: ChecksSetup): Checks {
  const { log } = setup.app;
  const bursts = new Map<string, Burst>();
  const resting: (() => void)[] = [];
  const failed = (plan: string, err: unknown) => log.warn({ plan, err }, "a plan could not be checked");
  const found = new FoundLast();
  const queue = new CheckQueue({ runner: setup.runner, answered: (answer) => hear(setup, found, answer), failed });
  const assessing = new Assessing(setup.runner, failed);
  const ask = async (planId: string, urgency: Urgency, withFindings = false): Promise<CheckAnswer | null> => {
    bursts.get(planId)?.cancel();
    bursts.delete(planId);
    const answer = await queue.add(planId, urgency, withFindings);
    if (bursts.size === 0 && queue.idle) for (const rest of resting.splice(0)) rest();
    return answer;
  };
  return {
    written(planId) {
      const burst = bursts.get(planId) ?? new Burst(() => void ask(planId, "written"), setup.ms ?? WRITTEN_MS);
      bursts.set(planId, burst);
      burst.note();
    },
    soon: (planId) => void ask(planId, "soon"),
    now: (planId) => ask(planId, "waited-for", true),
    assess: (planId, reading) => assessing.add(planId, reading),
    kept: (row, studioMark) => currentCheck(setup, row, studioMark),
    waiting: () => queue.size,
    found: (row, studioMark) => found.of(currentCheck(setup, row, studioMark)),
    idle: () => (bursts.size === 0 && queue.idle ? Promise.resolve() : new Promise((resolve) => resting.push(resolve))),
    async stop() {
      for (const burst of bursts.values()) burst.cancel();
      bursts.clear();
      await setup.runner.stop();
    },
  };
}

/** The stored check, unless the document, the studio data or the program have changed since. */
function currentCheck({ app: { db }, programMark }: ChecksSetup, row: PlanRow, studioMark: string) {
  const check = readCheck(db, row.id);
  const name = formatDocName({ kind: "plan", key: row.id });
  const isCurrent =
    check?.studioMark === studioMark &&
    check.programMark === programMark &&
    check.seq === lastSeq(db, name) &&
    check.generation === readGeneration(db, name);
  return isCurrent ? check : undefined;
}

function hear({ app, programMark, heard }: ChecksSetup, found: FoundLast, answer: CheckAnswer): void {
  // Deleted for good while a thread was reading it.
  if (readGeneration(app.db, formatDocName({ kind: "plan", key: answer.planId })) === undefined) return;
  found.keep(answer);
  try {
    const { planId, generation, seq, studioMark, planMark, findingsMark, counts, strip } = answer;
    putCheck(app.db, { planId, generation, seq, studioMark, programMark, planMark, findingsMark, strip, ...counts });
    heard(answer);
  } catch (err) {
    // Only the result is lost: the plan is checked again when it is next asked for.
    app.log.error({ plan: answer.planId, err }, "the result of a check could not be stored");
  }
  try {
    app.words.put(answer);
  } catch (err) {
    // It is read again when somebody next looks for words.
    app.log.error({ plan: answer.planId, err }, "the words of a plan could not be kept");
  }
}
