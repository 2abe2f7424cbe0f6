/** Which key does what on the floor, for keyboards, pedals and presenters. The device's own choices override the defaults. */

export const KEY_ACTS = ["hold-or-go-on", "next", "back", "extend", "end-on-time", "undo", "help"] as const;
export type KeyAct = (typeof KEY_ACTS)[number];
/** From key, as in `KeyboardEvent.key`, to act. */
export type KeyChoice = Readonly<Record<string, KeyAct>>;

/** Pedals send Page Up and Page Down or arrows, presenters also Enter, "b" or "." (common practice, no source). */
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

/** Keys that the browser needs, or people who move between buttons by keyboard. */
const NEVER = new Set(["Tab", "Escape", "Shift", "Control", "Alt", "Meta", "F5", "F11", "F12"]);

const named = (key: string): string => (key.length === 1 ? key.toLowerCase() : key);

export function actOfKey(key: string, chosen: KeyChoice = {}): KeyAct | undefined {
  const name = named(key);
  if (Object.hasOwn(chosen, name)) return chosen[name];
  return Object.hasOwn(USUAL, name) ? USUAL[name] : undefined;
}

/** The choices with one more key, or null when that key cannot be chosen. */
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
  "hold-or-go-on": "hold the class, or go on",
  next: "skip to the change, then to the move",
  back: "back to the start of this move, twice to the move before; right after a skip, undo the skip",
  extend: "add seconds to the current step",
  "end-on-time": "end on time: show the ways; press again to take the first",
  undo: "undo the last touch; the clock does not go back",
  help: "this table",
};

/** The keys of an act in words, the device's own choices first. */
export function keysOfAct(act: KeyAct, chosen: KeyChoice = {}): string {
  const all = [...Object.keys(chosen), ...Object.keys(USUAL).filter((key) => !Object.hasOwn(chosen, key))];
  const mine = all.filter((key) => actOfKey(key, chosen) === act);
  return mine.map((key) => WORDS[key] ?? (key.length === 1 ? key.toUpperCase() : key)).join(", ") || "no key";
}

/** A pedal may bounce under the foot: the same act within this time counts as one tap. ms. */
export const SAME_TAP_MS = 250;

/** Makes a filter that says whether a press counts: a repeated act counts only after a quiet time since its last press. */
export function steadyTaps(): (act: KeyAct, at: number) => boolean {
  const last = new Map<KeyAct, number>();
  return (act, at) => {
    const since = at - (last.get(act) ?? Number.NEGATIVE_INFINITY);
    last.set(act, at);
    return since >= SAME_TAP_MS;
  };
}
