/** Words of a clause that no reading takes: what they may be about is asked only where the plan has something left to tell. */
import type { Unit } from "./units.ts";

/** Words that stand together. */
export interface Unread {
  /** In lower case; a limb with its side is one word, "left~foot". */
  readonly said: string;
  /** The whole clause, in lower case. */
  readonly clause: string;
  /** Characters of the line. */
  readonly from: number;
  readonly to: number;
  /** "If you like", or words before which something else has to be read. */
  readonly hedged: boolean;
  /** "Once you have rolled in", "first": to be done before the rest of its sentence. */
  readonly early: boolean;
}

const isFill = ({ classes }: Unit): boolean => classes.length === 1 && classes[0] === "fill";

/** Only filling words are passed over. */
export function unreadOf(
  { units, joint }: { readonly units: readonly Unit[]; readonly joint: string },
  isTaken: (at: number) => boolean,
  { text, hedged }: { readonly text: string; readonly hedged: boolean },
): Unread[] {
  const runs: Unit[][] = [[]];
  for (const [at, unit] of units.entries()) {
    if (isTaken(at) || unit.word === "and" || unit.classes.includes("name")) runs.push([]);
    else runs.at(-1)?.push(unit);
  }
  const wordOf = ({ from, to, classes }: Unit): string => {
    const said = text.slice(from, to).toLowerCase();
    return classes.includes("limb") ? said.replace(/\s+/g, "~") : said;
  };
  const wordsOf = (of: readonly Unit[]): string => of.map(wordOf).join(" ");
  const comesFirst = joint === "after" || joint === "until" || joint === "before-that";
  return runs.flatMap((run): Unread[] => {
    const [first, last] = [run[0], run.at(-1)];
    if (!first || !last || run.every(isFill)) return [];
    const said = wordsOf(run);
    const early = comesFirst || /\b(?:first|before)\b/.test(said);
    return [{ said, clause: wordsOf(units), from: first.from, to: last.to, hedged, early }];
  });
}
