/** The proof of the record beside people at work: one at a time, in slices, asked for and looked at by managers. */
import { namesById } from "#db/repos/people-repo.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import type { RecordHead } from "#lib/record/chain.ts";
import type { RecordFault } from "#lib/record/verify.ts";
import { NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { proofInSlices, rowsToProve } from "./prove-record.ts";

/** A slice stops after this, ms; then others have their turn for as long. Requests wait for one slice at most. */
const SLICE_MS = 10;

export type Proving =
  | { readonly state: "none" }
  | { readonly state: "running"; readonly rows: number; readonly of: number }
  | { readonly state: "holds"; readonly head: RecordHead; readonly at: number; readonly byName: string }
  | { readonly state: "broken"; readonly fault: RecordFault; readonly at: number; readonly byName: string }
  /** The database could not be read to its end. */
  | { readonly state: "failed" };

type Studio = Pick<Springline, "db" | "now" | "log">;
const latest = new WeakMap<Springline["db"], Proving>();

/** The latest proof. Errors: 403 no-right. */
export function readProving(app: Studio, actor: Actor): Result<Proving> {
  return can(actor, "record.read") ? ok(latest.get(app.db) ?? { state: "none" }) : NO_RIGHT;
}

/** Starts a proof unless one is running, and answers at once. Errors: 403 no-right. */
export function startProving(app: Studio, actor: Actor): Result<Proving> {
  if (!can(actor, "record.read") || actor?.kind !== "person") return NO_RIGHT;
  if (latest.get(app.db)?.state !== "running") {
    latest.set(app.db, { state: "running", rows: 0, of: rowsToProve(app.db) });
    void run(app, namesById(app.db).get(actor.id) ?? "");
  }
  return readProving(app, actor);
}

/** Never rejects. */
async function run(app: Studio, byName: string): Promise<void> {
  try {
    const slices = proofInSlices(app.db);
    for (;;) {
      const from = performance.now();
      let step = slices.next();
      while (!step.done && performance.now() - from < SLICE_MS) step = slices.next();
      if (step.done) {
        const proof = step.value;
        const told = { at: app.now(), byName };
        latest.set(
          app.db,
          proof.holds
            ? { state: "holds", head: proof.head, ...told }
            : { state: "broken", fault: proof.fault, ...told },
        );
        return;
      }
      latest.set(app.db, { state: "running", rows: step.value, of: rowsToProve(app.db) });
      await new Promise((resolve) => setTimeout(resolve, performance.now() - from));
    }
  } catch (err) {
    app.log.error({ err }, "the record could not be proved");
    latest.set(app.db, { state: "failed" });
  }
}
