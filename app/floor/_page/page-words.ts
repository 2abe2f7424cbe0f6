/** The sentences of the floor's first screens: pairing, the editions of the room, a page that could not open. Pure. */

import { withdrawnWords } from "#lib/card/withdrawn-words.ts";
import type { WithdrawnCard } from "#lib/floor/keep-cards.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { agoWords } from "../_parts/time-words.ts";

export const READING_DEVICE = "Reading what this device keeps.";
export const OPENING_PAGE = "Opening.";
export const OPEN_AGAIN = "Open it again";
export const NEWER_HERE = "A newer version of this page is here.";

export const NOT_WHOLE =
  "The rest of this page could not be fetched and is not kept on this device. Open it again where the studio can be reached. A class that ran here is kept.";

export const BROKE = {
  title: "Something went wrong on this page",
  about: "The class is kept on this device and its clock goes on. Open the page again to continue.",
} as const;

export const codeLengthWords = (length: number): string => `The code has ${length} letters and digits.`;

/** `refreshedAt`: ms since the epoch; 0 for never. */
export const fetchedWords = (refreshedAt: number, now: number): string =>
  refreshedAt > 0 ? `Editions fetched ${agoWords(refreshedAt, now)}.` : "No editions fetched yet.";

/** Why an edition was refused, and whether an earlier one is still there. */
export const refusedWords = (title: string, reason: string, earlierKept: boolean): string =>
  `${title}: ${reason} ${earlierKept ? "The last good edition is still here." : "It was not kept."}`;

export const emptyWords = (room: string, refreshing: boolean): string =>
  refreshing
    ? `Fetching the editions of ${room}.`
    : `No edition for ${room} yet. When a lead signs off a plan for this room, fetch the editions again.`;

export const VERIFIED = "signature verified · kept on this device";
export const cannotStartWords = (of: WithdrawnCard, f: Formats): string =>
  `${withdrawnWords(of, f)} It cannot be started.`;

export const UNPAIR_ASKS =
  "This removes the pairing and the editions from this device. You need a new code to pair it again.";
