/** The sentences of several screens in one room: who leads, who follows, what can be done about it. Pure. */

import { minutesSeconds } from "#lib/floor/time-words.ts";
import { timeOfMoment, timeWithSeconds } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";
import type { CrewCalls } from "#lib/line/crew.ts";
import { followWords, REFUSAL_WORDS } from "#lib/line/line-words.ts";
import { isLeaderGone, leadsElsewhere } from "./use-lead.ts";
import type { FloorLine } from "./use-line.ts";

export const FOLLOW = "Follow the class of this room";
export const NO_CREW_LINE = "Nothing for the crew here.";
export const NO_MORE_CREW_LINES = "No more crew lines.";
export const LOOK_AT_COACH = "Look at the coach";
export const NOT_CONFIRMED = "Not confirmed.";

/** What the crew's screen leaves out where there is no room, the first to go first. */
export const CREW_GIVES = ["what is being said", "later crew lines", "the steps of the next change"];

const WAITING = "Waiting for the answer.";
const ledWords = (label: string, sinceWall: number, f: Formats): string =>
  `${label} has led since ${timeOfMoment(sinceWall, f)}`;

/** On the shelf: who leads a class in this room now. */
export function shelfLineWords({ state }: FloorLine, f: Formats): string {
  if (state.contact === "refused") return state.sentence ?? "";
  if (state.noLive !== null) return state.noLive;
  if (state.stopping) return STOPPING;
  if (state.contact !== "on" || !state.line) return "The other screens of this room cannot be reached now.";
  if (!leadsElsewhere(state)) return "Nobody is leading a class here.";
  const { leader, told } = state.line;
  const what = told ? `“${told.title}”` : "a class";
  return `${leader?.label} has led ${what} here since ${timeOfMoment(leader?.sinceWall ?? 0, f)}.`;
}

/** On a screen that follows and has no class to show. */
export const noClassWords = (room: string): string => `${room}: no class is running`;

/** `edition`: of the class that is led; null where there is none. */
export function waitingWords(edition: number | null, fetching: boolean): string {
  if (edition === null) return "This screen follows as soon as a class starts on the coach’s device.";
  if (fetching) return "Fetching the edition of this class.";
  return `This screen does not have edition ${edition}, so it cannot show it. Fetch the editions on the coach’s device and on this one: a room runs the newest edition.`;
}

/** Under a screen that follows: who leads, and whether they are heard. */
export function followerWords({ state, link }: FloorLine, f: Formats): string {
  const { line, you, contact, sentence, noLive, refusal, followed } = state;
  if (contact === "refused") return sentence ?? "";
  if (noLive !== null) return noLive;
  if (contact === "connecting") return "Connecting to the other screens of this room.";
  if (contact === "off") return offWords(state, f);
  if (!line?.leader)
    return followed ? "Nobody is leading now. This screen goes on." : "Connected. Nobody is leading a class here.";
  const { label, sinceWall } = line.leader;
  const gone = line.screens.find(({ id }) => id === line.leader?.id)?.goneSince ?? null;
  const studioNow = link?.studioNow() ?? null;
  if (gone !== null && studioNow !== null) {
    return `${label} has been offline since ${timeWithSeconds(Date.now() - (studioNow - gone), f)}. The class goes on.`;
  }
  if (line.asked?.id === you) return `You asked ${label} for the lead. ${WAITING}`;
  const leads = leadsElsewhere(state) ? `${ledWords(label, sinceWall, f)}.` : "";
  return refusal ? `${REFUSAL_WORDS[refusal]} ${leads}` : leads;
}

const STOPPING = "The server is stopping for a moment; this screen comes back by itself.";

function offWords({ heardAt, followed, stopping }: FloorLine["state"], f: Formats): string {
  const unheard =
    heardAt === null ? "The studio has not been reached yet." : `No contact since ${timeWithSeconds(heardAt, f)}.`;
  const since = stopping ? STOPPING : unheard;
  return followed ? `${since} This screen goes on by itself.` : since;
}

/** Beside the title on the screen that leads: how many follow, or that they cannot be reached; "" for nothing. */
export function leaderStatusWords({ state: { line, you, contact, heardAt, stopping } }: FloorLine, f: Formats): string {
  const words = line?.leader?.id === you && line ? followWords(line, you) : "";
  if (!words || contact === "on" || heardAt === null) return words;
  if (stopping) return "the server is stopping for a moment: the others go on";
  return `no contact since ${timeWithSeconds(heardAt, f)}: the others go on`;
}

/** On a screen whose class goes on although another screen leads. */
export function apartWords(floorLine: FloorLine, f: Formats): string {
  const { line, you, refusal } = floorLine.state;
  const absent = isLeaderGone(floorLine);
  const waits = line?.asked?.id === you;
  const leads = ledWords(line?.leader?.label ?? "", line?.leader?.sinceWall ?? 0, f);
  const said = waits
    ? absent
      ? ""
      : ` You asked for the lead. ${WAITING}`
    : refusal
      ? ` ${REFUSAL_WORDS[refusal]}`
      : "";
  return `${leads}${absent ? " and is offline" : ""}; this class goes on here alone.${said}`;
}

/** "12 s" below a minute, from there "1:40". */
export const inWords = (seconds: number): string =>
  seconds < 60 ? `${Math.ceil(seconds)} s` : minutesSeconds(seconds);

export function voiceWords({ speaks, seconds }: CrewCalls["voice"]): string {
  if (seconds === null) return "The coach says nothing more.";
  const figure = inWords(Math.max(0, seconds));
  return speaks ? `The coach is speaking: ${figure} more` : `Quiet for ${figure}`;
}
