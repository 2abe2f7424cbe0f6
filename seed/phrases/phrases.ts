/** All the usual lines, by move. */
import { ARM_PHRASES } from "./arms.ts";
import { LEG_PHRASES } from "./legs.ts";
import { TRUNK_PHRASES } from "./trunk.ts";
import type { Phrases } from "./types.ts";

export const PHRASES: Readonly<Record<string, Phrases>> = { ...TRUNK_PHRASES, ...ARM_PHRASES, ...LEG_PHRASES };
