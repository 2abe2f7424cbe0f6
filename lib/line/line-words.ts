/** What the line says to people. Texts of a closed connection stand with their codes in `close.ts`. */
import { plural } from "#lib/plan/format.ts";
import type { ScreenView } from "#lib/protocol/line-wire.ts";
import type { LineScreen, RoomLine } from "./line.ts";
import type { LineRefusal } from "./messages.ts";

export const VIEW_WORDS: Readonly<Record<ScreenView, { readonly name: string; readonly shows: string }>> = {
  lead: { name: "Leads", shows: "the coach's screen: runs the class, and other screens follow it" },
  demonstrator: { name: "Demonstrator", shows: "follows: the set-up in large type, and the next one" },
  crew: { name: "Crew", shows: "follows: lines for the crew and when they are due, who speaks, the next change" },
  wall: { name: "Wall", shows: "follows: the move and its seconds, for the whole room" },
};

export const REFUSAL_WORDS: Readonly<Record<LineRefusal, string>> = {
  "not-leading": "Another screen leads now, so the other screens did not follow what you did here.",
  changed: "Who leads has just changed. Look who leads now, then ask again.",
  "asked-already": "Another screen has already asked to lead. Wait for the answer.",
  "nobody-asks": "The other screen no longer asks to lead. This screen keeps leading.",
  "not-signed": "This class is not an edition that the studio signed, so other screens cannot follow it.",
  declined: "The coach's screen said no.",
};

export const NOBODY_LEADS = "No screen leads now. Running by this device's clock.";

/** `time`: "12 s", or null when nothing was ever heard. */
export const notHeardFor = (time: string | null): string =>
  `Not heard from the coach's screen${time === null ? "" : ` for ${time}`}. Running by this device's clock.`;

/** Screens other than `you`: those that follow now, and those that lost contact. */
function otherScreens({ screens }: RoomLine, you: string | null) {
  const all = screens.filter(({ id, view }) => id !== you && view !== "lead");
  return { here: all.filter((s) => s.goneSince === null), lost: all.filter((s) => s.goneSince !== null) };
}

const named = ({ label }: LineScreen): string => label;

/** "2 screens follow", "2 screens follow, lost: Camera desk"; "" when there are none. */
export function followWords(line: RoomLine, you: string | null): string {
  const { here, lost } = otherScreens(line, you);
  const follow = here.length > 0 ? [plural(here.length, "screen follows", "screens follow")] : [];
  const gone = lost.length > 0 ? [`lost: ${lost.map(named).join(", ")}`] : [];
  return [...follow, ...gone].join(", ");
}
