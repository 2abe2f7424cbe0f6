/** What stands in the way of signing a plan off, each with its own code and sentence, the first to settle on top. */

import { namesById } from "#db/repos/people-repo.ts";
import { type PlanRow, readPlanAuthors } from "#db/repos/plan-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { countThreads } from "#db/repos/thread-repo.ts";
import { agree } from "#lib/plan/format.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import type { Springline } from "#server/springline.ts";
import type { Assessment } from "./assess-plan.ts";

export type BlockerCode = "not-handed-in" | "not-a-file" | "must-fix" | "check-broken" | "open-threads" | "only-author";
export interface Blocker {
  readonly code: BlockerCode;
  readonly message: string;
  readonly details?: unknown;
}

/** `signerId` is who would sign. Reads the database only; the plan comes assessed. */
export function signBlockers(
  app: Pick<Springline, "db">,
  row: PlanRow,
  signerId: string,
  assessed: Assessment,
): Blocker[] {
  return [
    ...notHandedIn(row),
    ...notAFile(assessed),
    ...mustFix(assessed.mustFix),
    ...brokenChecks(assessed.broken),
    ...openThreads(countThreads(app.db, row.id).open),
    ...onlyAuthor(app, row, signerId),
  ];
}

function notHandedIn(row: PlanRow): Blocker[] {
  if (row.state === "handed-in") return [];
  const message =
    row.state === "signed-off"
      ? "The plan is signed off already. Writing on makes the next edition."
      : "The plan is not handed in. Whoever writes it hands it in first.";
  return [{ code: "not-handed-in", message, details: { state: row.state } }];
}

function notAFile({ notAFile: why }: Assessment): Blocker[] {
  if (!why) return [];
  return [{ code: "not-a-file", message: `The plan is not whole: ${why.message}`, details: why }];
}

function mustFix(findings: readonly Finding[]): Blocker[] {
  if (findings.length === 0) return [];
  const many = agree(findings.length, "One finding has", `${findings.length} findings have`);
  return [{ code: "must-fix", message: `${many} to be fixed first.`, details: { findings } }];
}

/** Nothing is known about what a broken check looks for; the house standards can turn that check off. */
function brokenChecks(findings: readonly Finding[]): Blocker[] {
  if (findings.length === 0) return [];
  const message = `${findings.map((f) => f.message).join(" ")} A manager can turn the check off in the house standards.`;
  return [{ code: "check-broken", message, details: { findings } }];
}

function openThreads(open: number): Blocker[] {
  if (open === 0) return [];
  const message = agree(open, "One thread is still open.", `${open} threads are still open.`);
  return [{ code: "open-threads", message: `${message} Settle them first.`, details: { open } }];
}

/** Nobody signs off a plan that only they wrote, unless the house allows it. */
function onlyAuthor(app: Pick<Springline, "db">, row: PlanRow, signerId: string): Blocker[] {
  if (readStudio(app.db)?.soleAuthorMaySign) return [];
  const people = namesById(app.db); // an author that is no person (the server mending a document) does not count
  const others = readPlanAuthors(app.db, row.id).filter((id) => id !== signerId && people.has(id));
  if (others.length > 0) return [];
  const message = "You are the only author of this plan. Somebody else has to sign it off.";
  return [{ code: "only-author", message }];
}
