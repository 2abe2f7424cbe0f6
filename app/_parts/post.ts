/**
 * Posts a command and gives back its answer or a sentence to show. Never throws: a form keeps what was typed until the
 * server says it has it.
 */
import * as z from "zod/mini";

export type Sent =
  | { readonly ok: true; readonly value: unknown }
  | {
      readonly ok: false;
      readonly status: number;
      readonly code: string;
      readonly message: string;
      readonly details?: unknown;
    };

const errorSchema = z.object({
  error: z.object({ code: z.string(), message: z.string(), details: z.optional(z.unknown()) }),
});

const UNREACHABLE = "The server cannot be reached. What you wrote is still here: try again once you are back online.";

export async function send(url: string, body: unknown): Promise<Sent> {
  try {
    const response = await fetch(url, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(body),
    });
    return await answerOf(response);
  } catch {
    return { ok: false, status: 0, code: "unreachable", message: UNREACHABLE };
  }
}

async function answerOf(response: Response): Promise<Sent> {
  const text = await response.text();
  const json = parsed(text);
  if (response.ok) return { ok: true, value: json };
  const error = errorSchema.safeParse(json);
  if (error.success) return { ok: false, status: response.status, ...error.data.error };
  return {
    ok: false,
    status: response.status,
    code: "unknown",
    message: `The server answered with an error (${response.status}). What you wrote is still here: try again in a moment.`,
  };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
