/** The keys of the list in which another order is proposed. The dialog says them over the list. */
import type { CommandTable } from "#app/_parts/commands/command.ts";

export const ORDER_COMMANDS = {
  places: { order: { title: "In another order that one proposes" } },
  commands: {
    "place-up": { keys: { order: "Alt+ArrowUp" }, help: "move the item up or down" },
    "place-down": { keys: { order: "Alt+ArrowDown" }, help: "move the item up or down" },
  },
} as const satisfies CommandTable;
