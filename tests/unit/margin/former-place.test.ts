import { expect, it } from "vitest";
import { createPlanDoc } from "#lib/doc/create.ts";
import { deleteItem, moveItem } from "#lib/doc/write.ts";
import { formerPlace } from "#lib/margin/former-place.ts";
import { FIRST_TRY } from "#seed/plans/first-try.ts";

const ids = FIRST_TRY.items.map(({ id }) => id);
const [, second = "", third = "", fourth = ""] = ids;
const last = ids.at(-1) ?? "";

it("an item that was taken out stood before the one that now follows its place", () => {
  const doc = createPlanDoc(FIRST_TRY, { carry: true });
  const w = { doc, origin: null };
  deleteItem(w, second, 1);
  expect(formerPlace(doc, second)).toBe(third);
  deleteItem(w, third, 2);
  expect(formerPlace(doc, second)).toBe(fourth);
  deleteItem(w, last, 3);
  expect(formerPlace(doc, last)).toBeNull();
  moveItem(w, fourth, null);
  expect(formerPlace(doc, second)).toBe(ids[4]);
  expect(formerPlace(doc, "nobody")).toBeUndefined();
});
