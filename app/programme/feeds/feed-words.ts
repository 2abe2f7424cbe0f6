/** How calendars are named and grouped on the page. */
import type { FeedPlace } from "#server/feeds/manage-feeds.ts";

export const keyOf = ({ kind, subject }: Pick<FeedPlace, "kind" | "subject">): string => `${kind}/${subject}`;

/** "Your classes", "All classes of Tidewater", "Classes in the Loft", "Marta's classes". */
export function calendarTitle({ kind, name, own }: Pick<FeedPlace, "kind" | "name" | "own">): string {
  if (own) return "Your classes";
  if (kind === "studio") return `All classes of ${name}`;
  return kind === "room" ? `Classes in ${name}` : `${name}’s classes`;
}

interface FeedGroup {
  readonly title: string;
  readonly of: readonly FeedPlace[];
}

/** In the order of the list; groups without calendars are left out. */
export function groupsOf(places: readonly FeedPlace[]): FeedGroup[] {
  const groups: readonly [string, (place: FeedPlace) => boolean][] = [
    ["Yours", ({ own }) => own],
    ["Studio and rooms", ({ kind }) => kind !== "coach"],
    ["Other people’s", ({ kind, own }) => kind === "coach" && !own],
  ];
  return groups.map(([title, isIn]) => ({ title, of: places.filter(isIn) })).filter(({ of }) => of.length > 0);
}
