/** The line in words, for its screens. */
import { plural } from "#lib/plan/format.ts";
import type { ScreenView } from "#lib/protocol/line-wire.ts";
import type { LineScreen, RoomLine } from "./line.ts";
import type { LineRefusal } from "./messages.ts";

export const VIEW_WORDS: Readonly<Record<ScreenView, { readonly name: string; readonly shows: string }>> = {
  lead: { name: "Leads", shows: "the coach's own: runs the class, and the other screens follow it" },
  demonstrator: { name: "Demonstrator", shows: "follows: the set-up in large, and the next one" },
  crew: { name: "Crew", shows: "follows: the crew's lines and when, who speaks, the next change" },
  wall: { name: "Wall", shows: "follows: seconds and the move, for the whole room" },
};

export const REFUSAL_WORDS: Readonly<Record<LineRefusal, string>> = {
  "not-leading": "Another screen leads. What was done here changes nothing there.",
  changed: "Somebody was quicker: look who leads now, then ask again.",
  "asked-already": "Another screen has asked already. Wait for the answer.",
  "nobody-asks": "The question was taken back. This screen keeps leading.",
  "not-signed": "The studio has not signed this class, so other screens cannot follow it.",
  declined: "The answer is no.",
};

/** Screens other than `you`, those that follow now and those that were lost. */
function otherScreens({ screens }: RoomLine, you: string | null) {
  const all = screens.filter(({ id, view }) => id !== you && view !== "lead");
  return { here: all.filter((s) => s.goneSince === null), lost: all.filter((s) => s.goneSince !== null) };
}

const named = ({ label }: LineScreen): string => label;

/** "2 screens follow", "2 screens follow, lost: Camera desk"; "" where there are none. */
export function followWords(line: RoomLine, you: string | null): string {
  const { here, lost } = otherScreens(line, you);
  const follow = here.length > 0 ? [plural(here.length, "screen follows", "screens follow")] : [];
  const gone = lost.length > 0 ? [`lost: ${lost.map(named).join(", ")}`] : [];
  return [...follow, ...gone].join(", ");
}
