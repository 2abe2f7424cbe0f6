/** A plan's rounds, and the text of one point of them, from the server. */
import * as z from "zod/mini";
import { send } from "#app/_parts/send.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { findingSchema } from "#lib/protocol/finding.ts";
import type { PointText, RoundsView, ThreadThen } from "#lib/rounds/rounds.ts";
import type { Finding } from "#lib/rules/define/types.ts";

const text = z.nullable(z.string());
const number = z.nullable(z.number());
const kind = z.enum(["offered", "returned", "signed", "withdrawn", "taken-back"]);

const momentSchema = z.object({
  ...{ id: z.number(), round: z.number(), kind, at: z.number(), byId: z.string(), byName: z.string(), note: text },
  ...{ hasText: z.boolean(), must: z.number(), look: z.number(), info: z.number() },
  ...{ threads: z.number(), openThreads: z.number() },
});
const roundSchema = z.object({
  ...{ number: z.number(), offeredById: z.string(), offeredByName: z.string(), offeredAt: z.number() },
  ...{ readerId: text, readerName: text, readSince: number },
  outcome: z.nullable(z.enum(["returned", "signed", "taken-back"])),
  ...{ endedByName: text, endedAt: number, mainPoints: z.array(z.string()), edition: number },
  moments: z.array(momentSchema),
});
const earlierSchema = z.object({
  kind: z.enum(["handed-in", "handed-back", "taken-back", "signed-off", "withdrawn"]),
  ...{ at: z.number(), byName: z.string(), note: text },
});
const pointSchema = z.object({
  kind: z.union([kind, z.enum(["edition", "reading"])]),
  ...{ id: z.string(), at: z.number(), byId: z.string(), byName: z.string(), round: z.number(), edition: number },
});
const roundsSchema: z.ZodMiniType<RoundsView> = z.object({
  rounds: z.array(roundSchema),
  earlier: z.array(earlierSchema),
  besides: z.array(momentSchema),
  points: z.array(pointSchema),
  usual: text,
  platesRead: z.record(z.string(), z.string()),
});

export const fetchRounds = (planId: string) =>
  send("GET", `/api/plans/${planId}/rounds`, undefined, { reads: roundsSchema });

const threadSchema = z.object({ id: z.string(), settled: z.boolean(), comments: z.number() });
const textSchema: z.ZodMiniType<PointText> = z.object({
  plan: z.unknown(),
  findings: z.array(findingSchema),
  threads: z.array(threadSchema),
});

export interface Then {
  /** Null when the plan could not be read then. */
  readonly plan: Plan | null;
  readonly findings: readonly Finding[];
  readonly threads: readonly ThreadThen[];
}

export type ThenOrProblem = Then | { readonly problem: string };

/** `point` as in `ComparePoint`. */
export async function fetchPoint(planId: string, point: string): Promise<ThenOrProblem> {
  const sent = await send("GET", `/api/plans/${planId}/moments/${point}`, undefined, { reads: textSchema });
  if (!sent.ok) return { problem: sent.message };
  // Kept by the server as it read the plan; one that was no whole file then is read all the same.
  return { ...sent.value, plan: (sent.value.plan ?? null) as Plan | null };
}

const platesReadSchema = z.object({ platesRead: z.record(z.string(), z.string()) });

export const sendPlatesRead = (
  planId: string,
  body: { readonly on: boolean; readonly plates: readonly { readonly itemId: string; readonly hash: string }[] },
) => send("POST", `/api/plans/${planId}/plates-read`, body, { reads: platesReadSchema });
