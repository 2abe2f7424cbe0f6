/** A house standard: how much one rule weighs in this studio and within which limits. For managers. */
import * as z from "zod";
import { namesById } from "#db/repos/people-repo.ts";
import { addStudioEvent, lastStudioEvent } from "#db/repos/studio-event-repo.ts";
import { readStudio, writeStandards } from "#db/repos/studio-repo.ts";
import { own } from "#lib/plan/lookup.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { Standards } from "#lib/plan/schema.ts";
import { type Actor, can, type Person } from "#lib/policy/can.ts";
import type { AnyRule } from "#lib/rules/define/types.ts";
import { ruleById } from "#lib/rules/registry.ts";
import { checkStandard, type StudioStandard, studioStandardSchema } from "#lib/rules/studio-standard.ts";
import { fail, NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { announceStudio } from "./announce-studio.ts";

export const standardChangeSchema = z.strictObject({
  /** Null: as the rule has it. */
  standard: z.nullable(studioStandardSchema),
  /** What the change was made on: what another manager kept meanwhile is never taken back unseen. */
  seen: z.nullable(studioStandardSchema),
});

export interface KeptStandard {
  /** Null: as the rule has it. */
  readonly standard: StudioStandard | null;
  readonly changed: LastChange | null;
}
export interface LastChange {
  readonly byName: string;
  /** ms since the epoch. */
  readonly at: number;
}

/**
 * Puts the house's level and limits of one rule in place of what it had; what is left out, or is as the rule has it, is
 * the rule's own, and null all of it. Open plans are checked again; a signed edition embeds the standards it was signed
 * with and stays. `seen` is what the change was made on; without it nothing is compared.
 * Errors: 403 no-right, 404 not-found (no such rule), 409 changed-meanwhile, 422 bad-limit.
 */
export function changeStandard(
  app: Springline,
  actor: Actor,
  ruleId: string,
  wanted: StudioStandard | null,
  seen?: StudioStandard | null,
): Result<KeptStandard> {
  const allowed = mayChange(app, actor, ruleId);
  if (!allowed.ok) return allowed;
  const { person, rule } = allowed.value;
  const checked = checkStandard(rule, wanted ?? {});
  if (!checked.ok) return fail(422, "bad-limit", checked.say, { limit: checked.limit });
  return keep(app, person, ruleId, { standard: checked.standard, seen });
}

/** What this house decided about a rule, and who did. Errors: 403 no-right, 404 not-found. */
export function readStandard(app: Pick<Springline, "db">, actor: Actor, ruleId: string): Result<KeptStandard> {
  if (!can(actor, "library.read")) return NO_RIGHT;
  return ruleById(ruleId) ? ok(kept(app, ruleId)) : NOT_FOUND;
}

function kept(app: Pick<Springline, "db">, ruleId: string): KeptStandard {
  const event = lastStudioEvent(app.db, "standard", ruleId);
  return {
    standard: own(readStudio(app.db)?.standards, ruleId) ?? null,
    changed: event ? { byName: namesById(app.db).get(event.actorId) ?? "Somebody who has left", at: event.at } : null,
  };
}

export function mayChange(
  app: Pick<Springline, "db">,
  actor: Actor,
  ruleId: string,
): Result<{ readonly rule: AnyRule; readonly person: Person }> {
  if (actor?.kind !== "person" || !can(actor, "standards.manage")) return NO_RIGHT;
  const rule = ruleById(ruleId);
  return rule && readStudio(app.db) ? ok({ rule, person: actor }) : NOT_FOUND;
}

const CHANGED = fail(
  409,
  "changed-meanwhile",
  "Somebody changed this standard while you had it open, and nothing of theirs is taken back. Note what you typed and reload the page.",
);

interface Keeping {
  readonly standard: StudioStandard | null;
  readonly seen: StudioStandard | null | undefined;
}

/** Nothing is written and nobody told where nothing changes. */
function keep(app: Springline, person: Person, ruleId: string, { standard, seen }: Keeping): Result<KeptStandard> {
  const changed = app.db.raw
    .transaction((): boolean | "meanwhile" => {
      const now = readStudio(app.db)?.standards ?? {};
      const next = withStandard(now, ruleId, standard);
      if (JSON.stringify(next) === JSON.stringify(now)) return false;
      if (seen !== undefined && !sameData(seen, own(now, ruleId) ?? null)) return "meanwhile";
      writeStandards(app.db, next);
      const event = { at: app.now(), actorId: person.id, subject: ruleId, data: standard };
      addStudioEvent(app.db, { ...event, kind: "standard" });
      return true;
    })
    .immediate();
  if (changed === "meanwhile") return CHANGED;
  if (changed) announceStudio(app);
  return ok(kept(app, ruleId));
}

/** Sorted by id, so that the same standards are the same text. */
function withStandard(now: Standards, ruleId: string, standard: StudioStandard | null): Standards {
  const others = Object.entries(now).filter(([id]) => id !== ruleId);
  const all = standard === null ? others : [...others, [ruleId, standard] as const];
  return Object.fromEntries(all.sort(([a], [b]) => (a < b ? -1 : 1)));
}
