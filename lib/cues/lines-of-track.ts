/** A cue track back on the scripts it was made from: what became of each line. */
import type { MoveItem, ScriptLine } from "#lib/plan/schema.ts";
import type { Cue, CueTrack, DroppedLine } from "./types.ts";

export interface LineOfTrack {
  readonly line: ScriptLine;
  /** Place among the item's lines, from 0. */
  readonly index: number;
  /** Undefined for a line that is set aside, and for the crew's. */
  readonly cue: Cue | undefined;
  /** Defined for a line that is set aside. */
  readonly dropped: DroppedLine | undefined;
}

/** Gives the lines of an item, in the order of its script. Lines of one kind are said as they were written. */
export function linesOfTrack(track: CueTrack): (item: MoveItem) => LineOfTrack[] {
  const cues = byItem(track.cues);
  const dropped = byItem(track.dropped);
  return (item) => {
    const said = [...(cues.get(item.id) ?? [])];
    const aside = [...(dropped.get(item.id) ?? [])];
    return (item.script ?? []).map((line, index): LineOfTrack => {
      if (line.kind === "crew") return { line, index, cue: undefined, dropped: undefined };
      const left = takeFirst(aside, ({ kind, text }) => kind === line.kind && text === line.text);
      const cue = left ? undefined : takeFirst(said, ({ kind }) => kind === line.kind);
      return { line, index, cue, dropped: left };
    });
  };
}

function byItem<T extends { readonly item: string }>(list: readonly T[]): Map<string, T[]> {
  const map = new Map<string, T[]>();
  for (const one of list) {
    const others = map.get(one.item);
    if (others) others.push(one);
    else map.set(one.item, [one]);
  }
  return map;
}

function takeFirst<T>(list: T[], is: (one: T) => boolean): T | undefined {
  const at = list.findIndex(is);
  return at < 0 ? undefined : list.splice(at, 1)[0];
}
