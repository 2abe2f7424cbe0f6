/** Every table of commands: each of its keys is listed and asks for its own command, and no key asks for two. */
import { readdirSync, readFileSync } from "node:fs";
import { join, relative, resolve } from "node:path";
import { describe, expect, test, vi } from "vitest";
import { SHEET_COMMANDS } from "#app/_month/month-commands.ts";
import {
  ariaShortcuts,
  type Command,
  type CommandTable,
  keyParts,
  type Press,
  pressesOf,
  printedPresses,
} from "#app/_parts/commands/command.ts";
import { COMMON_COMMANDS, UNDO_COMMANDS, undoKey } from "#app/_parts/commands/common.ts";
import { commandOfKey, type KeyEvent, keyHandler } from "#app/_parts/commands/keys.ts";
import { FIND_COMMANDS } from "#app/_parts/find/find-commands.ts";
import { ORDER_COMMANDS } from "#app/_propose/order-commands.ts";
import { ITEM_ACTS, MENU, PAGE_COMMANDS, PLAN_COMMANDS } from "#app/_session/plan-commands.ts";
import { LIBRARY_COMMANDS } from "#app/library/library-commands.ts";
import { actOfKey } from "#lib/floor/keys.ts";

const TABLES: Readonly<Record<string, CommandTable>> = {
  plan: PLAN_COMMANDS,
  month: SHEET_COMMANDS,
  library: LIBRARY_COMMANDS,
  "another order": ORDER_COMMANDS,
  common: COMMON_COMMANDS,
  find: FIND_COMMANDS,
  undo: UNDO_COMMANDS,
};

interface Bound {
  readonly table: CommandTable;
  readonly place: string;
  readonly id: string;
  readonly command: Command;
  readonly press: Press;
}
const bound = (table: CommandTable): Bound[] =>
  Object.entries(table.commands).flatMap(([id, command]) =>
    Object.keys(command.keys ?? {}).flatMap((place) =>
      pressesOf(command, place).map((press) => ({ table, place, id, command, press })),
    ),
  );

/** A press as a keyboard sends it: with Cmd in the place of Ctrl on a Mac. */
function keyEvent(press: Press, mac = false): KeyEvent & { stopped: number } {
  const held = (name: string) => press.includes(`${name}+`) && press !== "+";
  const event = {
    key: press.replace(/^(?:Mod\+|Alt\+|Shift\+)+/, ""),
    ctrlKey: held("Mod") && !mac,
    metaKey: held("Mod") && mac,
    altKey: held("Alt"),
    shiftKey: held("Shift"),
    target: null,
    stopped: 0,
    preventDefault: () => {
      event.stopped++;
    },
    stopPropagation: () => undefined,
  };
  return event;
}

describe.each(Object.entries(TABLES))("the commands of %s", (_name, table) => {
  test("each key runs its own command and no other, with Ctrl and with Cmd", () => {
    for (const { place, id, press } of bound(table)) {
      for (const mac of [false, true]) {
        const ran: string[] = [];
        const run = Object.fromEntries(Object.keys(table.commands).map((one) => [one, () => ran.push(one)]));
        const event = keyEvent(press, mac);
        keyHandler(table, place, { run: run as never })(event);
        expect([place, press, ran, event.stopped]).toEqual([place, press, [id], 1]);
      }
    }
  });

  test("no two commands of a place have one key", () => {
    const keys = bound(table).map(({ place, press }) => `${place} ${press.toLowerCase()}`);
    expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
  });

  test("each place and each sentence is known, and each key stands in the list under its place", () => {
    const parts = keyParts(table);
    for (const { place, command, press } of bound(table)) {
      const part = parts.find(({ title }) => title === table.places[place]?.title);
      const line = part?.keys.find(([, help]) => help === command.help);
      expect(command.help, `${place} ${press}`).toBeTruthy();
      expect(`${place}: ${line?.[0]}`).toContain(printedPresses([press]).split(" + ").at(-1) ?? "nothing");
    }
  });

  test("a command without a key has words for its button", () => {
    const mute = Object.entries(table.commands).filter(([, { keys, words }]) => !keys && !words);
    expect(mute.map(([id]) => id)).toEqual([]);
  });
});

test("the key that finds is free in every place of every page, on the floor too", () => {
  const taken = Object.values(TABLES)
    .flatMap(bound)
    .filter(({ id }) => id !== "find");
  expect(taken.filter(({ press }) => press === FIND_COMMANDS.commands.find.keys.page)).toEqual([]);
  expect(actOfKey(FIND_COMMANDS.commands.find.keys.page)).toBeUndefined();
});

describe("keys of a place", () => {
  const run = { "list-keys": vi.fn() };

  test("a key with another modifier is left to the browser", () => {
    for (const more of [{ ctrlKey: true }, { metaKey: true }, { altKey: true }]) {
      const event = { ...keyEvent("?"), ...more };
      keyHandler(COMMON_COMMANDS, "page", { run })(event);
    }
    expect(run["list-keys"]).not.toHaveBeenCalled();
  });

  test("capitals and small letters are one key, and so are = and +", () => {
    expect(commandOfKey(PLAN_COMMANDS, "rail", keyEvent("A"))).toBe("add");
    expect(commandOfKey(PLAN_COMMANDS, "rail", keyEvent("="))).toBe("longer");
  });

  test("a command that lacks what it needs leaves its key alone", () => {
    const nothing = new Proxy({} as never, { get: () => expect.unreachable("it ran") });
    const event = keyEvent("Delete") as ReturnType<typeof keyEvent>;
    keyHandler(PLAN_COMMANDS, "rail", { run: nothing, holds: (need) => need !== "item" })(event);
    expect(event.stopped).toBe(0);
  });

  test("a plain key is a letter where somebody types; one with Ctrl or Cmd, or of a field's own place, is not", () => {
    class Box extends EventTarget {}
    class Input extends Box {
      type = "text";
    }
    const globals = { HTMLElement: Box, HTMLInputElement: Input, HTMLTextAreaElement: Box, HTMLSelectElement: Box };
    for (const [name, value] of Object.entries(globals)) vi.stubGlobal(name, value);
    const target = new Input();
    const help = { ...keyEvent("?"), target };
    const intoList = vi.fn();
    const undo = vi.fn();
    keyHandler(COMMON_COMMANDS, "page", { run })(help);
    keyHandler(LIBRARY_COMMANDS, "search", { run: { "into-list": intoList } })({ ...keyEvent("ArrowDown"), target });
    keyHandler(UNDO_COMMANDS, "page", { run: { undo, redo: undo } })({ ...keyEvent("Mod+z"), target });
    vi.unstubAllGlobals();
    expect([run["list-keys"], intoList, undo].map((asked) => asked.mock.calls.length)).toEqual([0, 1, 1]);
  });

  test("undo and redo, and no other key", () => {
    expect(["Mod+z", "Mod+Shift+z", "Mod+y", "z", "Alt+z", "Mod+d"].map((press) => undoKey(keyEvent(press)))).toEqual([
      "undo",
      "redo",
      "redo",
      null,
      null,
      null,
    ]);
  });
});

describe("keys as they are printed", () => {
  test.each([
    [["ArrowUp", "ArrowDown"], "↑ ↓"],
    [["Alt+ArrowUp", "Alt+ArrowDown"], "Alt + ↑ ↓"],
    [["Home", "End"], "Home, End"],
    [["+", "-"], "+, −"],
    [["Enter", " "], "Enter, Space"],
    [["Mod+d"], "Ctrl or Cmd + D"],
    [["Mod+Shift+z", "Mod+y"], "Ctrl or Cmd + Shift + Z, Ctrl or Cmd + Y"],
  ])("%j: %s", (presses, printed) => expect(printedPresses(presses)).toBe(printed));

  test("for assistive technology, both ways of Mod", () => {
    expect(ariaShortcuts(PLAN_COMMANDS.commands.duplicate, "rail")).toBe("Control+D Meta+D");
    expect(ariaShortcuts(PLAN_COMMANDS.commands.wider, "lanes")).toBe("Plus");
    expect(ariaShortcuts(PLAN_COMMANDS.commands.duplicate, "lanes")).toBeUndefined();
  });
});

describe("the plan's commands", () => {
  test("what stands in a row of buttons has words", () => {
    const commands: Readonly<Record<string, Command>> = PLAN_COMMANDS.commands;
    expect([...MENU, ...ITEM_ACTS].filter((id) => !commands[id]?.words)).toEqual([]);
    expect(new Set(PAGE_COMMANDS).size).toBe(PAGE_COMMANDS.length);
  });
});

/** Widgets whose own keys come with their role (a listbox, a field with a draft), and screens with a table of their own. */
const OWN_KEYS = [
  /^app\/floor\//, // lib/floor/keys.ts
  /^app\/_parts\/commands\//,
  /^app\/_parts\/(?:move-picker|number-field)\.tsx$/,
  /^app\/_session\/threads\/(?:comment-form\.tsx|use-offers\.ts)$/,
  /^app\/_margin\/accept-form\.tsx$/,
  /^app\/_paste\/doubts\.tsx$/,
  /^app\/_parts\/use-fold\.ts$/,
  /^app\/studio\/_readings\/readings-table\.tsx$/,
];

test("no key is compared by hand beside the tables", () => {
  const root = resolve(import.meta.dirname, "../../..");
  const files = readdirSync(join(root, "app"), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)));
  const byHand = files.filter((path) => {
    if (OWN_KEYS.some((own) => own.test(path))) return false;
    const text = readFileSync(join(root, path), "utf8");
    return /KeyboardEvent|onKeyDown|"keydown"/.test(text) && /\bkey (?:===|!==) "|switch \((?:event\.)?key/.test(text);
  });
  expect(byHand).toEqual([]);
});
