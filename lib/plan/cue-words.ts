/** The words for cue kinds and live fields, shared by editor, margin and print. */

import { CUE_KINDS, type CueKind, LIVE_FIELDS, type LineBegin, type LiveField } from "#lib/plan/schema.ts";
import { secondsWords } from "./format.ts";

export const KIND_WORDS: Readonly<Record<CueKind, string>> = {
  setup: "set-up",
  start: "start",
  breath: "breath",
  form: "form",
  focus: "focus",
  easier: "easier",
  harder: "harder",
  safety: "safety",
  crew: "crew",
};

/** What each kind is for, as a hint beside its word. */
export const KIND_HINTS: Readonly<Record<CueKind, string>> = {
  setup: "springs, place, facing, hands and feet, before the start",
  start: "how it begins",
  breath: "when to breathe out and in",
  form: "how it should look",
  focus: "what to feel",
  easier: "an easier way",
  harder: "a harder way",
  safety: "who should take care, and what to do instead",
  crew: "for the crew, never said to the class",
};

export const FIELD_WORDS: Readonly<Record<LiveField, string>> = {
  "next-move": "next move",
  "seconds-left": "seconds left",
  "minutes-left": "minutes left",
  side: "side",
  springs: "springs",
  move: "this move",
};

export const isCueKind = (value: unknown): value is CueKind => CUE_KINDS.some((kind) => kind === value);
export const isLiveField = (value: unknown): value is LiveField => LIVE_FIELDS.some((field) => field === value);

/** The kind that a stored attribute stands for. An unknown one is read as form, as in the plan file. */
export const kindOf = (value: unknown): CueKind => (isCueKind(value) ? value : "form");

/** When in its item a line begins: "after 20 s", "with 15 s left", "when it comes". */
export function beginWords(at: LineBegin | undefined): string {
  if (!at) return "when it comes";
  return "afterSeconds" in at ? `after ${secondsWords(at.afterSeconds)}` : `with ${secondsWords(at.leftSeconds)} left`;
}
