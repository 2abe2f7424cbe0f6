/** How much a finding weighs, in words: one place for margin, rules and standards. */
import type { FindingLevel } from "#lib/plan/schema.ts";

export interface LevelCount {
  readonly level: FindingLevel;
  readonly n: number;
  /** "2 must fix". */
  readonly words: string;
}

/** How many findings there are of each level that has some, what weighs most first. */
export function levelCounts(findings: readonly { readonly level: FindingLevel }[]): LevelCount[] {
  return (["must", "look", "info"] as const).flatMap((level) => {
    const n = findings.filter((finding) => finding.level === level).length;
    return n === 0 ? [] : [{ level, n, words: `${n} ${LEVEL_WORDS[level]}` }];
  });
}

/** What a house may make of a rule. */
export type StandardLevel = FindingLevel | "off";
export const STANDARD_LEVELS: readonly StandardLevel[] = ["must", "look", "info", "off"];

export const LEVEL_WORDS: Readonly<Record<StandardLevel, string>> = {
  must: "must fix",
  look: "look again",
  info: "for information",
  off: "off",
};
