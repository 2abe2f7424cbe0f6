/** What prevents a month from being signed off, each with a code and a sentence, in the order in which to deal with them. */
import { newestMonthEdition } from "#db/repos/month-edition-repo.ts";
import { plural } from "#lib/plan/format.ts";
import type { Springline } from "#server/context/springline.ts";
import type { MonthNow } from "./month-now.ts";

export interface MonthBlocker {
  readonly code: "no-classes" | "must-fix" | "signed-already";
  readonly message: string;
  readonly details?: unknown;
}

export function monthBlockers(app: Pick<Springline, "db">, month: string, now: MonthNow): MonthBlocker[] {
  return [...noClasses(now), ...mustFix(now), ...signedAlready(app, month, now)];
}

function noClasses({ file }: MonthNow): MonthBlocker[] {
  const some = file.slots.some(({ date }) => date >= file.dates.from) || (file.pattern ?? []).length > 0;
  return some ? [] : [{ code: "no-classes", message: "There are no classes in this month yet." }];
}

function mustFix({ findings }: MonthNow): MonthBlocker[] {
  const must = findings.filter(({ level }) => level === "must");
  if (must.length === 0) return [];
  const said = must.map(({ message }) => message).join(" ");
  const message = `${plural(must.length, "finding")} must be fixed first: ${said}`;
  return [{ code: "must-fix", message, details: { findings: must } }];
}

function signedAlready(app: Pick<Springline, "db">, month: string, { hash }: MonthNow): MonthBlocker[] {
  const newest = newestMonthEdition(app.db, month);
  if (newest?.hash !== hash) return [];
  const message = `Nothing has changed since edition ${newest.number} was signed.`;
  return [{ code: "signed-already", message, details: { number: newest.number } }];
}
