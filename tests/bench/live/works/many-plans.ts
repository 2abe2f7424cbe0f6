/** A studio's evening: many plans with several pages each. */
import { planKey } from "../plans.ts";
import { RawPage } from "../raw-page.ts";
import { peopleFor, type Sizes, type Stage } from "../work.ts";

export const needsOf = ({ plans, pages }: Sizes) => ({ plans, people: Math.max(pages, peopleFor(plans * pages)) });

/** The pages of each plan. */
export async function openAll({ door, base, plans, pages }: Stage): Promise<RawPage[][]> {
  const all: RawPage[][] = [];
  for (let plan = 0; plan < plans; plan++) {
    const openings = Array.from({ length: pages }, (_, n) => ({
      key: planKey(plan),
      person: plan * pages + n,
      holds: base,
    }));
    all.push(await Promise.all(openings.map((opening) => RawPage.open(door, opening))));
  }
  return all;
}

/** Counts the bytes that a page receives besides edits. */
export function countOthers(pages: readonly RawPage[]): { take(): number[] } {
  const bytes = pages.map(() => 0);
  pages.forEach((page, n) => {
    page.ears.other = (more) => {
      bytes[n] = (bytes[n] ?? 0) + more;
    };
  });
  return { take: () => bytes.splice(0, bytes.length, ...pages.map(() => 0)) };
}

export const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
