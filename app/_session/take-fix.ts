/** Writes a fix into the plan, as one step of undo. */

import {
  addFirstScriptLine,
  addScriptLine,
  addSetupAfter,
  addSetupEnd,
  removeLine,
  removeRepeatedLine,
  setItemField,
  setSpring,
  type Writer,
} from "#lib/doc/write.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Remedy, RemedyChange } from "#lib/remedies/remedy.ts";
import { setupToWrite } from "#lib/remedies/setup-lines.ts";
import { walkSetups } from "#lib/transitions/walk.ts";
import type { PlanSession } from "./session.ts";

/** Says what it did. */
export function takeFix(session: PlanSession, fix: Remedy): void {
  const { plan } = session.getSnapshot();
  const done = session.act((w) => {
    for (const change of fix.changes) write(w, plan, change);
  });
  if (done) session.say(`Done: ${fix.label.replace(/\.$/, "")}.`);
}

function write(w: Writer, plan: Plan, change: RemedyChange): void {
  const { itemId } = change;
  switch (change.field) {
    case "firstLine":
      addFirstScriptLine(w, itemId, change.value);
      break;
    case "lastLine":
      addScriptLine(w, itemId, change.value);
      break;
    case "setupEnd":
      addSetupEnd(w, itemId, change.value);
      break;
    case "afterLine":
      addSetupAfter(w, itemId, change.after, change.value);
      break;
    case "lineTwice":
      removeRepeatedLine(w, itemId, change.value);
      break;
    case "lineOut":
      removeLine(w, itemId, change.value);
      break;
    case "springs":
      writeSprings(w, plan, itemId, change.value);
      break;
    default:
      setItemField(w, itemId, change.field, change.value);
  }
}

function writeSprings(w: Writer, plan: Plan, itemId: string, springs: Readonly<Record<string, number>>): void {
  const item = itemById(plan, itemId);
  if (item?.kind !== "move") return;
  for (const id of new Set([...Object.keys(item.springs), ...Object.keys(springs)]))
    setSpring(w, itemId, id, springs[id] ?? 0);
}

/** The acts of the change into an item, where its set-up lines do not tell them yet. */
export function writeSetUp(session: PlanSession, itemId: string): void {
  const { plan } = session.getSnapshot();
  const step = walkSetups(plan).find(({ item }) => item.id === itemId);
  const fix = step ? setupToWrite(plan, step) : null;
  if (fix) takeFix(session, fix);
  else session.say("Nothing to add: the set-up lines say all that changes.");
}
