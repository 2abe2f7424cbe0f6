/**
 * One's own rehearsals of plans in writing, kept in this browser only: how fast somebody speaks is private, and there is no
 * edition that the studio could file the log under. Cleared when the person signs out (`rehearsal-keys.ts`).
 */
import * as z from "zod/mini";
import type { KeptRehearsal } from "#lib/floor/kept-rehearsal.ts";
import { type Rehearsed, rehearsedSchema } from "#lib/floor/rehearsed-schema.ts";
import { rehearsalKey } from "../_parts/kept/rehearsal-keys.ts";

/** How many are kept for one plan; the oldest go first. */
const MOST = 5;

const keptSchema = z.array(z.object({ id: z.string(), at: z.number(), rehearsed: rehearsedSchema }));
interface OwnRehearsal {
  readonly id: string;
  /** ms since the epoch, by this device's clock. */
  readonly at: number;
  readonly rehearsed: Rehearsed;
}

/** The latest first. */
export function ownRehearsals(userId: string, planId: string): OwnRehearsal[] {
  try {
    const read = keptSchema.safeParse(JSON.parse(localStorage.getItem(rehearsalKey(userId, planId)) ?? "[]"));
    return read.success ? read.data : [];
  } catch {
    return [];
  }
}

/** False when the browser would not keep it. */
export function keepRehearsal(userId: string, planId: string, made: OwnRehearsal): boolean {
  const others = ownRehearsals(userId, planId).filter(({ id }) => id !== made.id);
  try {
    localStorage.setItem(rehearsalKey(userId, planId), JSON.stringify([made, ...others].slice(0, MOST)));
    return true;
  } catch {
    return false;
  }
}

/** The one in progress, in this tab: after a reload the page goes on with it. */
export function keepRunning(userId: string, running: KeptRehearsal): void {
  try {
    sessionStorage.setItem(rehearsalKey(userId, running.card.edition.planId), JSON.stringify(running));
  } catch {
    // without storage the rehearsal still runs, until the page is reloaded
  }
}

export function readRunning(userId: string, planId: string): KeptRehearsal | null {
  try {
    const text = sessionStorage.getItem(rehearsalKey(userId, planId));
    return text === null ? null : (JSON.parse(text) as KeptRehearsal); // written by keepRunning only, in this tab
  } catch {
    return null;
  }
}

export function dropRunning(userId: string, planId: string): void {
  try {
    sessionStorage.removeItem(rehearsalKey(userId, planId));
  } catch {
    // nothing was kept
  }
}
