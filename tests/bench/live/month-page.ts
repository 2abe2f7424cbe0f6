/**
 * One page of a month on a thread of its own: takes updates, works out everything that the month's screen shows, and says how far it
 * is. Only the browser's own drawing is left out, and words are measured by their number of letters.
 */

import { parentPort, workerData } from "node:worker_threads";
import * as Y from "yjs";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { MonthAnalyst } from "#lib/month/check/analyst.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { type MonthStudio, monthFileOf } from "#lib/programme/month-file.ts";
import { deletedSlots, readerOfMonth } from "#lib/programme/read.ts";
import { HEAD_TO_FOOT } from "#lib/tide/columns.ts";
import { tideSheet } from "#lib/tide/sheet.ts";
import { SheetKept } from "#lib/tide/sheet-kept.ts";
import { liveMonth } from "./months.ts";

export interface PageAsked {
  readonly base: Uint8Array;
  /** ms since the epoch. */
  readonly now: number;
}
/** How far the page is, by client id, and how long the working out took, ms. */
export interface PageDone {
  readonly known: ReadonlyMap<number, number>;
  readonly took: number;
}

const { base, now } = workerData as PageAsked;
const { studio: of, zone, rooms, coaches, plans } = liveMonth(now);
const studio: MonthStudio = { ...of, zone, rooms, coaches, plans };
const sizes = {
  ...{ kind: "laptop" as const, railWidth: 640, groupWidth: 20, findingsWidth: 220, tops: [] },
  measure: (words: string) => words.length * 7,
};
const doc = new Y.Doc();
const [analyst, kept] = [new MonthAnalyst(), new SheetKept()];
let was: MonthFile | undefined;

function workOut(): void {
  const reader = readerOfMonth(doc);
  was = monthFileOf(reader.read(), studio, was);
  const { sums, findings } = analyst.look(was);
  deletedSlots(reader);
  const shown = {
    month: was,
    sums,
    findings,
    regulars: "group-0",
    rooms: Object.keys(rooms),
    groups: HEAD_TO_FOOT,
    formats: STANDARD_FORMATS,
  };
  tideSheet(shown, sizes, kept);
}

Y.applyUpdate(doc, base);
workOut();
/** As the page does: what arrives before the next frame is worked out together with it. */
const FRAME_MS = 16;
const waiting: Uint8Array[] = [];
parentPort?.on("message", (update: Uint8Array) => {
  waiting.push(update);
  if (waiting.length === 1) setTimeout(showAll, FRAME_MS);
});

function showAll(): void {
  const begun = performance.now();
  const updates = waiting.splice(0);
  for (const update of updates) Y.applyUpdate(doc, update);
  workOut();
  const known = new Map(updates.flatMap((update) => [...Y.parseUpdateMeta(update).to]));
  parentPort?.postMessage({ known, took: performance.now() - begun } satisfies PageDone);
}
parentPort?.postMessage({ known: new Map(), took: 0 } satisfies PageDone);
