/** Several people type in one shared text at once, with any rhythm and delivery: every letter is there, in its word. */
import { expect, test } from "vitest";
import * as Y from "yjs";
import { often } from "#tests/support/long.ts";
import { Dice } from "../support/dice.ts";
import { TypedField } from "../support/typed-field.ts";
import { Network } from "./network.ts";

const RUNS = often(64, 200);
/** Like letters next to like ones are what a mere comparison of texts gets wrong. */
const START = "Legs and arms, all in all: small balls. ll";
const WORDS = ["balls all along the wall. ", "Aller and alle, 22:22. ", "llllllll", "Zu zweit 😀😀 geht es. "];
/** Network steps between two keys. */
const RHYTHMS = [1, 2, 5] as const;

interface Typist {
  readonly field: TypedField;
  readonly words: readonly string[];
  readonly rhythm: number;
  next: number;
}

test.each(Array.from({ length: 8 }, (_, part) => part))("typing together, part %i", (part) => {
  for (let seed = part; seed < RUNS; seed += 8) together(new Dice(seed + 1), seed);
});

function together(dice: Dice, seed: number): void {
  const start = new Y.Doc();
  start.getText("t").insert(0, START);
  const writers = 2 + (seed % 3);
  const network = new Network(Y.encodeStateAsUpdate(start), writers);
  const typists = network.writers.map((doc, i) => typist(doc, i, dice));
  for (let tick = 0; typists.some(({ next, words }) => next < words.length); tick++) {
    for (const one of typists) if (tick % one.rhythm === 0) key(one);
    const writer = dice.upTo(writers);
    network.deliver(writer, dice.one(["up", "down"]), dice.upTo(1000), dice.upTo(8) === 0);
  }
  network.flush();

  const read = network.hub.getText("t").toString();
  const typed = typists.map(({ words }) => words.join(""));
  for (const { field } of typists) expect(field.value, `seed ${seed}`).toBe(read);
  for (const words of typed) expect(read, `seed ${seed}`).toContain(words);
  expect(read.length, `seed ${seed}`).toBe(START.length + typed.join("").length);
}

function typist(doc: Y.Doc, i: number, dice: Dice): Typist {
  const field = new TypedField(doc.getText("t"));
  field.caret(dice.upTo(START.length + 1));
  return { field, words: [...(WORDS[i] ?? "")], rhythm: dice.one(RHYTHMS), next: 0 };
}

function key(one: Typist): void {
  const letter = one.words[one.next++];
  if (letter !== undefined) one.field.type(letter);
}
