/** How much a finding weighs, in words: one place for margin, rules and standards. */
import type { FindingLevel } from "#lib/plan/schema.ts";

/** What a house may make of a rule. */
export type HouseLevel = FindingLevel | "off";
export const HOUSE_LEVELS: readonly HouseLevel[] = ["must", "look", "info", "off"];

export const LEVEL_WORDS: Readonly<Record<HouseLevel, string>> = {
  must: "must fix",
  look: "look again",
  info: "for information",
  off: "off",
};
