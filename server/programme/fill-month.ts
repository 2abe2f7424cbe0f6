/** Plans for a month's empty classes, worked out from the month as the server has it. Nothing is written: the page puts them in. */
import { expandMonth } from "#lib/month/expand.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import type { Actor } from "#lib/policy/can.ts";
import { fail, ok, type Result } from "#server/base/result.ts";
import type { ExplainedFill } from "#server/context/fills.ts";
import type { Springline } from "#server/context/springline.ts";
import { mayWriteMonth } from "./import-month.ts";
import { readMonthFileOf } from "./read-month-file.ts";

export interface FilledMonth extends ExplainedFill {
  /** The classes of the answer as they were filled: whoever puts the plans in later sees what changed meanwhile. */
  readonly slots: readonly MonthSlot[];
}

const BUSY = fail(
  503,
  "fills-wait",
  "Plans are being worked out for several months already. Try again in a minute; nothing was changed.",
);
const BROKEN = fail(500, "fill-failed", "The plans could not be worked out. Nothing was changed; try again.");

/** With the plans that the asker may know. Errors: 401, 403, 404; 409, 503 for an unreadable document; 503 fills-wait. */
export async function fillMonthOf(app: Springline, actor: Actor, month: string): Promise<Result<FilledMonth>> {
  const may = mayWriteMonth(app, actor, month);
  if (!may.ok) return may;
  const file = readMonthFileOf(app, actor, month);
  if (!file.ok) return file;
  const asked = app.fills.fill(file.value);
  if (!asked) return BUSY;
  try {
    const found = await asked;
    const ids = new Set(found.answer.slots.map(({ slot }) => slot));
    return ok({ ...found, slots: expandMonth(file.value).filter(({ id }) => ids.has(id)) });
  } catch (error) {
    app.log.error({ month, err: error }, "a month could not be filled");
    return BROKEN;
  }
}
