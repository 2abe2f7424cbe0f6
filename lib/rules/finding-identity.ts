/** What makes a finding the same from one check to the next, whatever its words and numbers say now. */
import type { Finding } from "./define/types.ts";

/** Its key; for findings from before there were keys, its rule and items. */
export const findingIdentity = ({ key, rule, items }: Finding): string =>
  key ?? `${rule}:${[...items].sort().join(",")}`;
