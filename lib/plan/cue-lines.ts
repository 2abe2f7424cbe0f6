/** What an item's script says, by kind. */
import type { CueKind, MoveItem } from "#lib/plan/schema.ts";

/** True when a line of this kind has words in it. */
export function says(item: MoveItem, kind: CueKind): boolean {
  return (item.script ?? []).some((line) => line.kind === kind && line.text.trim() !== "");
}

const KIND_WORDS: Readonly<Record<CueKind, string>> = {
  setup: "set-up",
  start: "start",
  breath: "breath",
  form: "form",
  focus: "focus",
  easier: "easier way",
  harder: "harder way",
  safety: "safety",
  crew: "crew",
};
export const kindWords = (kind: CueKind): string => KIND_WORDS[kind];
