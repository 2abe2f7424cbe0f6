/** The levels of a finding in words, for the margin, the rules and the standards. */
import type { FindingLevel } from "#lib/plan/schema.ts";

export interface LevelCount {
  readonly level: FindingLevel;
  readonly n: number;
  /** "2 must fix". */
  readonly words: string;
}

/** How many findings there are of each level, the weightiest level first; levels without findings are left out. */
export function levelCounts(findings: readonly { readonly level: FindingLevel }[]): LevelCount[] {
  return (["must", "look", "info"] as const).flatMap((level) => {
    const n = findings.filter((finding) => finding.level === level).length;
    return n === 0 ? [] : [{ level, n, words: `${n} ${LEVEL_WORDS[level]}` }];
  });
}

/** What a studio may set a rule to. */
export type StandardLevel = FindingLevel | "off";
export const STANDARD_LEVELS: readonly StandardLevel[] = ["must", "look", "info", "off"];

export const LEVEL_WORDS: Readonly<Record<StandardLevel, string>> = {
  must: "must fix",
  look: "look again",
  info: "for information",
  off: "off",
};
