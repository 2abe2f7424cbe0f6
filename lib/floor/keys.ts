/** Which key does what on the floor: keyboards, pedals and presenters, with the device's own choices before the usual ones. */

export const KEY_ACTS = ["hold-or-go-on", "next", "back", "extend", "end-on-time", "undo", "help"] as const;
export type KeyAct = (typeof KEY_ACTS)[number];
/** Key, as `KeyboardEvent.key` names it, to act. */
export type KeyChoice = Readonly<Record<string, KeyAct>>;

/** Pedals send Page Up and Page Down or arrows, presenters also Enter, "b" or "." : common practice, no source. */
const USUAL: KeyChoice = {
  " ": "hold-or-go-on",
  b: "hold-or-go-on",
  ".": "hold-or-go-on",
  ArrowRight: "next",
  ArrowDown: "next",
  PageDown: "next",
  Enter: "next",
  ArrowLeft: "back",
  ArrowUp: "back",
  PageUp: "back",
  "+": "extend",
  e: "end-on-time",
  u: "undo",
  Backspace: "undo",
  "?": "help",
};

/** Keys that a browser or a person who goes from button to button needs. */
const NEVER = new Set(["Tab", "Escape", "Shift", "Control", "Alt", "Meta", "F5", "F11", "F12"]);

const named = (key: string): string => (key.length === 1 ? key.toLowerCase() : key);

export function actOfKey(key: string, chosen: KeyChoice = {}): KeyAct | undefined {
  const name = named(key);
  if (Object.hasOwn(chosen, name)) return chosen[name];
  return Object.hasOwn(USUAL, name) ? USUAL[name] : undefined;
}

/** The choice with one key more, or null for a key that cannot be chosen. */
export const withKey = (chosen: KeyChoice, key: string, act: KeyAct): KeyChoice | null =>
  NEVER.has(key) ? null : { ...chosen, [named(key)]: act };

const WORDS: Readonly<Record<string, string>> = {
  " ": "Space",
  ".": "full stop",
  ArrowRight: "Right",
  ArrowDown: "Down",
  ArrowLeft: "Left",
  ArrowUp: "Up",
  PageDown: "Page Down",
  PageUp: "Page Up",
};
export const KEY_ACT_WORDS: Readonly<Record<KeyAct, string>> = {
  "hold-or-go-on": "hold the class, and go on",
  next: "skip: into the change, then into the move",
  back: "back to the start of this move; twice, to the one before. Right after a skip: takes the skip back",
  extend: "more seconds for what is going on",
  "end-on-time": "end on time: show what changes; again, take the first way",
  undo: "undo the last touch, the time that passed kept",
  help: "this table",
};

/** The keys of an act in words, the chosen ones first. */
export function keysOfAct(act: KeyAct, chosen: KeyChoice = {}): string {
  const all = [...Object.keys(chosen), ...Object.keys(USUAL).filter((key) => !Object.hasOwn(chosen, key))];
  const mine = all.filter((key) => actOfKey(key, chosen) === act);
  return mine.map((key) => WORDS[key] ?? (key.length === 1 ? key.toUpperCase() : key)).join(", ") || "no key";
}

/** A foot on a pedal trembles: the same act again within this time is one tap. ms. */
export const SAME_TAP_MS = 250;

/** Says of each press whether it counts. The same act again counts only after a quiet time, measured from its last press. */
export function steadyTaps(): (act: KeyAct, at: number) => boolean {
  const last = new Map<KeyAct, number>();
  return (act, at) => {
    const since = at - (last.get(act) ?? Number.NEGATIVE_INFINITY);
    last.set(act, at);
    return since >= SAME_TAP_MS;
  };
}
