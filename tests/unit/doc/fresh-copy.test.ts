import { expect, test } from "vitest";
import * as Y from "yjs";
import { countPieces } from "#lib/doc/bounds.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { freshCopy } from "#lib/doc/fresh-copy.ts";
import { planParts } from "#lib/doc/layout.ts";
import { readDeleted, readItems, readListed } from "#lib/doc/read.ts";
import { WHOLE_BODY } from "#seed/plans/whole-body.ts";

const said = (doc: Y.Doc) => {
  const { head, carried } = planParts(doc);
  return [readListed(doc), readItems(doc), readDeleted(doc), head.toJSON(), carried.toJSON()];
};

test("a copy has the plan's content, items taken out and unknown keys included, and none of its history", () => {
  const source = createPlanDoc(WHOLE_BODY, { carry: true });
  const { items, head, notes } = planParts(source);
  const [first, second] = [...items.keys()];
  items.get(first ?? "")?.set("deleted", 1_700_000_000_000);
  items.get(second ?? "")?.set("a-later-version", { says: ["this"] });
  const before = countPieces(source);
  // Two keys by turns: what is overwritten never grows together.
  for (let n = 0; n < 4000; n++) head.set(n % 2 ? "gridSeconds" : "countInSeconds", n);
  for (let n = 0; n < 500; n++) notes.insert((n * 7) % (notes.length + 1), "x");
  expect(countPieces(source)).toBeGreaterThan(before + 4000);
  const copy = freshCopy(source);
  expect(said(copy)).toEqual(said(source));
  expect(
    planParts(copy)
      .items.get(second ?? "")
      ?.get("a-later-version"),
  ).toEqual({ says: ["this"] });
  expect(countPieces(copy)).toBeLessThanOrEqual(before + 10);
  // And is whole as bytes.
  const again = new Y.Doc();
  Y.applyUpdate(again, Y.encodeStateAsUpdate(copy));
  expect(said(again)).toEqual(said(source));
});
