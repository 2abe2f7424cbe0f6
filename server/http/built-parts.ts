/**
 * Serves the scripts and styles that Next built, as the build compressed them (`server/build/compress-parts.mjs`): smaller
 * than what can be compressed while somebody waits, and no work for the thread that serves people.
 */
import { join } from "node:path";
import sirv from "sirv";
import type { Env } from "#server/base/env.ts";
import type { ServeSetup } from "./serve.ts";

const AT = "/_next/static";
const YEAR_S = 365 * 24 * 60 * 60;

/** Serves the built parts and passes everything else to `otherwise`. The names of the parts change with their content. */
export function withBuiltParts(env: Pick<Env, "distDir">, otherwise: ServeSetup["handle"]): ServeSetup["handle"] {
  const parts = sirv(join(env.distDir, "static"), { brotli: true, gzip: true, immutable: true, maxAge: YEAR_S });
  return (request, response) => {
    const { url } = request;
    if (!url?.startsWith(`${AT}/`)) return otherwise(request, response);
    request.url = url.slice(AT.length);
    parts(request, response, () => {
      request.url = url;
      otherwise(request, response);
    });
  };
}
