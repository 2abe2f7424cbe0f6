/** Maps a cue track back to the scripts: what became of each line. */
import type { MoveItem, ScriptLine } from "#lib/plan/schema.ts";
import type { Cue, CueTrack, DroppedLine } from "./types.ts";

export interface LineOfTrack {
  readonly line: ScriptLine;
  /** Index among the item's lines. */
  readonly index: number;
  /** Undefined for lines that are set aside and for crew lines. */
  readonly cue: Cue | undefined;
  /** Defined only for lines that are set aside. */
  readonly dropped: DroppedLine | undefined;
}

/**
 * Returns a function that gives an item's lines in script order. A track read from a file does not say which line a cue is:
 * there, lines of one kind are taken to be said in the order written.
 */
export function linesOfTrack(track: CueTrack): (item: MoveItem) => LineOfTrack[] {
  const cues = byItem(track.cues);
  const dropped = byItem(track.dropped);
  return (item) => {
    const said = [...(cues.get(item.id) ?? [])];
    const aside = [...(dropped.get(item.id) ?? [])];
    return (item.script ?? []).map((line, index): LineOfTrack => {
      if (line.kind === "crew") return { line, index, cue: undefined, dropped: undefined };
      const isOther = (one: Cue | DroppedLine): boolean => one.line !== undefined && one.line !== index;
      const left = takeFirst(aside, (one) => !isOther(one) && one.kind === line.kind && one.text === line.text);
      const cue = left ? undefined : takeFirst(said, (one) => !isOther(one) && one.kind === line.kind);
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
