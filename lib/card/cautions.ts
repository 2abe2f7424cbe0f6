/**
 * The safety words that go with every class outside its plan: on the card, the floor and paper. They remind and refer to
 * others; they never advise a person.
 */
import { CAUTION_WORDS } from "#lib/library/move-words.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { ExpectedCaution, MoveCaution, Plan } from "#lib/plan/schema.ts";

/** Shown wherever a class is shown outside its plan. */
export const SAFETY_NOTE = [
  "General guidance for a class, not advice to any one person: whoever has a condition, an injury, a pregnancy or recent surgery follows their own clinician.",
  "Springs, straps, bars and carriage: the machine maker's manual comes first.",
  "Local rules come before this plan.",
  "To be led by somebody trained for it and, where that is required, licensed. Pain, dizziness or numbness: stop, and step off with the carriage home.",
] as const;

const EXPECTED_WORDS: Record<ExpectedCaution, string> = {
  pregnancy: "pregnancy",
  "raised-blood-pressure": "raised blood pressure",
  "bone-loss": "bone loss",
  "wrist-pain": "wrist pain",
  "shoulder-pain": "shoulder pain",
  "knee-pain": "knee pain",
  "back-pain": "back pain",
  "pelvic-floor": "pelvic floor",
  glaucoma: "glaucoma",
  dizziness: "dizziness",
  "recent-surgery": "recent surgery",
  "first-class": "a first class",
};

export interface CardCautions {
  readonly note: readonly string[];
  /** Cautions of the moves, each with its items in plan order. */
  readonly asked: readonly { readonly words: string; readonly items: readonly string[] }[];
  /** Who is expected in the room. */
  readonly expected: readonly string[];
}

/** The cautions of a plan in words. */
export function cardCautions(plan: Plan): CardCautions {
  const items = new Map<MoveCaution, string[]>();
  for (const item of plan.items) {
    if (item.kind !== "move") continue;
    for (const caution of moveOf(plan, item)?.cautions ?? []) {
      items.set(caution, [...(items.get(caution) ?? []), item.id]);
    }
  }
  return {
    note: [...SAFETY_NOTE],
    asked: [...items].map(([caution, ids]) => ({ words: CAUTION_WORDS[caution], items: ids })),
    expected: (plan.expected ?? []).map((caution) => EXPECTED_WORDS[caution]),
  };
}
