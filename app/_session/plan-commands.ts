/**
 * Every command of a plan's page, with its keys by place. Who handles the keys of a place gives one function for each
 * command that has a key there; the compiler asks for all of them.
 */
import { type CommandAt, type CommandId, type CommandTable, keyParts } from "#app/_parts/commands/command.ts";
import type { PageKeysProps } from "#app/_parts/key-help.tsx";
import { KIND_HINTS, KIND_WORDS } from "#lib/plan/cue-words.ts";
import { isMoveItem, itemById } from "#lib/plan/lookup.ts";
import { CUE_KINDS } from "#lib/plan/schema.ts";
import { hasRounds } from "./changes-shown.ts";
import { beginsBlock } from "./proposals.ts";
import type { PlanSession } from "./session.ts";

/** What a command may need of the plan, the person and the chosen item. */
type Fact =
  | "writing"
  | "item"
  | "heading"
  | "one-sided"
  | "a-change"
  | "a-move"
  | "a-finding"
  | "proposing"
  | "a-plate"
  | "a-block"
  | "a-proposal"
  | ReadingFact;
/** Of a plan that was offered once; of one with plates that changed; of the chosen plate among them, for a lead, read or not. */
type ReadingFact = "a-round" | "a-changed-plate" | "to-be-read";

const SCRIPT_KEYS = [
  ...CUE_KINDS.map((kind, i) => [`Alt + ${i + 1}`, `${KIND_WORDS[kind]}: ${KIND_HINTS[kind]}`] as const),
  ["Enter", "a new line, of the next kind that the script lacks"],
  ["Backspace", "in an empty line: take the line out"],
  ["{", "a live field: letters narrow the list, arrows choose, Enter puts it in"],
  ["Escape", "close the list and keep the brace"],
  ["Ctrl or Cmd + C, X", "copy or cut; whole lines keep their kind and live fields"],
  ["Tab", "leave the script; Shift + Tab to the bar above it"],
] as const;

/** One sentence in the list of keys for several commands. */
const ITEM_BESIDE = "choose the item before or after";
const ITEM_AT_END = "choose the first or the last item";
const ITEM_MOVED = "move the chosen item up or down the rail";
const ITEM_LASTS = "one step longer or shorter";
const CELL_BESIDE = "the item before or after in the same lane";
const LANE_BESIDE = "the lane above or below at the same item";
const CELL_AT_END = "the first or the last item";
const LANE_AT_END = "the first or the last lane";
const TIME_WIDTH = "time wider or narrower";
const LINE_BESIDE = "the line before or after";
const LINE_AT_END = "the first or the last line";
const PART_BESIDE = "the item before or after";

export const PLAN_COMMANDS = {
  places: {
    rail: { title: "On the rail" },
    plan: { title: "Anywhere on the plan’s page, while no text is typed" },
    drag: { title: "While you drag an item", whileTyping: true, needs: ["writing"] },
    lanes: { title: "In the whole class" },
    rounds: { title: "In the rounds of reading" },
    read: { title: "In the read-through", others: [["Enter", "go to the line in its item's script"]] },
    finding: { title: "On a finding" },
    panel: { title: "In the panel of an item or the class", whileTyping: true },
    script: { title: "In a script", others: SCRIPT_KEYS, needs: ["writing"] },
  },
  commands: {
    // The chosen item, on the rail.
    "item-before": { keys: { rail: "ArrowUp" }, help: ITEM_BESIDE },
    "item-after": { keys: { rail: "ArrowDown" }, help: ITEM_BESIDE },
    "first-item": { keys: { rail: "Home" }, help: ITEM_AT_END },
    "last-item": { keys: { rail: "End" }, help: ITEM_AT_END },
    "move-up": { keys: { rail: "Alt+ArrowUp" }, help: ITEM_MOVED, needs: ["writing", "item"] },
    "move-down": { keys: { rail: "Alt+ArrowDown" }, help: ITEM_MOVED, needs: ["writing", "item"] },
    longer: { keys: { rail: "+" }, help: ITEM_LASTS, needs: ["writing", "item"] },
    shorter: { keys: { rail: "-" }, help: ITEM_LASTS, needs: ["writing", "item"] },
    "open-item": { keys: { rail: ["Enter", " "] }, help: "open the item", needs: ["item"] },
    "next-finding": {
      keys: { rail: "f", finding: "f" },
      help: "to the next finding: what must be fixed first",
      needs: ["a-finding"],
    },
    "next-changed": {
      words: "Next changed plate",
      keys: { plan: "n" },
      help: "to the next changed item; for a lead to the next that is not read, while there is one",
      needs: ["a-changed-plate"],
    },
    "changed-before": {
      words: "Changed plate before",
      keys: { plan: "b" },
      help: "to the changed item before, read or not",
      needs: ["a-changed-plate"],
    },
    "mark-read": {
      words: "Mark as read",
      keys: { plan: "m" },
      help: "mark the changed item as read and go on to the next; on one that is read, take the mark back",
      needs: ["to-be-read"],
    },
    "take-fix": { keys: { finding: "Enter" }, help: "fix it with the act that it offers", needs: ["writing"] },
    "take-draft": {
      keys: { rail: "d" },
      help: "take the lines proposed for the item, or for the block of a heading",
      needs: ["writing", "item"],
    },
    comment: { keys: { rail: "c" }, help: "comment on the item", needs: ["item"] },
    "leave-drag": { keys: { drag: "Escape" }, help: "leave everything as it was" },

    // What can be added, and done with the chosen item: buttons over the plan and beside the item.
    add: { words: "Add", keys: { rail: "a" }, help: "add after the chosen item", needs: ["writing"] },
    "add-after": { words: "Add after this", needs: ["writing", "item"] },
    paste: { words: "Paste a list", needs: ["writing"] },
    "fewer-set-ups": { words: "Fewer set-ups", needs: ["writing"] },
    "block-in-fewer": { words: "Fewer set-ups", needs: ["writing", "heading"] },
    "write-set-up": {
      words: "Write the set-up line",
      keys: { rail: "s" },
      help: "write what the item’s set-up lines do not say of its change",
      needs: ["writing", "a-change"],
    },
    "add-other-side": { words: "Add the other side", needs: ["writing", "one-sided"] },
    duplicate: { words: "Duplicate", keys: { rail: "Mod+d" }, help: "duplicate the item", needs: ["writing", "item"] },
    "take-out": {
      words: "Take out",
      keys: { rail: ["Delete", "Backspace"] },
      help: "take the item out; it can be put back",
      needs: ["writing", "item"],
    },
    fit: {
      words: "Fit to length",
      keys: { rail: "t" },
      help: "fit the class to its length",
      needs: ["writing", "a-move"],
    },
    rehearse: { words: "Rehearse", needs: ["a-move"] },
    propose: { words: "Propose a change", needs: ["proposing", "a-plate"] },
    "propose-order": { words: "Propose another order", needs: ["proposing", "a-block"] },
    proposals: { words: "Proposals", needs: ["a-proposal"] },

    // Cells of the whole class.
    "cell-left": { keys: { lanes: "ArrowLeft" }, help: CELL_BESIDE },
    "cell-right": { keys: { lanes: "ArrowRight" }, help: CELL_BESIDE },
    "lane-up": { keys: { lanes: "ArrowUp" }, help: LANE_BESIDE },
    "lane-down": { keys: { lanes: "ArrowDown" }, help: LANE_BESIDE },
    "first-cell": { keys: { lanes: "Home" }, help: CELL_AT_END },
    "last-cell": { keys: { lanes: "End" }, help: CELL_AT_END },
    "first-lane": { keys: { lanes: "PageUp" }, help: LANE_AT_END },
    "last-lane": { keys: { lanes: "PageDown" }, help: LANE_AT_END },
    wider: { words: "Wider", keys: { lanes: "+" }, help: TIME_WIDTH },
    narrower: { words: "Narrower", keys: { lanes: "-" }, help: TIME_WIDTH },
    "all-in-view": { words: "All in view", keys: { lanes: "0" }, help: "the whole class in view" },
    "open-cell": { keys: { lanes: "Enter" }, help: "open the item beside the lanes" },
    "choose-cell": { keys: { lanes: " " }, help: "choose it and stay in the lanes" },
    "choose-nothing": { words: "Close", keys: { lanes: "Escape" }, help: "choose nothing" },

    // Lines of the read-through.
    "line-before": { keys: { read: "ArrowUp" }, help: LINE_BESIDE },
    "line-after": { keys: { read: "ArrowDown" }, help: LINE_BESIDE },
    "part-before": { keys: { read: "PageUp" }, help: PART_BESIDE },
    "part-after": { keys: { read: "PageDown" }, help: PART_BESIDE },
    "first-line": { keys: { read: "Home" }, help: LINE_AT_END },
    "last-line": { keys: { read: "End" }, help: LINE_AT_END },

    // Views, panel and dialogs of the page.
    rail: { words: "Rail", keys: { lanes: "w", read: "r", rounds: "Escape" }, help: "back to the rail" },
    "whole-class": { words: "Whole class", keys: { rail: "w", read: "w", rounds: "w" }, help: "to the whole class" },
    rounds: { words: "Rounds of reading", needs: ["a-round"] },
    "read-through": {
      words: "Read-through",
      keys: { rail: "r", lanes: "r", rounds: "r" },
      help: "to the read-through: all words of the class",
    },
    "leave-panel": {
      words: "Close",
      keys: { panel: "Escape" },
      help: "back to the rail, the lanes or the read-through",
    },
    "show-class": { words: "The class" },
    legend: { words: "Legend" },
  },
} as const satisfies CommandTable<Fact>;

type PlanCommand = CommandId<typeof PLAN_COMMANDS>;
type CommandIn<P extends keyof (typeof PLAN_COMMANDS)["places"]> = CommandAt<typeof PLAN_COMMANDS, P>;

/** The page's: they open something, or change what is open. A feature asks the page for them. */
export const PAGE_COMMANDS = [
  "open-item",
  "next-finding",
  "next-changed",
  "changed-before",
  "mark-read",
  "take-draft",
  "comment",
  "add",
  "add-after",
  "paste",
  "fewer-set-ups",
  "block-in-fewer",
  "fit",
  "rehearse",
  "propose",
  "propose-order",
  "proposals",
  "choose-nothing",
  "rail",
  "whole-class",
  "read-through",
  "rounds",
  "leave-panel",
  "show-class",
  "legend",
] as const satisfies readonly PlanCommand[];
export type PageCommand = (typeof PAGE_COMMANDS)[number];
/** A feature's own: what its keys do among the things that it draws. */
export type OwnCommand<P extends keyof (typeof PLAN_COMMANDS)["places"]> = Exclude<CommandIn<P>, PageCommand>;

/** In the menu of the plan, and beside the chosen item. */
export const MENU = [
  "show-class",
  "rounds",
  "paste",
  "fewer-set-ups",
  "rehearse",
  "proposals",
] as const satisfies readonly PlanCommand[];
export const ITEM_ACTS = [
  "add-after",
  "block-in-fewer",
  "add-other-side",
  "duplicate",
  "take-out",
  "propose",
  "propose-order",
] as const satisfies readonly PlanCommand[];

/** The list of keys for somebody: without what they may never do. */
export const planKeys = ({ writes, leads }: { readonly writes: boolean; readonly leads: boolean }): PageKeysProps => ({
  parts: keyParts(PLAN_COMMANDS, (need) => (need !== "writing" || writes) && (need !== "to-be-read" || leads)),
  ...(writes ? { undo: true, note: BY_HAND } : {}),
});
const BY_HAND =
  "With a mouse: pull an item's lower end to change its time, and the item itself to move it. With a finger: choose the item first, then pull the bar at its left or its lower end.";

/** Whether something that a command needs holds just now. */
export function commandHolds(session: PlanSession): (need: string) => boolean {
  return (need) => {
    const snap = session.getSnapshot();
    const { plan, selectedId, findings, state } = snap;
    const { order, marks } = session.changes.get();
    const item = selectedId === null ? undefined : itemById(plan, selectedId);
    const facts: Readonly<Record<Fact, boolean>> = {
      writing: session.canWrite,
      item: item !== undefined,
      heading: item?.kind === "heading",
      "one-sided": item?.kind === "move" && (item.side === "left" || item.side === "right"),
      "a-change": item?.kind === "move",
      "a-move": plan.items.some(isMoveItem),
      "a-round": hasRounds({ state }),
      "a-changed-plate": order.length > 0,
      "to-be-read": selectedId !== null && typeof marks.get(selectedId)?.read === "boolean",
      "a-finding": findings.some(({ level }) => level !== "info"),
      proposing: session.proposes,
      "a-plate": item?.kind === "move" || item?.kind === "pause",
      "a-block": item !== undefined && beginsBlock(plan.items, item),
      "a-proposal": session.proposes || snap.proposals.length > 0,
    };
    return facts[need as Fact] ?? false;
  };
}
