/** Any two editions of a plan compared: what is different about the class, then plate by plate. */
import { type Edition, readEdition } from "#db/repos/edition-repo.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { itemName, sentenceCase } from "#lib/plan/format.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import { goneByFollower } from "#lib/plan-diff/changed-plates.ts";
import { planChanges } from "#lib/plan-diff/plan-changes.ts";
import { plateChanges } from "#lib/plan-diff/plate-changes.ts";
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { readSignedEdition } from "./editions.ts";

export interface PlateDifference {
  readonly id: string;
  /** "Kneeling row, right" */
  readonly name: string;
  readonly sentences: readonly string[];
  /** Which of the two it is in. */
  readonly was: boolean;
  readonly is: boolean;
  /** Whether it is set up differently, so that it is drawn as it was and as it is. */
  readonly setUp: boolean;
}

export interface Comparison {
  readonly before: Edition;
  readonly after: Edition;
  /** About the class, its machines, standards and moves. */
  readonly whole: readonly string[];
  /** In the order of the newer one; one that was removed stands where it was. */
  readonly plates: readonly PlateDifference[];
}

/** `from` is compared with `to`, whichever is newer, in the units of `f`. Errors: 401, 403, 404, 409 edition-damaged. */
export function compareEditions(
  app: Springline,
  actor: Actor,
  which: { readonly planId: string; readonly from: number; readonly to: number },
  f: Formats,
): Result<Comparison> {
  const { planId, from, to } = which;
  for (const number of [from, to]) {
    const found = readSignedEdition(app, actor, planId, number);
    if (!found.ok) return found;
  }
  const [before, after] = [readEdition(app.db, planId, from) as Edition, readEdition(app.db, planId, to) as Edition];
  const [was, is] = [before.card.card.plan, after.card.card.plan];
  return ok({ before, after, whole: wholeChanges(was, is, f), plates: plateDifferences(was, is, f) });
}

const wholeChanges = (was: Plan, is: Plan, f: Formats): string[] =>
  planChanges({ ...was, items: [] }, { ...is, items: [] }, f);

/** Each item alone, in the plan as it is otherwise now, so that every sentence is about that item. */
function plateDifferences(was: Plan, is: Plan, f: Formats): PlateDifference[] {
  const old = new Map(was.items.map((item) => [item.id, item]));
  const changes = plateChanges(was.items, is.items);
  const gone = goneByFollower(was.items, new Set(is.items.map(({ id }) => id)));
  const removed = (next: string | null) => (gone.get(next) ?? []).map((item) => goneFrom(was, item));
  const there = (item: PlanItem): PlateDifference[] => {
    const change = changes.get(item.id);
    if (!change) return [];
    const before = old.get(item.id);
    const name = sentenceCase(itemName(is, item));
    const items = before
      ? is.items.map((one) => (one.id === item.id ? before : one))
      : is.items.filter(({ id }) => id !== item.id);
    const said = sameData(before, item) ? [] : planChanges({ ...is, items }, is, f);
    const moved = change.moved ? [`${name} stands in another place.`] : [];
    const setUp = before !== undefined && (change.springs !== null || change.other);
    return [{ id: item.id, name, sentences: [...moved, ...said], was: before !== undefined, is: true, setUp }];
  };
  return [...is.items.flatMap((item) => [...removed(item.id), ...there(item)]), ...removed(null)];
}

function goneFrom(was: Plan, item: PlanItem): PlateDifference {
  const name = sentenceCase(itemName(was, item));
  return { id: item.id, name, sentences: [`${name} was removed.`], was: true, is: false, setUp: false };
}
