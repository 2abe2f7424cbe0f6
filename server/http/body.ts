/**
 * Reads the JSON body of a request, with a limit, and checks it with zod; an error is one sentence. The limits of all
 * routes are here: the gate checks the headers before anything is read, and the reader counts what arrives.
 */
import * as z from "zod";
import { fail, ok, type Result } from "#server/base/result.ts";

/** Bytes. The plan file of a long class with its whole library takes less than a tenth of this. */
export const MAX_BODY_BYTES = 5 * 1024 * 1024;
/** Bytes. A month of 1,000 classes as a table takes a tenth of this. */
export const TABLE_BODY_BYTES = 1024 * 1024;
/** Bytes; far more than anybody types into a form, a comment or a note. */
export const FORM_BODY_BYTES = 256 * 1024;

const tooLarge = (most: number): Result<never> =>
  fail(
    413,
    "too-large",
    `This is too large: ${most >= TABLE_BODY_BYTES ? `${most / TABLE_BODY_BYTES} MB` : "256 kB"} is the limit.`,
  );
const NOT_JSON = fail(400, "not-json", "The server could not read this. Send JSON text in UTF-8.");

const LENGTH_NEEDED = fail(411, "length-needed", "Send this with its length (Content-Length).");

/** Refuses a body by its headers, before it is read. Errors: 411 length-needed, 413 too-large. */
export function refuseUnread(headers: {
  readonly "content-length"?: string | undefined;
  readonly "transfer-encoding"?: string | undefined;
}): Result<never> | undefined {
  if (headers["transfer-encoding"] !== undefined) return LENGTH_NEEDED;
  return Number(headers["content-length"] ?? 0) > MAX_BODY_BYTES ? tooLarge(MAX_BODY_BYTES) : undefined;
}

/** Reads and checks the body, of at most `most` bytes. Errors: 413 too-large, 415 not-json-type, 400 not-json, 422 invalid (with `pointer`). */
export async function readBody<T>(
  request: Request,
  schema: z.core.$ZodType<T>,
  most: number = FORM_BODY_BYTES,
): Promise<Result<T>> {
  const text = await readBodyText(request, most);
  return text.ok ? parseBody(text.value, schema) : text;
}

/** Errors: 400 not-json, 422 invalid (with `pointer`). */
function parseBody<T>(text: string, schema: z.core.$ZodType<T>): Result<T> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return NOT_JSON;
  }
  const parsed = z.safeParse(schema, value);
  return parsed.success ? ok(parsed.data) : invalid(parsed.error);
}

/** The body as text, for readers with better error messages than JSON.parse. Errors: 413, 415, 400. */
export async function readBodyText(request: Request, most: number = FORM_BODY_BYTES): Promise<Result<string>> {
  const bytes = await readBodyBytes(request, most);
  if (!bytes.ok) return bytes;
  try {
    return ok(new TextDecoder("utf-8", { fatal: true }).decode(bytes.value));
  } catch {
    return NOT_JSON;
  }
}

/** The body as it came, for what may be text in another coding. Errors: 413, 415. */
export async function readBodyBytes(request: Request, most: number): Promise<Result<Uint8Array>> {
  const type = request.headers.get("content-type") ?? "";
  if (!/^application\/json\s*(;|$)/i.test(type)) {
    return fail(415, "not-json-type", "Send this as application/json.");
  }
  if (Number(request.headers.get("content-length") ?? 0) > most) return tooLarge(most);
  const chunks: Uint8Array[] = [];
  let size = 0;
  if (request.body) {
    for await (const chunk of request.body) {
      size += chunk.byteLength;
      if (size > most) return tooLarge(most);
      chunks.push(chunk);
    }
  }
  return ok(Buffer.concat(chunks));
}

/** A zod error as one sentence about its first issue; all issues are in `details.issues`. */
function invalid(error: z.core.$ZodError): Result<never> {
  const issues = error.issues.map((issue) => ({
    pointer: issue.path.map((part) => `/${String(part).replaceAll("~", "~0").replaceAll("/", "~1")}`).join(""),
    message: issue.message,
  }));
  const first = issues[0];
  const where = first?.pointer ? `${first.pointer.slice(1).replaceAll("/", " ")}: ` : "";
  return fail(422, "invalid", `${where}${first?.message ?? "This cannot be used."}`, { issues });
}
