/** What is different about each item since a plan was read, to be marked on its plate; the sentences are `planChanges`. */
import { movedIds } from "#lib/plan/moved.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { MoveItem, PlanItem } from "#lib/plan/schema.ts";

export interface PlateChange {
  /** It was not there. */
  readonly added: boolean;
  readonly moved: boolean;
  /** As they were; null where they are the same. */
  readonly seconds: number | null;
  readonly springs: Readonly<Record<string, number>> | null;
  /** Its lines are others than before. */
  readonly words: boolean;
  /** Something else is different: move, side, facing, place, planned change. */
  readonly other: boolean;
}

/** By id; nothing for items that are as they were. */
export function plateChanges(
  before: readonly PlanItem[],
  after: readonly PlanItem[],
): ReadonlyMap<string, PlateChange> {
  const was = new Map(before.map((item) => [item.id, item]));
  const moved = movedIds(
    before.map(({ id }) => id),
    after.map(({ id }) => id),
  );
  return new Map(
    after.flatMap((item) => {
      const change = changeOf(was.get(item.id), item, moved.has(item.id));
      return change ? [[item.id, change] as const] : [];
    }),
  );
}

const NOTHING: PlateChange = { added: false, moved: false, seconds: null, springs: null, words: false, other: false };

function changeOf(was: PlanItem | undefined, is: PlanItem, moved: boolean): PlateChange | null {
  if (!was) return { ...NOTHING, added: true };
  if (sameData(was, is)) return moved ? { ...NOTHING, moved } : null;
  if (was.kind !== "move" || is.kind !== "move") return { ...NOTHING, moved, other: true };
  return {
    added: false,
    moved,
    seconds: was.seconds === is.seconds ? null : was.seconds,
    springs: sameData(was.springs, is.springs) ? null : was.springs,
    words: !sameData(was.script ?? [], is.script ?? []),
    other: !sameData(besides(was), besides(is)),
  };
}

/** What has no mark of its own. */
function besides(item: MoveItem) {
  const { seconds: _seconds, springs: _springs, script: _script, ...rest } = item;
  return rest;
}
