/** Sends a move to the server and says what became of it. Client only; never throws. */

import type { Fault } from "#lib/library/faults.ts";
import type { Move } from "#lib/plan/schema.ts";
import type { MoveNow } from "#server/library/refusals.ts";

export type Saved =
  | { readonly kind: "saved"; readonly id: string }
  /** The server found faults that the page did not know of, a name that was taken meanwhile for one. */
  | { readonly kind: "faults"; readonly say: string; readonly faults: readonly Fault[] }
  /** Somebody was faster. */
  | { readonly kind: "changed"; readonly say: string; readonly now: MoveNow }
  | { readonly kind: "signed-out" }
  | { readonly kind: "failed"; readonly say: string };

const NO_ANSWER = "The server did not answer. What you typed is still here: save again when the network is back.";
const NOT_DONE = "The server could not save this. What you typed is still here: try again.";

/** `id` null: a new move. `base`: `updatedAt` of what the change began from. */
export async function saveMove(id: string | null, move: Move, base: number | null): Promise<Saved> {
  const [method, url, body] =
    id === null
      ? (["POST", "/api/library", { move }] as const)
      : (["PUT", `/api/library/${id}`, { move, base }] as const);
  try {
    const headers = { "content-type": "application/json" };
    const response = await fetch(url, { method, headers, body: JSON.stringify(body) });
    const answer: unknown = await response.json().catch(() => null);
    return response.ok ? { kind: "saved", id: idOf(answer) ?? id ?? "" } : refusal(response.status, answer);
  } catch {
    return { kind: "failed", say: NO_ANSWER };
  }
}

interface Refusal {
  readonly error?: { readonly code?: string; readonly message?: string; readonly details?: unknown };
}

function refusal(status: number, answer: unknown): Saved {
  const error = (answer as Refusal | null)?.error; // the routes' own promise, looked at field by field
  const say = error?.message ?? NOT_DONE;
  if (status === 401) return { kind: "signed-out" };
  if (error?.code === "move-changed") return { kind: "changed", say, now: error.details as MoveNow };
  if (error?.code === "bad-move" || error?.code === "name-taken") {
    const { faults } = error.details as { faults: readonly Fault[] };
    return { kind: "faults", say, faults };
  }
  return { kind: "failed", say };
}

function idOf(answer: unknown): string | undefined {
  return typeof answer === "object" && answer !== null && "id" in answer && typeof answer.id === "string"
    ? answer.id
    : undefined;
}
