/** What a command gives back: a value, or an error fit to be shown to the person who asked. */
export interface AppError {
  readonly code: string;
  /** HTTP status it maps to. */
  readonly status: number;
  /** What happened and what to do, in a sentence. Holds nothing secret. */
  readonly message: string;
  readonly details?: unknown;
}
export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: AppError };

export const ok = <T>(value: T): Result<T> => ({ ok: true, value });
export const fail = (status: number, code: string, message: string, details?: unknown): Result<never> => ({
  ok: false,
  error: details === undefined ? { code, status, message } : { code, status, message, details },
});

export const NOT_SIGNED_IN = fail(401, "not-signed-in", "Sign in first.");
export const NO_RIGHT = fail(403, "no-right", "You may not do this. Ask a lead or the manager of your studio.");
export const NOT_FOUND = fail(404, "not-found", "There is no such thing here, or it is not yours to see.");
