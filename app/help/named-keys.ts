/** What the braces of a text of help name: keys and buttons of the command tables, and keys of the floor. */
import { MONTH_KEYS, PANEL_COMMANDS, SHEET_COMMANDS } from "#app/_month/month-commands.ts";
import {
  type Command,
  type CommandTable,
  type KeyPart,
  keyParts,
  pressesOf,
  printedPresses,
} from "#app/_parts/commands/command.ts";
import { COMMON_COMMANDS, UNDO_COMMANDS } from "#app/_parts/commands/common.ts";
import { FIND_COMMANDS } from "#app/_parts/find/find-commands.ts";
import { ORDER_COMMANDS } from "#app/_propose/order-commands.ts";
import { PLAN_COMMANDS } from "#app/_session/plan-commands.ts";
import { KEY_ACT_WORDS, KEY_ACTS, keysOfAct } from "#lib/floor/keys.ts";
import { LIBRARY_COMMANDS, LIBRARY_KEYS } from "../library/library-commands.ts";

const TABLES: Readonly<Record<string, CommandTable>> = {
  plan: PLAN_COMMANDS,
  month: SHEET_COMMANDS,
  panel: PANEL_COMMANDS,
  library: LIBRARY_COMMANDS,
  find: FIND_COMMANDS,
  common: COMMON_COMMANDS,
  undo: UNDO_COMMANDS,
};

const commandOf = (table: string, id: string): Command | undefined => {
  const { commands } = TABLES[table] ?? {};
  return commands && Object.hasOwn(commands, id) ? commands[id] : undefined;
};

/** As it is printed, of "plan.rail.fit" or "floor.next" taken apart; undefined when there is no such key. */
export function namedKey([table = "", ...rest]: readonly string[]): string | undefined {
  if (table === "floor") {
    const act = KEY_ACTS.find((one) => one === rest[0]);
    // One of several that do the same is enough to tell.
    return act && keysOfAct(act).split(", ")[0];
  }
  const [place = "", id = ""] = rest;
  const command = commandOf(table, id);
  const presses = command ? pressesOf(command, place) : [];
  return presses.length > 0 ? printedPresses(presses.slice(0, 1)) : undefined;
}

/** The words on a command's button, of "plan.fit" taken apart; undefined when there is no such button. */
export const namedButton = ([table = "", id = ""]: readonly string[]): string | undefined =>
  commandOf(table, id)?.words;

interface KeysOfPart {
  readonly title: string;
  readonly parts: readonly KeyPart[];
}

/** Every key, part by part of the product. */
export const ALL_KEYS: readonly KeysOfPart[] = [
  {
    title: "Everywhere",
    parts: [...keyParts(COMMON_COMMANDS), ...keyParts(FIND_COMMANDS), ...keyParts(UNDO_COMMANDS)],
  },
  { title: "In a plan", parts: [...keyParts(PLAN_COMMANDS), ...keyParts(ORDER_COMMANDS)] },
  { title: "In a month", parts: MONTH_KEYS.parts },
  { title: "In the library", parts: LIBRARY_KEYS.parts },
  {
    title: "On the floor",
    parts: [
      {
        title: "Keyboards, pedals and presenters; a device can choose its own",
        keys: KEY_ACTS.map((act) => [keysOfAct(act), KEY_ACT_WORDS[act]] as const),
      },
    ],
  },
];
