/** The floor's sentences that more than one of its screens says. Pure. */
import type { FloorView } from "#lib/floor/view.ts";
import { agree } from "#lib/plan/format.ts";

export const NO_NETWORK = "The studio cannot be reached. What is kept on this device works without it.";
export const UNREADABLE_ANSWER =
  "The studio’s answer could not be read. Reload this page when there is a network connection.";
export const NO_STORAGE =
  "This browser gives the page no storage, so nothing can be kept. Leave private browsing, or use another browser.";

/** A device's clock that is `offMs` ahead of the studio's, below 0: behind. */
export const wrongClockWords = (offMs: number): string =>
  `This device’s clock is ${Math.round(Math.abs(offMs) / 60_000)} minutes ${offMs > 0 ? "ahead of" : "behind"} the studio’s. Correct it: it decides when an edition expires.`;

/** Whether the floor opens again with no network. `unsafe`: plain HTTP, where browsers run no service worker. */
export type WorkerState = "asking" | "ready" | "unsafe" | "failed";

export const workerWords: Record<WorkerState, string> = {
  asking: "Keeping this page on the device.",
  ready: "This page is kept on the device: it opens with no network.",
  unsafe:
    "This page cannot open again without the network, because the studio is not reached over HTTPS. A class that is open goes on; do not reload it.",
  failed:
    "This page could not be kept on the device. A class that is open goes on; do not reload it without the network.",
};

interface WaitingLogs {
  /** How many logs the studio does not have yet. */
  readonly waiting: number;
  /** Why the studio refused one, as it said; null when only the network is missing. */
  readonly refused: string | null;
}

/** "" when no log waits. */
export function logsWords({ waiting, refused }: WaitingLogs): string {
  if (waiting === 0) return "";
  const what = agree(waiting, "The log of one class", `The logs of ${waiting} classes`);
  return `${what} ${agree(waiting, "is", "are")} kept here until the studio has ${agree(waiting, "it", "them")}. ${refused ?? ""}`.trim();
}

export const BACK_TO_EDITIONS = "Back to the editions";
export const KEYS_AND_PEDALS = "Keys and pedals";

/** The name of what is happening at this moment. */
export function nowWords({ item, phase }: FloorView): string {
  if (item) return item.name;
  if (phase === "done") return "The class is done";
  return phase === "closing" ? "Closing" : "Opening";
}
