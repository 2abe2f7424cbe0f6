/** The sentences of a class that runs on this screen, and of its end. Pure. */

import type { Card } from "#lib/card/schema.ts";
import { withdrawnWords } from "#lib/card/withdrawn-words.ts";
import type { WithdrawnCard } from "#lib/floor/keep-cards.ts";
import { latenessWords, minutesSeconds } from "#lib/floor/time-words.ts";
import type { FloorView } from "#lib/floor/view.ts";
import type { WayId } from "#lib/floor/ways.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { clockTime } from "#lib/plan/format.ts";

export const SCREEN_MAY_GO_DARK = "This screen may switch itself off: touch it now and then.";

/** "3 of 24 · 12:40 left · on time" */
export const progressWords = (view: FloorView): string =>
  `${view.number > 0 ? `${view.number} of ${view.of} · ` : ""}${minutesSeconds(view.left)} left · ${latenessWords(view.lateBy)}`;

/** Asked of the coach; the class itself goes on until they decide. */
export const WITHDRAWN_ASKS = {
  title: "This edition was withdrawn",
  why: (of: WithdrawnCard, f: Formats): string => withdrawnWords(of, f),
  goOn: "go on to the end",
  end: "end now",
} as const;

export const sleptWords = (figure: string): string => `The device was asleep for ${figure} and the class stood still.`;

/** The ways of ending on time: what each one is, and the words on its button. */
export const WAY_WORDS: Readonly<Record<WayId, { readonly title: string; readonly take: string }>> = {
  rest: { title: "New times for the rest", take: "take these times" },
  closing: { title: "From the closing alone", take: "take it from the closing" },
  both: { title: "From both", take: "take these times" },
};

export const endTitle = (whole: boolean): string => (whole ? "The class is done" : "The class was ended early");

/** `left`: seconds of the plan that were not reached, or null when the class ran to its end. */
export const endWords = ({ edition, clock }: Card, left: number | null): string =>
  `${edition.title} · edition ${edition.number} · ${left === null ? `${clockTime(clock.total)} of the plan` : `${clockTime(left)} of the plan were left`}`;
