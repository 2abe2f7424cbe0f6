/** A house standard: how much one rule weighs in this studio and within which limits. For managers. */
import { namesById } from "#db/repos/people-repo.ts";
import { addStudioEvent, lastStudioEvent } from "#db/repos/studio-event-repo.ts";
import { readStudio, writeStandards } from "#db/repos/studio-repo.ts";
import { own } from "#lib/plan/lookup.ts";
import type { Standards } from "#lib/plan/schema.ts";
import { type Actor, can, type Person } from "#lib/policy/can.ts";
import { checkStandard, type HouseStandard, houseStandardSchema } from "#lib/rules/house-standard.ts";
import { ruleById } from "#lib/rules/registry.ts";
import type { AnyRule } from "#lib/rules/types.ts";
import { fail, NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { announceStudio } from "./announce-studio.ts";

export const standardChangeSchema = houseStandardSchema;

export interface KeptStandard {
  /** Null: as the rule has it. */
  readonly standard: HouseStandard | null;
  readonly changed: LastChange | null;
}
export interface LastChange {
  readonly byName: string;
  /** ms since the epoch. */
  readonly at: number;
}

/**
 * Puts the house's level and limits of one rule in place of what it had; what is left out, or is as the rule has it, is
 * the rule's own. Open plans are checked again; a signed edition embeds the standards it was signed with and stays.
 * Errors: 403 no-right, 404 not-found (no such rule), 422 bad-limit.
 */
export function changeStandard(
  app: Springline,
  actor: Actor,
  ruleId: string,
  wanted: HouseStandard,
): Result<KeptStandard> {
  const allowed = mayChange(app, actor, ruleId);
  if (!allowed.ok) return allowed;
  const checked = checkStandard(allowed.value.rule, wanted);
  if (!checked.ok) return fail(422, "bad-limit", checked.say, { limit: checked.limit });
  return keep(app, allowed.value.person, ruleId, checked.standard);
}

/** Back to the rule's own level and limits. Errors: 403 no-right, 404 not-found. */
export function resetStandard(app: Springline, actor: Actor, ruleId: string): Result<KeptStandard> {
  const allowed = mayChange(app, actor, ruleId);
  return allowed.ok ? keep(app, allowed.value.person, ruleId, null) : allowed;
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

/** Nothing is written and nobody told where nothing changes. */
function keep(app: Springline, person: Person, ruleId: string, standard: HouseStandard | null): Result<KeptStandard> {
  const changed = app.db.raw
    .transaction((): boolean => {
      const now = readStudio(app.db)?.standards ?? {};
      const next = withStandard(now, ruleId, standard);
      if (JSON.stringify(next) === JSON.stringify(now)) return false;
      writeStandards(app.db, next);
      const event = { at: app.now(), actorId: person.id, subject: ruleId, data: standard };
      addStudioEvent(app.db, { ...event, kind: "standard" });
      return true;
    })
    .immediate();
  if (changed) announceStudio(app);
  return ok(kept(app, ruleId));
}

/** Sorted by id, so that the same standards are the same text. */
function withStandard(now: Standards, ruleId: string, standard: HouseStandard | null): Standards {
  const others = Object.entries(now).filter(([id]) => id !== ruleId);
  const all = standard === null ? others : [...others, [ruleId, standard] as const];
  return Object.fromEntries(all.sort(([a], [b]) => (a < b ? -1 : 1)));
}
