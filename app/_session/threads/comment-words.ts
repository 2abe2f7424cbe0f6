/** The sentences of a comment field. Pure. */
import { plural } from "#lib/plan/format.ts";
import type { Offers } from "#lib/remarks/offers.ts";

export const COMMENT_WORDS = {
  hint: "Type @ to name a colleague, / for a remark of the studio.",
  empty: "Write your comment first.",
} as const;

export const OFFERED_NAME: Readonly<Record<Offers["kind"], string>> = {
  names: "Colleagues",
  remarks: "Remarks of the studio",
};

/** For a screen reader, when the list opens or changes. */
export const offeredWords = ({ kind, choices }: Offers): string => {
  const count = kind === "names" ? plural(choices.length, "name") : plural(choices.length, "remark");
  return `${count}: arrows choose, Enter takes.`;
};
