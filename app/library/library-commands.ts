/** The keys of the library's search and of its list of moves. */
import { type CommandAt, type CommandTable, keyParts } from "#app/_parts/commands/command.ts";

const MOVE_BESIDE = "the move before or after; from the first, up to the search";
const MOVE_AT_END = "the first or the last move";

export const LIBRARY_COMMANDS = {
  places: { search: { title: "In the search", whileTyping: true }, moves: { title: "In the list of moves" } },
  commands: {
    "into-list": { keys: { search: ["ArrowDown", "Enter"] }, help: "into the list of moves" },
    "move-before": { keys: { moves: "ArrowUp" }, help: MOVE_BESIDE },
    "move-after": { keys: { moves: "ArrowDown" }, help: MOVE_BESIDE },
    "first-move": { keys: { moves: "Home" }, help: MOVE_AT_END },
    "last-move": { keys: { moves: "End" }, help: MOVE_AT_END },
  },
} as const satisfies CommandTable;

export type MoveListCommand = CommandAt<typeof LIBRARY_COMMANDS, "moves">;
export const LIBRARY_KEYS = { parts: keyParts(LIBRARY_COMMANDS) };
