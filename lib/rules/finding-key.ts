/** Whether a key is one that a rule could have given: from the network, a key may be anything. */
import type { AnyRule } from "./define/types.ts";
import { RULE_CRASHED } from "./findings.ts";
import { ruleById } from "./registry.ts";

/** Letters of what tells two findings apart; the ids of springs, groups and conditions are shorter. */
const ABOUT_MAX = 100;

interface Keyed {
  readonly rule: string;
  readonly key: string;
  readonly itemIds: readonly string[];
}

/** Its rule is known, it is of one of the rule's messages, and it names these items. The finding itself may have gone. */
export function isKeyOfFinding({ rule, key, itemIds }: Keyed): boolean {
  if (rule === RULE_CRASHED) return isNotice(key);
  const known = ruleById(rule);
  return known !== undefined && messagesOf(known).some((message) => isOf(key, `${rule}:${message}:`, itemIds));
}

const messagesOf = (rule: AnyRule): string[] => Object.keys(rule.messages);

function isOf(key: string, start: string, itemIds: readonly string[]): boolean {
  const fixed = start + [...itemIds].sort().join(",");
  if (key === fixed) return true;
  const about = key.startsWith(`${fixed}:`) ? key.slice(fixed.length + 1) : "";
  return about !== "" && about.length <= ABOUT_MAX;
}

/** Of a check that failed on the plan, or whose studio limits could not be read. */
function isNotice(key: string): boolean {
  const about = /^rule-crashed:(?:crashed|limits-not-read):(.+)$/.exec(key)?.[1];
  return about !== undefined && ruleById(about) !== undefined;
}
