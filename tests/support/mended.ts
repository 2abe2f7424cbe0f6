/** A plan after a fix was taken, without a document: what the page's own acts do to it. */
import type { Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import type { Remedy, RemedyChange } from "#lib/remedies/remedy.ts";

export function mended(plan: Plan, mend: Remedy): Plan {
  return { ...plan, items: plan.items.map((item) => mend.changes.reduce(withChange, item)) };
}

function withChange(item: PlanItem, change: RemedyChange): PlanItem {
  if (item.kind !== "move" || change.itemId !== item.id) return item;
  const script = item.script ?? [];
  switch (change.field) {
    case "firstLine":
      return { ...item, script: [change.value, ...script] };
    case "lastLine":
      return { ...item, script: [...script, change.value] };
    case "setupEnd":
      return { ...item, script: script.toSpliced(lastOf(script, isSetup) + 1, 0, change.value) };
    case "afterLine":
      return { ...item, script: script.toSpliced(script.findIndex(same(change.after)) + 1, 0, change.value) };
    case "lineTwice":
    case "lineOut":
      return { ...item, script: script.toSpliced(lastOf(script, same(change.value)), 1) };
    default:
      return { ...item, [change.field]: change.value };
  }
}

const lastOf = (script: readonly ScriptLine[], is: (line: ScriptLine) => boolean): number => script.findLastIndex(is);
const isSetup = ({ kind, text }: ScriptLine): boolean => kind === "setup" && text.trim() !== "";
const same = (line: ScriptLine) => (other: ScriptLine) =>
  other.kind === line.kind && other.text.trim() === line.text.trim();
