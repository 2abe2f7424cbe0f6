/** All the usual lines, by move. */
import { ARM_PHRASES } from "./phrases/arms.ts";
import { LEG_PHRASES } from "./phrases/legs.ts";
import { TRUNK_PHRASES } from "./phrases/trunk.ts";
import type { Phrases } from "./phrases/types.ts";

export const PHRASES: Readonly<Record<string, Phrases>> = { ...TRUNK_PHRASES, ...ARM_PHRASES, ...LEG_PHRASES };
