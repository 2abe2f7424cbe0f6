/** The sentences of a rehearsal while it runs and after it. Pure. */
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import type { TapMeaning } from "#lib/floor/rehearsal.ts";
import { FIGURE_IN_MINUTES_FROM } from "#lib/floor/time-words.ts";
import type { FloorView } from "#lib/floor/view.ts";
import { plural } from "#lib/plan/format.ts";

export const NO_CLASS = "Rehearsal, no class";
export const SET_UP_THEN_TAP = "Set up, then tap.";

/** What the next tap means, on its target. */
export const TAP_WORDS: Readonly<Record<TapMeaning["kind"], string>> = {
  said: "said",
  "said-early": "said already",
  "set-up": "set-up done",
  nothing: "nothing to say now",
};

export const SENT_TO_STUDIO =
  "It is sent to the studio as soon as there is a network. The plan’s authors find it there under ";
/** Where in the plan. */
export const REHEARSE = "Rehearse";

/** Under the figure; `over`: a change waits beyond its time. */
export function figureUnit({ phase, secondsLeft, held }: FloorView, over: boolean): string {
  if (over) return "waits for your set-up";
  if (held) return "held";
  const of = phase === "change" ? "to change" : "left";
  // "1:40" says its units itself.
  if (secondsLeft >= FIGURE_IN_MINUTES_FROM) return of;
  return `${Math.ceil(secondsLeft) === 1 ? "second" : "seconds"} ${of}`;
}

/** Read aloud with the name of the move. */
export const stateWords = (held: boolean, waits: boolean): string =>
  waits ? ", waiting for your set-up" : held ? ", held" : "";

export const rehearsedTitle = (whole: boolean): string =>
  whole ? "The rehearsal is done" : "The rehearsal was ended early";

export function measuredWords({ rehearsed }: ClassLog): string {
  const { changes, lines } = rehearsed ?? { changes: [], lines: [] };
  return `Measured: ${plural(lines.length, "line")} and ${plural(changes.length, "change")}.`;
}
