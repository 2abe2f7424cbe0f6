/** Changes that keep coming late, with logs as a floor writes them. */
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Card } from "#lib/card/schema.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { lateChanges, lateFittings } from "#lib/look-back/late-changes.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { openStudio, type PlanStudio } from "#tests/support/plan-studio.ts";
import { signedClass, taughtLog } from "#tests/support/signed-class.ts";

let s: PlanStudio;
let card: Card;
beforeAll(async () => {
  s = openStudio();
  card = (await signedClass(s)).card;
});
afterAll(() => s.stop());

/** The log of a whole class in which the change into `item` took so many seconds more, held. */
function heldAt(item: string | undefined, seconds: number, session: number): ClassLog {
  const log = taughtLog(card, [], session);
  const rows = log.rows.map((row) =>
    row.phase === "change" && row.item === item ? { ...row, held: row.held + seconds } : row,
  );
  return { ...log, rows };
}

describe("late changes", () => {
  const second = () => taughtLog(card, [], 1).rows.filter(({ phase, took }) => phase === "change" && took > 0)[1]?.item;

  test("a class by the clock tells of none; once is chance; twice of three is told with its median", () => {
    const item = second() ?? "";
    expect(lateChanges(card.plan, [taughtLog(card, [], 1), taughtLog(card, [], 2)])).toEqual([]);
    const once = [heldAt(item, 20, 1), heldAt(item, 0, 2), heldAt(item, 0, 3)];
    expect(lateChanges(card.plan, once)).toEqual([]);
    const twice = [heldAt(item, 20, 1), heldAt(item, 30, 2), heldAt(item, 0, 3)];
    expect(lateChanges(card.plan, twice)).toMatchObject([{ item, late: 2, of: 3, seconds: 25 }]);
  });

  test("twice of five is not half, and four seconds are nothing", () => {
    const item = second() ?? "";
    const rare = [20, 20, 0, 0, 0].map((held, i) => heldAt(item, held, i + 1));
    expect(lateChanges(card.plan, rare)).toEqual([]);
    expect(lateChanges(card.plan, [heldAt(item, 4, 1), heldAt(item, 4, 2)])).toEqual([]);
  });

  test("fittings are those that the change asks for", () => {
    const plan = withSprings(card.plan);
    const item = plan.items.filter(isMoveItem)[1]?.id;
    const logs = [heldAt(item, 20, 1), heldAt(item, 20, 2)];
    expect(lateChanges(plan, logs)).toMatchObject([{ item, fittings: ["springs"] }]);
    const springs = lateFittings(plan, logs).find(({ fitting }) => fitting === "springs");
    expect(springs).toMatchObject({ late: 2, seconds: 20 });
  });
});

/** The class with one more spring on from its second move on, and nothing else to change there. */
function withSprings(plan: Plan): Plan {
  const [first, second] = plan.items.filter(isMoveItem);
  const items = plan.items.map((item) =>
    isMoveItem(item) && first && item.id === second?.id
      ? { ...first, id: item.id, springs: { firm: 2, light: 1 } }
      : item,
  );
  return { ...plan, items };
}
