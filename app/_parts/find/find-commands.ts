/** The keys of looking for something: one on every page of the studio, and those of the dialog. */
import { type CommandTable, keyParts } from "../commands/command.ts";

const RESULT_BESIDE = "the result before or after; from the first, back to the field";
const RESULT_AT_END = "the first or the last result";

export const FIND_COMMANDS = {
  places: {
    page: { title: "To find something" },
    field: { title: "In what is looked for", whileTyping: true },
    results: { title: "In what was found", others: [["Enter", "open it"]] },
  },
  commands: {
    find: { keys: { page: "/" }, help: "find plans, moves, classes, pages, people, rules and help", words: "Find" },
    "into-results": { keys: { field: "ArrowDown" }, help: "into the results" },
    "open-first": { keys: { field: "Enter" }, help: "open the first result" },
    "result-before": { keys: { results: "ArrowUp" }, help: RESULT_BESIDE },
    "result-after": { keys: { results: "ArrowDown" }, help: RESULT_BESIDE },
    "first-result": { keys: { results: "Home" }, help: RESULT_AT_END },
    "last-result": { keys: { results: "End" }, help: RESULT_AT_END },
  },
} as const satisfies CommandTable;

/** In the help of a page: the key that opens the dialog. Those of the dialog are told in it. */
export const FIND_KEYS = {
  parts: keyParts({ places: { page: FIND_COMMANDS.places.page }, commands: { find: FIND_COMMANDS.commands.find } }),
  shared: true,
};
