/** A month's classes as a spreadsheet's table, and classes from one. */
import { readBodyText, TABLE_BODY_BYTES } from "#server/http/body.ts";
import { guarded, needs } from "#server/http/respond.ts";
import { importMonthTable, readMonthTable } from "#server/programme/month-csv.ts";
import { monthFileResponse } from "#server/programme/month-response.ts";

export const GET = guarded({ costly: true }, ({ app, actor, params }) => {
  const table = readMonthTable(app, actor, params.month ?? "");
  return table.ok ? monthFileResponse(table.value.text, table.value.fileName, "text/csv; charset=utf-8") : table;
});

export const POST = guarded(
  { first: needs("programme.write"), costly: true },
  async ({ app, actor, request, params }) => {
    const text = await readBodyText(request, TABLE_BODY_BYTES);
    return text.ok ? importMonthTable(app, actor, params.month ?? "", text.value) : text;
  },
);
