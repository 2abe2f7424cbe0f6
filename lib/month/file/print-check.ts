/** The findings of a month as the command writes them. */
import type { MonthFinding, MonthLevel } from "../types.ts";
import { mapped, shownMinutes, shownSeconds, shownShare } from "./print-sums.ts";

export function printCheck(findings: readonly MonthFinding[]) {
  const count = (level: MonthLevel): number => findings.filter((finding) => finding.level === level).length;
  return {
    counts: { must: count("must"), look: count("look"), info: count("info") },
    findings: findings.map(printFinding),
  };
}

const printFinding = ({ id, rule, level, slots, message, values }: MonthFinding) => ({
  id,
  rule,
  level,
  slots,
  message,
  values: Object.fromEntries(Object.entries(values).map(([name, value]) => [name, shownValue(name, value)])),
});

const ROUNDED: Readonly<Record<string, (x: number) => number>> = {
  seconds: shownSeconds,
  likeness: shownShare,
  change: shownShare,
};

/** Minutes and counts are whole. */
function shownValue(name: string, value: unknown): unknown {
  if (typeof value === "number") return (ROUNDED[name] ?? shownMinutes)(value);
  // The shares of `theme-not-kept`, by muscle group.
  return typeof value === "object" && value !== null ? mapped(value as Record<string, number>, shownShare) : value;
}
