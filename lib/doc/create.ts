/**
 * New documents. Called only by the server, once for each document: it stores the update bytes, since seeding the same
 * content twice would double it.
 */
import { generateNKeysBetween } from "fractional-indexing";
import * as Y from "yjs";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import {
  AFTER_KEY,
  EXPECTED_KEY,
  type ItemMap,
  LOCKED_SECONDS,
  MOVE_KEY,
  PLAN_DOC_VERSION,
  planParts,
  SHARE_KEY,
  SPRING_KEY,
} from "./layout.ts";
import { scriptFragment } from "./script.ts";

/**
 * A document holding `plan`. With `carry`, its equipment, moves and standards travel in the document (a plan from a
 * file); without, they are read from the studio.
 */
export function createPlanDoc(plan: Plan, options: { carry: boolean }): Y.Doc {
  const doc = new Y.Doc();
  doc.transact(() => {
    const p = planParts(doc);
    p.meta.set("version", PLAN_DOC_VERSION);
    p.title.insert(0, plan.title);
    if (plan.theme) p.theme.insert(0, plan.theme.name);
    if (plan.notes) p.notes.insert(0, plan.notes);
    for (const [key, value] of headEntries(plan)) p.head.set(key, value);
    const keys = generateNKeysBetween(null, null, plan.items.length);
    plan.items.forEach((item, i) => {
      p.items.set(item.id, newItemMap(item, keys[i] as string));
    });
    if (options.carry) carry(p.carried, plan);
  });
  return doc;
}

function headEntries(plan: Plan): [string, unknown][] {
  const entries: [string, unknown][] = [
    ["lengthSeconds", plan.lengthSeconds],
    ["level", plan.level],
    ["openingSeconds", plan.openingSeconds],
    ["closingSeconds", plan.closingSeconds],
    ["headsUpSeconds", plan.headsUpSeconds],
    ["countInSeconds", plan.countInSeconds],
    ["gridSeconds", plan.gridSeconds],
    ["people", plan.people],
    ["shares", plan.theme?.shares && true],
    ["expected", plan.expected && true],
    ["speech", plan.speech && true],
    ["speech.syllablesPerSecond", plan.speech?.syllablesPerSecond],
    ["speech.pauseSeconds", plan.speech?.pauseSeconds],
    ...Object.entries(plan.theme?.shares ?? {}).map(([g, share]): [string, unknown] => [SHARE_KEY + g, share]),
    ...(plan.expected ?? []).map((caution, rank): [string, unknown] => [EXPECTED_KEY + caution, rank]),
  ];
  return entries.filter(([, value]) => value !== undefined);
}

function carry(carried: Y.Map<unknown>, plan: Plan): void {
  carried.set("equipment", plan.equipment);
  if (plan.standards) carried.set("standards", plan.standards);
  for (const [id, move] of Object.entries(plan.moves)) carried.set(MOVE_KEY + id, move);
}

/** The shared form of one item. Its nested texts are created here, with the item, and nowhere else. */
export function newItemMap(item: PlanItem, order: string): ItemMap {
  const map: ItemMap = new Y.Map();
  map.set("kind", item.kind);
  map.set("order", order);
  if (item.kind === "heading") map.set("label", new Y.Text(item.title));
  else if (item.kind === "pause") {
    map.set("seconds", item.seconds);
    map.set("label", new Y.Text(item.text ?? ""));
  } else {
    const { id: _id, kind: _kind, springs, script, after, ...fields } = item;
    for (const [key, value] of Object.entries(fields)) if (value !== undefined) map.set(key, value);
    if (item.locked) map.set(LOCKED_SECONDS, item.seconds);
    if (after) map.set("after", true);
    for (const [rank, other] of (after ?? []).entries()) map.set(AFTER_KEY + other, rank);
    for (const [spring, n] of Object.entries(springs)) map.set(SPRING_KEY + spring, n);
    map.set("script", scriptFragment(script ?? []));
  }
  return map;
}
