/** What the commands about the chosen item do: all but opening it. */
import type { PlanItem } from "#lib/plan/schema.ts";
import { addOtherSide, duplicate, moveBy, stepItemSeconds, takeOut } from "./acts.ts";
import type { OwnCommand } from "./plan-commands.ts";
import type { PlanSession } from "./session.ts";
import { writeSetUp } from "./take-fix.ts";

export type ItemCommand = OwnCommand<"rail"> | "add-other-side";

export function itemCommands(session: PlanSession): Readonly<Record<ItemCommand, () => void>> {
  const items = () => session.getSnapshot().plan.items;
  const select = (item: PlanItem | undefined) => session.select(item?.id ?? null);
  const withItem = (act: (item: PlanItem) => void) => () => {
    const { selectedId } = session.getSnapshot();
    const item = items().find(({ id }) => id === selectedId);
    if (item) act(item);
  };
  return {
    "item-before": () => selectBeside(session, -1),
    "item-after": () => selectBeside(session, 1),
    "first-item": () => select(items()[0]),
    "last-item": () => select(items().at(-1)),
    "move-up": withItem(({ id }) => moveBy(session, id, -1)),
    "move-down": withItem(({ id }) => moveBy(session, id, 1)),
    longer: withItem((item) => stepItemSeconds(session, item, 1)),
    shorter: withItem((item) => stepItemSeconds(session, item, -1)),
    duplicate: withItem((item) => duplicate(session, item)),
    "take-out": withItem((item) => takeOut(session, item)),
    "write-set-up": withItem(({ id }) => writeSetUp(session, id)),
    "add-other-side": withItem((item) => item.kind === "move" && addOtherSide(session, item)),
  };
}

/** With nothing chosen, the first item. */
function selectBeside(session: PlanSession, by: 1 | -1): void {
  const { plan, selectedId } = session.getSnapshot();
  const at = plan.items.findIndex((item) => item.id === selectedId);
  const next = at < 0 ? plan.items[0] : plan.items[at + by];
  if (next) session.select(next.id);
}
