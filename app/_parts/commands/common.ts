/** The keys that are the same on every page, and those of pages on which one can undo. */

import type { CommandTable } from "./command.ts";
import { commandOfKey, type Pressed } from "./keys.ts";

export const COMMON_COMMANDS = {
  places: {
    page: {
      title: "On every page",
      others: [
        ["Tab, Shift + Tab", "to the next thing that can be used, or the one before"],
        ["Enter", "press the chosen button, follow the chosen link"],
        ["Space", "press the chosen button, tick the chosen box"],
        ["Escape", "close what lies over the page"],
      ],
    },
  },
  commands: { "list-keys": { keys: { page: "?" }, help: "this help", words: "Help and keys" } },
} as const satisfies CommandTable;

export const UNDO_COMMANDS = {
  places: { page: { title: "Undo and redo" } },
  commands: {
    undo: { keys: { page: "Mod+z" }, help: "undo your own last act", words: "Undo" },
    redo: { keys: { page: ["Mod+Shift+z", "Mod+y"] }, help: "redo it", words: "Redo" },
  },
} as const satisfies CommandTable;

/** Which way a key for undo or redo goes; null for other keys. */
export const undoKey = (event: Pressed): "undo" | "redo" | null => commandOfKey(UNDO_COMMANDS, "page", event) ?? null;
