/** Menders that put words first in an item's script, and the one that keeps springs on. */
import { movedMm } from "#lib/acts/words.ts";
import { offsetWords, placeVerb, sideWords, springWords } from "#lib/plan/format.ts";
import { itemById, moveOf } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { type Step, walkSetups } from "#lib/transitions/walk.ts";
import type { Mend, MendChange } from "./mend.ts";
import { type ChangeKind, untoldChanges } from "./rules/change-not-told.ts";
import { saysCarriageHome } from "./rules/springs-changed-carriage-out.ts";
import { changeList } from "./select/changes.ts";
import { keptSprings } from "./select/kept-springs.ts";
import type { Finding } from "./types.ts";

/** "Carriage home" first, with the springs where no line names them. */
export function sayCarriageHome(plan: Plan, finding: Finding): Mend | null {
  const step = stepOf(plan, finding);
  if (!step || saysCarriageHome(plan, step)) return null;
  return sayFirst(plan, step, [
    "carriage home",
    ...(untoldChanges(plan, step).includes("springs") ? ["{springs}"] : []),
  ]);
}

/** What the finding says is not told, as the set-up would say it; the carriage home before springs. */
export function sayChanges(plan: Plan, finding: Finding): Mend | null {
  const step = stepOf(plan, finding);
  const { kinds } = finding.values;
  if (!step || !Array.isArray(kinds)) return null;
  const untold = untoldChanges(plan, step).filter((kind) => kinds.includes(kind));
  return sayFirst(
    plan,
    step,
    untold.flatMap((kind) => wordsFor(plan, step, kind)),
  );
}

/** From where, as people take the place: "Kneel 8 cm further from the anchor." */
export function sayPlace(plan: Plan, finding: Finding): Mend | null {
  const step = stepOf(plan, finding);
  const move = step && moveOf(plan, step.item);
  if (!step || !move) return null;
  const by = movedMm(step.before?.item, step.item);
  if (by === 0) return null;
  const where = (step.item.offsetMm ?? 0) === 0 ? "at the usual place" : offsetWords(by);
  return sayFirst(plan, step, [`${placeVerb(move)} ${where}`]);
}

/** The words that free a hand or a foot. */
export function sayLetGo(plan: Plan, finding: Finding): Mend | null {
  const step = stepOf(plan, finding);
  if (!step) return null;
  const { handles, strap } = step.letGo;
  if ("held" in finding.values && handles > 0)
    return sayFirst(plan, step, [`put the handle${handles > 1 ? "s" : ""} down`]);
  return "strap" in finding.values && strap !== null ? sayFirst(plan, step, ["out of the strap"]) : null;
}

/** Any offset and any load the finding could be about: which of them the house minds, the rule has decided. */
const ANY = { maxOffsetMm: Number.POSITIVE_INFINITY, maxLoadDifferenceShare: Number.POSITIVE_INFINITY };

export function keepSprings(plan: Plan, finding: Finding): Mend | null {
  const kept = keptSprings(plan, walkSetups(plan), ANY).find(
    ({ items }) => items.length === finding.items.length && items.every(({ id }) => finding.items.includes(id)),
  );
  if (!kept) return null;
  const { springs, offsetMm, movedMm } = kept;
  const changes = kept.items.flatMap(({ id }): MendChange[] => [
    { itemId: id, field: "springs", value: { ...springs } },
    ...(offsetMm === null ? [] : [{ itemId: id, field: "offsetMm" as const, value: offsetMm }]),
  ]);
  const moved = movedMm === 0 ? "" : `, ${Math.abs(movedMm) / 10} cm ${movedMm > 0 ? "further" : "nearer"}`;
  return { label: `Keep ${springWords(plan.equipment, springs)}${moved}`, changes };
}

/** The way into the one move the finding is about, as the plan stands now. */
function stepOf(plan: Plan, finding: Finding): Step | undefined {
  const [id] = finding.items;
  const item = id === undefined || finding.items.length !== 1 ? undefined : itemById(plan, id);
  return item?.kind === "move" ? walkSetups(plan).find((step) => step.item === item) : undefined;
}

function wordsFor(plan: Plan, step: Step, kind: ChangeKind): string[] {
  if (kind === "springs") {
    const out = step.carriage !== "home" && !saysCarriageHome(plan, step);
    return [...(out ? ["carriage home"] : []), "{springs}"];
  }
  if (kind === "side") return ["{side} side"];
  if (kind === "facing") return [`face the ${step.to.facing}`];
  return changeList(plan, step, [kind === "handles" ? "hands" : "feet"]);
}

function sayFirst(plan: Plan, { item }: Step, words: readonly string[]): Mend | null {
  if (words.length === 0) return null;
  const said = words.join(", ");
  const text = `${said.charAt(0).toUpperCase()}${said.slice(1)}.`;
  return {
    label: `Say first: ${asRead(plan, item, text)}`,
    changes: [{ itemId: item.id, field: "firstLine", value: { kind: "setup", text } }],
  };
}

const asRead = (plan: Plan, item: MoveItem, text: string): string =>
  text
    .replaceAll("{springs}", () => springWords(plan.equipment, item.springs))
    .replaceAll("{side}", sideWords(item.side));
