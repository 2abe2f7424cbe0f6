"use client";
/** The one act that fixes a finding, as one undo step; nothing where there is none or somebody cannot edit the plan. */
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import {
  addFirstScriptLine,
  addSetupAfter,
  addSetupEnd,
  removeRepeatedLine,
  setItemField,
  setSpring,
  type Writer,
} from "#lib/doc/write.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { remedyFor } from "#lib/remedies/remedies.ts";
import type { Remedy, RemedyChange } from "#lib/remedies/remedy.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import styles from "./margin.module.css";
import { doneWords } from "./margin-words.ts";

export function FixAct({ session, finding }: { readonly session: PlanSession; readonly finding: Finding }) {
  const { plan, rights } = useSnapshot(session);
  const fix = rights.writes ? remedyFor(plan, finding) : null;
  if (fix === null) return null;
  return (
    <>
      {fix.note && <p>{fix.note}</p>}
      <button type="button" className={styles.fix} onClick={() => apply(session, plan, fix)}>
        {fix.label}
      </button>
    </>
  );
}

function apply(session: PlanSession, plan: Plan, fix: Remedy): void {
  const done = session.act((w) => {
    for (const change of fix.changes) write(w, plan, change);
  });
  if (done) session.say(doneWords(fix.label));
}

function write(w: Writer, plan: Plan, change: RemedyChange): void {
  const { itemId } = change;
  switch (change.field) {
    case "firstLine":
      addFirstScriptLine(w, itemId, change.value);
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
