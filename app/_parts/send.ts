/** Sends one command to the server and gives back its answer or a sentence to show. Client only. */

export type Sent<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly status: number; readonly message: string };

const NO_ANSWER = "The server did not answer. What you typed is still here: try again when the network is back.";

/** `T` is what the route promises to answer with; a bad answer is a sentence like any other. Never throws. */
export async function send<T>(
  method: "POST" | "PATCH" | "DELETE" | "PUT",
  url: string,
  body?: unknown,
): Promise<Sent<T>> {
  try {
    const response = await fetch(url, {
      method,
      headers: { "content-type": "application/json" },
      body: body === undefined ? undefined : JSON.stringify(body),
    });
    const answer: unknown = await response.json().catch(() => null);
    if (response.ok) return { ok: true, value: answer as T }; // the route's own promise
    return { ok: false, status: response.status, message: sentenceOf(answer) };
  } catch {
    return { ok: false, status: 0, message: NO_ANSWER };
  }
}

function sentenceOf(answer: unknown): string {
  const error = typeof answer === "object" && answer !== null && "error" in answer ? answer.error : null;
  const message = typeof error === "object" && error !== null && "message" in error ? error.message : null;
  return typeof message === "string" && message !== "" ? message : "The server could not do this. Try again.";
}
