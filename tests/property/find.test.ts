/**
 * What the index of words says equals what a plain scan of the plans says, after any edits: by hand, with the platform's own
 * Unicode forms (NFKD, Unicode Standard Annex 15) and no index.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { wordIndexBeside } from "#db/words/word-index.ts";
import { readerOf } from "#lib/cues/as-read.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { PlanReader } from "#lib/doc/plan-reader.ts";
import { orderedIds, readPlan } from "#lib/doc/read.ts";
import { addScriptLine } from "#lib/doc/write.ts";
import { findableLines } from "#lib/find/plan-lines.ts";
import { soughtWords } from "#lib/find/words.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { Ledger } from "#tests/property/acts.ts";
import { type Edited, editOnce } from "#tests/property/analysis-edits.ts";
import { Dice } from "#tests/support/dice.ts";
import { often } from "#tests/support/long.ts";
import { longClass } from "#tests/support/long-class.ts";
import { tempDb } from "#tests/support/temp-db.ts";

/** No word of them has another spelling or a plural, in which the program finds more than a plain scan does. */
const WORDS = [
  "breathe",
  "out",
  "élan",
  "Zürich",
  "ﬁrm",
  "two2",
  "kneel",
  "ÅNGSTRÖM",
  "neck",
  "Σίγμα",
  "left",
] as const;
const ASKED = [
  "br",
  "breathe out",
  "elan",
  "zurich",
  "firm",
  "tw",
  "kneel neck",
  "angstrom",
  "σιγμα",
  "left out",
  "hold",
];

const plainWords = (text: string): string[] =>
  text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u);

function plainLines(plan: Plan): string[] {
  const read = readerOf(plan);
  const ofItems = plan.items.flatMap((item) => {
    if (item.kind === "heading") return [item.title];
    if (item.kind === "pause") return [item.text ?? ""];
    return [plan.moves[item.move]?.name ?? "", ...(item.script ?? []).map(({ text }) => read(item, text))];
  });
  return [plan.title, plan.theme?.name ?? "", ...ofItems, ...(plan.notes ?? "").split("\n")];
}

/** Ids of the plans that have every word somewhere, and how many lines have them all. */
function scan(plans: ReadonlyMap<string, Plan>, text: string): (readonly [string, number])[] {
  const asked = text.split(" ");
  const has = (words: readonly string[]) => asked.every((one) => words.some((word) => word.startsWith(one)));
  return [...plans].flatMap(([id, plan]) => {
    const lines = plainLines(plan).map(plainWords);
    return has(lines.flat()) ? [[id, lines.filter(has).length] as const] : [];
  });
}

function writeWords(at: Edited, dice: Dice): void {
  const words = Array.from({ length: 1 + dice.upTo(4) }, () => WORDS[dice.upTo(WORDS.length)] ?? "").join(" ");
  const ids = orderedIds(at.doc);
  const id = ids[dice.upTo(Math.max(1, ids.length))];
  const w = { doc: at.doc, origin: null };
  if (id !== undefined) addScriptLine(w, id, { kind: "form", text: words });
}

test("the index finds what a scan of the plans finds", () => {
  const property = fc.property(fc.integer({ min: 1, max: 2 ** 30 }), (seed) => {
    const temp = tempDb();
    const dice = new Dice(seed);
    const index = wordIndexBeside(temp.open({ synchronous: "NORMAL" }));
    const all = ["a", "b", "c"].map((id) => {
      const plan = longClass(4, 6);
      const { moves, equipment, standards = {} } = plan;
      const at: Edited = {
        doc: createPlanDoc(plan, { carry: true }),
        studio: { moves, equipment, standards },
        ledger: new Ledger(),
      };
      return { id, at, reader: new PlanReader(at.doc) };
    });
    for (let round = 0; round < 8; round++) {
      for (const { id, at, reader } of all) {
        for (let edit = dice.upTo(4); edit > 0; edit--) editOnce(at, dice);
        writeWords(at, dice);
        index.put({ planId: id, generation: "g", seq: round, lines: findableLines(reader.read(at.studio).plan) });
      }
      const plans = new Map(all.map(({ id, at }) => [id, readPlan(at.doc, at.studio)]));
      for (const text of ASKED) {
        const found = index.find(soughtWords(text), ["a", "b", "c"]).map(({ planId, count }) => [planId, count]);
        expect([text, found.sort()]).toEqual([text, scan(plans, text).map(([id, count]) => [id, count])]);
      }
    }
    temp.remove();
  });
  fc.assert(property, { numRuns: often(3, 60) });
});
