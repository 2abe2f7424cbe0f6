/** What comparing with the server needs, fetched after the page: the hashes, and the way to the server's findings. */
import * as z from "zod/mini";
import { send } from "#app/_parts/send.ts";
import { Marker } from "#lib/analysis/marks.ts";
import { findingSchema } from "#lib/protocol/finding.ts";
import type { Served } from "./second-opinion.ts";

export const newMarker = (): Marker => new Marker();

const servedSchema = z.object({ plan: z.string(), findings: z.array(findingSchema) });

export async function fetchFindings(planId: string): Promise<Served | null> {
  const sent = await send("GET", `/api/plans/${planId}/findings`, undefined, { reads: servedSchema });
  return sent.ok ? servedFindings(sent.value as Pick<Served, "plan" | "findings">) : null;
}

export function servedFindings(value: Pick<Served, "plan" | "findings">): Served {
  const marker = new Marker();
  return { ...value, isOf: (plan) => marker.plan(plan) === value.plan };
}
