/** A short class without must-fix findings: ten minutes of rows and presses, written by two people. */
import { readItems } from "#lib/doc/read.ts";
import { insertItems, moveItem } from "#lib/doc/write.ts";
import type { MoveItem, PlanItem } from "#lib/plan/schema.ts";
import type { Person } from "#lib/policy/can.ts";
import type { DocName } from "#lib/protocol/messages.ts";
import type { PlanStudio } from "./plan-studio.ts";

const item = (id: string, move: string, seconds: number, transitionSeconds?: number): MoveItem => ({
  id,
  kind: "move",
  move,
  side: "both",
  seconds,
  springs: { firm: 1 },
  ...(transitionSeconds === undefined ? {} : { transitionSeconds }),
  script: [
    { kind: "setup", text: "One firm spring, kneel and take the handles." },
    { kind: "start", text: "And go." },
    { kind: "breath", text: "Breathe out as you work." },
  ],
});

/** 60 s opening + 100 + (20 + 120) + (20 + 100) + (20 + 100) + 60 s closing = 600 s. */
export const GOOD_ITEMS: readonly PlanItem[] = [
  { id: "h1", kind: "heading", title: "Warm-up" },
  item("m1", "kneeling-row", 100),
  item("m2", "chest-press", 120, 20),
  { id: "h2", kind: "heading", title: "Again" },
  item("m3", "kneeling-row", 100, 20),
  item("m4", "chest-press", 100, 20),
];

/** Two people take turns: the first begins, the second continues. The heading the plan came with moves to the end. */
export async function writeGoodClass(
  s: PlanStudio,
  doc: DocName,
  [one, two]: readonly [Person, Person],
): Promise<void> {
  await s.write(doc, one, (w) => insertItems(w, null, GOOD_ITEMS.slice(0, 3)));
  await s.write(doc, two, (w) => insertItems(w, "m2", GOOD_ITEMS.slice(3)));
  await s.write(doc, one, (w) => {
    const first = readItems(w.doc).find((i) => !GOOD_ITEMS.some((g) => g.id === i.id));
    if (first) moveItem(w, first.id, "m4");
  });
}
