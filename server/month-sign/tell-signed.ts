/** A signed month is told to whoever teaches in it and to the managers, but not to who signed it. */
import { listMembers } from "#db/repos/people-repo.ts";
import { expandMonth } from "#lib/month/expand.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { can } from "#lib/policy/can.ts";
import type { Springline } from "#server/context/springline.ts";
import { tell } from "#server/notices/tell.ts";

interface Signed {
  readonly month: string;
  readonly edition: number;
  readonly byId: string;
}

/** Call inside the transaction that stores the edition. `file`: the month as it is signed. */
export function tellMonthSigned(app: Pick<Springline, "db" | "now">, file: MonthFile, data: Signed): void {
  const teach = teachersOf(file);
  const to = listMembers(app.db)
    .filter(({ id, roles }) => teach.has(id) || roles.includes("manager"))
    // Somebody may be given a class who may not open the programme.
    .filter(({ id, roles }) => can({ kind: "person", id, roles }, "programme.read"))
    .map(({ id }) => id);
  tell(app, { kind: "month-signed", to, planId: null, data });
}

/** Those with a class that takes place; the days before the month are another month's. */
function teachersOf(file: MonthFile): Set<string | null | undefined> {
  const own = expandMonth(file).filter(({ date, out }) => date >= file.dates.from && out !== true);
  return new Set(own.map(({ coach }) => coach));
}
