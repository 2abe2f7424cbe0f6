/** A month as its file, and a month from one; `?replace=yes` where there is something that it takes the place of. */
import { canonicalJson } from "#lib/canonical/canonical.ts";
import { MAX_BODY_BYTES, readBodyText } from "#server/http/body.ts";
import { guarded, needs } from "#server/http/respond.ts";
import { importMonthFile } from "#server/programme/import-month.ts";
import { monthFileResponse } from "#server/programme/month-response.ts";
import { readMonthFileOf } from "#server/programme/read-month-file.ts";

export const GET = guarded({ costly: true }, ({ app, actor, params }) => {
  const month = params.month ?? "";
  const file = readMonthFileOf(app, actor, month);
  if (!file.ok) return file;
  return monthFileResponse(canonicalJson(file.value), `month-${month}.json`, "application/json; charset=utf-8");
});

export const PUT = guarded(
  { costly: true, first: needs("programme.write") },
  async ({ app, actor, request, params }) => {
    const text = await readBodyText(request, MAX_BODY_BYTES);
    const replace = new URL(request.url).searchParams.get("replace") === "yes";
    return text.ok ? importMonthFile(app, actor, params.month ?? "", { text: text.value, replace }) : text;
  },
);
