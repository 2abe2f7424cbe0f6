/** The table of a month over HTTP: bytes as a spreadsheet saved them, looked at, then taken. */
import { afterEach, beforeEach, expect, test } from "vitest";
import * as firstRunRoute from "#app/api/first-run/route.ts";
import * as teachRoute from "#app/api/people/teach/route.ts";
import * as tableRoute from "#app/api/programme/[month]/csv/route.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { cookieOf, type Harness, PASSWORD, request, startHarness } from "./auth-harness.ts";

let h: Harness;
let cookie = "";
beforeEach(async () => {
  h = startHarness();
  const body = { studio: "Slipway Strength", name: "Ann", email: "ann@quay.example", password: PASSWORD };
  cookie = cookieOf(await firstRunRoute.POST(request("/api/first-run", { method: "POST", body })));
  await teachRoute.POST(request("/api/people/teach", { method: "POST", body: {}, cookie }));
  const doc = createMonthDoc(month());
  h.app.documents.transact = (_, __, fn) => fn(doc);
  h.app.documents.generation = () => undefined;
  // The month before is empty.
  h.app.documents.withDoc = ({ key }, fn) => fn(key === month() ? doc : createMonthDoc(key));
});
afterEach(() => h.stop());

const month = () => new Date(h.app.now()).toISOString().slice(0, 7);
const send = async (query: string, bytes: Uint8Array<ArrayBuffer>) => {
  const { headers, url } = request(`/api/programme/${month()}/csv${query}`, { method: "POST", body: {}, cookie });
  const asked = new Request(url, { method: "POST", headers, body: bytes });
  const answer = await tableRoute.POST(asked, { params: Promise.resolve({ month: month() }) });
  return { status: answer.status, body: await answer.json() };
};
/** ISO 8859-1 is Windows-1252 for these letters. */
const latin = (text: string) => Uint8Array.from(Buffer.from(text, "latin1"));

test("a file of Windows-1252 with a line that is none is looked at, refused whole, and taken without it", async () => {
  const table = latin(`Datum;Uhrzeit;Dauer;Kurs\n${month()}-02;18.30 Uhr;45;Rücken\n${month()}-03;später;45;Arme\n`);
  const unread = ["Line 3: “später” is no time. Write it as 07:30."];
  const notes = ["New here, and made with the classes: theme Rücken."];
  expect(await send("?preview=yes", table)).toEqual({ status: 200, body: { added: 1, there: 0, notes, unread } });
  expect(await send("", table)).toMatchObject({ status: 400, body: { error: { code: "not-a-table" } } });
  expect(await send("?unread=leave", table)).toEqual({ status: 200, body: { added: 1, there: 0, notes: [], unread } });
  expect((await send("?preview=yes", table)).body).toMatchObject({ added: 0, there: 1 });
});

test("a file that is no text is refused in words of a table", async () => {
  const { status, body } = await send("?preview=yes", Uint8Array.from([0x50, 0x4b, 3, 4, 0, 0]));
  expect([status, body.error.code]).toEqual([400, "not-a-table"]);
  expect(body.error.message).toContain("save it as CSV");
});
