/** Sends a move to the server and says what came of it. Client only; never throws. */
import * as z from "zod/mini";
import { type RefusedRequest, send } from "#app/_parts/send.ts";
import type { Fault } from "#lib/library/faults.ts";
import type { Move } from "#lib/plan/schema.ts";
import type { MoveNow } from "#server/library/refusals.ts";

export type SaveResult =
  | { readonly kind: "saved"; readonly id: string }
  /** The server found faults that the page did not know of, a name that was taken meanwhile for one. */
  | { readonly kind: "faults"; readonly say: string; readonly faults: readonly Fault[] }
  /** Somebody was faster. */
  | { readonly kind: "changed"; readonly say: string; readonly now: MoveNow }
  | { readonly kind: "signed-out" }
  | { readonly kind: "failed"; readonly say: string };

/** A new move has an id of the server's making. */
const savedSchema = z.object({ id: z.optional(z.string()) });

/** `id` null: a new move. `base`: `updatedAt` of what the change began from. */
export async function saveMove(id: string | null, move: Move, base: number | null): Promise<SaveResult> {
  const [method, url, body] =
    id === null
      ? (["POST", "/api/library", { move }] as const)
      : (["PUT", `/api/library/${id}`, { move, base }] as const);
  const sent = await send(method, url, body, { reads: savedSchema });
  return sent.ok ? { kind: "saved", id: sent.value.id ?? id ?? "" } : refusal(sent);
}

function refusal({ status, code, message, details }: RefusedRequest): SaveResult {
  if (status === 401) return { kind: "signed-out" };
  if (code === "move-changed") return { kind: "changed", say: message, now: details as MoveNow };
  if (code === "bad-move" || code === "name-taken") {
    const { faults } = details as { faults: readonly Fault[] };
    return { kind: "faults", say: message, faults };
  }
  return { kind: "failed", say: message };
}
