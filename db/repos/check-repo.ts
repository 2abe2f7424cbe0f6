/** The result of each plan's last check. Prepared raw statements, since every check ends here. */
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { appendTransaction } from "#db/transaction.ts";

export interface KeptCheck {
  readonly planId: string;
  readonly generation: string;
  readonly seq: number;
  readonly studioMark: string;
  readonly programMark: string;
  readonly planMark: string | null;
  readonly findingsMark: string | null;
  readonly must: number;
  readonly look: number;
  readonly info: number;
  /** The class in small, as its text; null for a plan that cannot be read. */
  readonly strip: string | null;
}

function prepareAll({ raw }: Db) {
  return {
    read: raw.prepare<[string], KeptCheck>(
      `select plan_id as planId, generation, seq, studio_mark as studioMark, program_mark as programMark,
       plan_mark as planMark, findings_mark as findingsMark, must, look, info, strip from plan_check where plan_id = ?`,
    ),
    put: raw.prepare<[KeptCheck]>(
      `insert or replace into plan_check
       (plan_id, generation, seq, studio_mark, program_mark, plan_mark, findings_mark, must, look, info, strip) values
       (@planId, @generation, @seq, @studioMark, @programMark, @planMark, @findingsMark, @must, @look, @info, @strip)`,
    ),
  };
}

const statements = oncePerDatabase(prepareAll);

export const readCheck = (db: Db, planId: string): KeptCheck | undefined => statements(db).read.get(planId);

/** Does not wait for the disk: what a power cut loses is worked out again. */
export function putCheck(db: Db, check: KeptCheck): void {
  appendTransaction(db, () => statements(db).put.run(check));
}
