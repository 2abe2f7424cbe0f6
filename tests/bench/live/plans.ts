/** The plans of every live work: long, with scripts, from the demo's moves. */
import * as Y from "yjs";
import { createPlanDoc } from "#lib/doc/create.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { longClass } from "#tests/support/long-class.ts";

const ITEMS = 30;
const LINES = 200;

export const livePlan = (): Plan => longClass(ITEMS, LINES);
export const planKey = (n: number): string => `plan-${n}`;
/** The update that every plan begins with. */
export const baseUpdate = (): Uint8Array => Y.encodeStateAsUpdate(createPlanDoc(livePlan(), { carry: true }));
