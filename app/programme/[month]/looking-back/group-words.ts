/** What was done of what was planned, group by group of muscles, in words. Pure. */

import { percent } from "#lib/formats/percent.ts";
import type { GroupSum } from "#lib/look-back/groups.ts";
import { plainNumber, tagWords } from "#lib/plan/format.ts";

type Work = Pick<GroupSum, "planned" | "taught">;

/** Above this whole minutes are told. */
const WHOLE_FROM_SECONDS = 600;
const minutes = (seconds: number): string =>
  seconds < WHOLE_FROM_SECONDS ? plainNumber(seconds / 60) : String(Math.round(seconds / 60));

/** "34 of 40 min" */
export const workWords = ({ planned, taught }: Work): string => `${minutes(taught)} of ${minutes(planned)} min`;

/** "85%"; "not planned" for work that no plan had. */
export const shareDone = ({ planned, taught }: Work): string =>
  planned > 0 ? percent(taught / planned) : "not planned";

export const allGroups = (groups: readonly GroupSum[]): Work => ({
  planned: groups.reduce((sum, one) => sum + one.planned, 0),
  taught: groups.reduce((sum, one) => sum + one.taught, 0),
});

/** Less is not worth talking about. Our own choice: a tenth, and a minute. */
const SHORT_SHARE = 0.9;
const SHORT_SECONDS = 60;
const MOST_NAMED = 3;

/** "Of 210 min planned 198 min were done, 94%. Furthest short: glutes, 9 of 14 min." */
export function groupsSentence(groups: readonly GroupSum[]): string {
  const all = allGroups(groups);
  const short = groups
    .filter(({ planned, taught }) => taught < SHORT_SHARE * planned && planned - taught >= SHORT_SECONDS)
    .sort((a, b) => a.taught / a.planned - b.taught / b.planned)
    .slice(0, MOST_NAMED)
    .map((one) => `${tagWords(one.group)}, ${workWords(one)}`);
  const sum = `Of ${minutes(all.planned)} min planned ${minutes(all.taught)} min were done, ${shareDone(all)}.`;
  return `${sum} ${short.length === 0 ? "No group fell short by a tenth." : `Furthest short: ${short.join("; ")}.`}`;
}

/** Of all work, 0..1, for the figure. */
export function sharesOf(groups: readonly GroupSum[], of: keyof Work): Partial<Record<GroupSum["group"], number>> {
  const all = allGroups(groups)[of];
  return Object.fromEntries(all > 0 ? groups.map((one) => [one.group, one[of] / all]) : []);
}
