/** What the plan page's own keys do, for the list of keys. */
import type { Keys, PageKeysProps } from "#app/_shell/key-help.tsx";
import { KIND_HINTS, KIND_WORDS } from "#lib/plan/cue-words.ts";
import { CUE_KINDS } from "#lib/plan/schema.ts";

const RAIL: Keys = [
  ["↑ ↓", "choose the item before or after"],
  ["Home, End", "choose the first or the last item"],
  ["Alt + ↑ ↓", "move the chosen item up or down the rail"],
  ["+ and −", "one step of the grid longer or shorter"],
  ["Enter", "open the item"],
  ["Escape", "from the item back to the rail; during a drag, leave all as it was"],
  ["A", "add after the chosen item"],
  ["W", "the whole class"],
  ["R", "the words of the class, read through"],
  ["Ctrl or Cmd + D", "duplicate the item"],
  ["Delete", "take the item out; it can be put back"],
];
const WHOLE_CLASS: Keys = [
  ["← →", "the item before or after in the same lane"],
  ["↑ ↓", "the lane above or below at the same item"],
  ["Home, End", "the first or the last item"],
  ["Page up, down", "the first or the last lane"],
  ["+ and −", "time wider or narrower"],
  ["0", "the whole class in view"],
  ["Enter", "open the item beside the lanes"],
  ["Space", "choose it and stay in the lanes"],
  ["Escape", "from the item back to the lanes; there, choose nothing"],
  ["W", "back to the rail"],
  ["R", "the words of the class, read through"],
];
const READ_THROUGH: Keys = [
  ["↑ ↓", "the line before or after"],
  ["Page up, down", "the item before or after"],
  ["Home, End", "the first or the last line"],
  ["Enter", "go to the line in its item's script"],
  ["R", "back to the rail"],
  ["W", "the whole class"],
];
const SCRIPT: Keys = [
  ...CUE_KINDS.map((kind, i): Keys[number] => [`Alt + ${i + 1}`, `${KIND_WORDS[kind]}: ${KIND_HINTS[kind]}`]),
  ["Enter", "a new line, of the next kind that the script lacks"],
  ["Backspace", "in an empty line: take the line out"],
  ["{", "a live field: letters narrow the list, arrows choose, Enter puts it in"],
  ["Escape", "close the list and keep the brace"],
  ["Ctrl or Cmd + C, X", "copy or cut; whole lines keep their kind and live fields"],
  ["Tab", "leave the script; Shift + Tab to the bar above it"],
];

export const PLAN_KEYS: PageKeysProps = {
  parts: [
    { title: "On the rail", keys: RAIL },
    { title: "In the whole class", keys: WHOLE_CLASS },
    { title: "In the read-through", keys: READ_THROUGH },
    { title: "In a script", keys: SCRIPT },
  ],
  undo: true,
  note: "By hand: pull at an item's lower end to change its time, pull the item along the rail to reorder. With a finger, choose the item first, then take the bars at its left or its lower end.",
};
