/** What is said before an account is deleted for good. */
import { listWords, plural } from "#lib/plan/format.ts";
import type { DeletionView } from "#server/people/delete-person.ts";

export const DELETION = {
  gone: "Name, address, password, sessions, notices, invitations and links end, and what is theirs alone is deleted. The pages they have open close. This cannot be undone: if the same address is invited again, somebody new joins.",
  stays:
    "Classes that they still teach in the programme stay there with nobody to teach them: give them to somebody else first. A name also stays where people typed it: in comments, notes and scripts. Backups hold the account until they are deleted, and exports as long as somebody keeps them.",
  own: "This is your own account. You are signed out as soon as it is deleted.",
};

/** What others' work rests on, and under which name it stays. */
export function keptWorkWords({ pseudonym, kept }: Pick<DeletionView, "pseudonym" | "kept">): string {
  const parts = [
    [kept.plans, "plan of theirs", "plans of theirs"],
    [kept.editions, "signed edition of their plans", "signed editions of their plans"],
    [kept.signatures, "edition that they signed", "editions that they signed"],
    [kept.comments, "comment", "comments"],
    [kept.marks, "set of marks about them", "sets of marks about them"],
  ] as const;
  const there = parts.filter(([n]) => n > 0).map(([n, one, many]) => plural(n, one, many));
  const work = there.length === 0 ? "What they did" : `What others’ work rests on (${listWords(there)})`;
  return `${work} stays in the plans and the record as done by “${pseudonym}”.`;
}

/** Months that were signed off cannot change, and hold the names of their coaches; null where there is none. */
export function monthsWords({ months }: DeletionView["kept"]): string | null {
  if (months === 0) return null;
  const name = months === 1 ? "1 signed month names them among its" : `${months} signed months name them among their`;
  return `${name} coaches and cannot change.`;
}

/** Plans that only they can see. */
export const privateWords = (titles: readonly string[]): string =>
  `${plural(titles.length, "plan that only they can see", "plans that only they can see")}: ${listWords(titles.map((title) => `“${title || "without a title"}”`))}.`;
