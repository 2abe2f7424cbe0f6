/** What a command returns: a value, or an error that can be shown to the person who asked. */
export interface AppError {
  readonly code: string;
  /** The HTTP status of the answer. */
  readonly status: number;
  /** What happened and what to do, in a sentence or two. Never anything secret. */
  readonly message: string;
  readonly details?: unknown;
}
export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: AppError };

export const ok = <T>(value: T): Result<T> => ({ ok: true, value });
export const fail = (status: number, code: string, message: string, details?: unknown): Result<never> => ({
  ok: false,
  error: details === undefined ? { code, status, message } : { code, status, message, details },
});

export const SIGN_IN_FIRST = "Sign in first.";
export const NOT_SIGNED_IN = fail(401, "not-signed-in", SIGN_IN_FIRST);
export const NO_RIGHT = fail(
  403,
  "no-right",
  "You do not have the right to do this. Ask a lead or the manager of your studio.",
);
export const NOT_FOUND = fail(404, "not-found", "This does not exist, or you may not see it.");
