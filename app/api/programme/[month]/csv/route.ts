/** A month's classes as a spreadsheet's table, and classes from one. */
import { tableText } from "#lib/programme/csv-text.ts";
import { fail } from "#server/base/result.ts";
import { readBodyBytes, TABLE_BODY_BYTES } from "#server/http/body.ts";
import { guarded, needs } from "#server/http/respond.ts";
import { importMonthTable, readMonthTable, type TableTaking } from "#server/programme/month-csv.ts";
import { monthFileResponse } from "#server/programme/month-response.ts";

export const GET = guarded({ costly: true }, ({ app, actor, params }) => {
  const table = readMonthTable(app, actor, params.month ?? "");
  return table.ok ? monthFileResponse(table.value.text, table.value.fileName, "text/csv; charset=utf-8") : table;
});

/** `?preview=yes` says what would be taken; `?unread=leave` takes what can be read; else it is taken whole or not at all. */
export const POST = guarded(
  { first: needs("programme.write"), costly: true },
  async ({ app, actor, request, params }) => {
    const bytes = await readBodyBytes(request, TABLE_BODY_BYTES);
    if (!bytes.ok) return bytes;
    const text = tableText(bytes.value);
    if (text === undefined) return NOT_TEXT;
    return importMonthTable(app, actor, params.month ?? "", text, takingOf(new URL(request.url).searchParams));
  },
);

function takingOf(asked: URLSearchParams): TableTaking {
  if (asked.get("preview") === "yes") return "look";
  return asked.get("unread") === "leave" ? "readable" : "whole";
}

const NOT_TEXT = fail(
  400,
  "not-a-table",
  "This is not a table of text. In the spreadsheet, save it as CSV and choose that file. Nothing was taken.",
);
