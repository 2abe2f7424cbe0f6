/** A month as the server itself sees it: what is signed must not depend on who reads it. */
import { canonicalJson, sha256Hex } from "#lib/canonical/canonical.ts";
import { monthAsSigned } from "#lib/month/changes/as-signed.ts";
import { MonthAnalyst } from "#lib/month/check/analyst.ts";
import type { MonthFile, MonthFinding } from "#lib/month/types.ts";
import { type Actor, can, type Person, type StudioAction } from "#lib/policy/can.ts";
import { NO_RIGHT, NOT_FOUND, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { monthIsNear } from "#server/programme/month-range.ts";
import { readMonthFileOf } from "#server/programme/read-month-file.ts";

type App = Pick<Springline, "db" | "documents" | "now" | "newId">;

export interface MonthNow {
  readonly file: MonthFile;
  /** Canonical JSON (RFC 8785) of the file, and its SHA-256 (hex). */
  readonly json: string;
  readonly hash: string;
  /** As of today: what is over is not told of any more. */
  readonly findings: readonly MonthFinding[];
}

/** Sees every plan, as a lead does. It is nobody: it is never stored. */
const SERVER_EYES: Person = { kind: "person", id: "", roles: ["lead"] };

/** Errors: 404 for a month out of range; 409, 503 when the document cannot be read. */
export function monthNow(app: App, month: string): Result<MonthNow> {
  const read = readMonthFileOf(app, SERVER_EYES, month);
  if (!read.ok) return read;
  const file = monthAsSigned(read.value);
  const json = canonicalJson(file);
  const { findings } = new MonthAnalyst().look(read.value);
  return ok({ file, json, hash: sha256Hex(json), findings });
}

/** The right to do something with a month that there can be. Errors: 401, 403, 404. */
export function mayWithMonth(
  app: Pick<App, "now">,
  actor: Actor,
  month: string,
  action: StudioAction,
): Result<{ readonly person: Person }> {
  if (actor === null) return NOT_SIGNED_IN;
  if (actor.kind !== "person" || !can(actor, action)) return NO_RIGHT;
  return monthIsNear(month, app.now()) ? ok({ person: actor }) : NOT_FOUND;
}
