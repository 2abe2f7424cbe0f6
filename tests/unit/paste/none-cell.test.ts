/** A cell that says "none" in a table without headings, and a right side in a row of its own. */
import { expect, test } from "vitest";
import { judge } from "./studio.ts";

test.each(["none", "-", "body weight"])("a separate cell with “%s” means no springs, with a note", (cell) => {
  const rows = judge(`Kneeling row\t60\t1 light\nKneeling chest fly\t40\t${cell}`);
  expect(rows[1]?.drafts).toMatchObject([{ seconds: 40, springs: {} }]);
  expect(rows[1]?.notes.join(" ")).toContain(`“${cell}” was read as no springs.`);
});

test("a right side in a separate row faces the other wall, unless its row says where to face", () => {
  const rows = judge("Side lunge L 45 s 1 light\nSide lunge R 45 s 1 light\nSide lunge R 45 s 1 light facing left");
  const facings = rows.map(({ drafts: [draft] }) => (draft && "facing" in draft ? draft.facing : undefined));
  expect(facings).toEqual([undefined, "right", "left"]);
});
