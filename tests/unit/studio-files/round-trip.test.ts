/**
 * A studio with a row in every table goes out as files, into an empty studio, and out again: the same files, byte for byte. What
 * is promised: every file but manifest.json, which also says when it was made.
 */
import { cpSync, existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openDatabase } from "#db/connection.ts";
import { tableCounters, tableRows, workspaceTables } from "#db/file/table-rows.ts";
import { listPlanRows } from "#db/repos/plan-repo.ts";
import { listStudioRooms } from "#db/repos/room-repo.ts";
import { readSigningKey } from "#db/repos/signing-key-repo.ts";
import { listThreads } from "#db/repos/thread-repo.ts";
import { verifyCard } from "#lib/card/card.ts";
import { pinOf } from "#lib/margin/pin.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { readRoomCards } from "#server/devices/read-cards.ts";
import { readSoundEdition } from "#server/editions/sound-edition.ts";
import { openReset } from "#server/people/enter.ts";
import { BY_SERVER, storeReset } from "#server/people/reset-password.ts";
import { exportPlan, planFileText } from "#server/plans/export-plan.ts";
import { proveRecord } from "#server/record/prove-record.ts";
import { exportStudio } from "#server/studio-files/export-studio.ts";
import { importStudio } from "#server/studio-files/import-studio.ts";
import type { StudioManifest } from "#server/studio-files/manifest.ts";
import { WHOLE_STUDIO } from "#server/studio-files/studio-reader.ts";
import { travellingTables, travels } from "#server/studio-files/tables.ts";
import { saveThreads, threadsFileText } from "#server/threads/save-threads.ts";
import { fillEveryTable, personCalled, SECRETS } from "#tests/support/every-table.ts";
import { openProgram, openSeeded, type SeededDatabase, stopProgram } from "#tests/support/seeded-database.ts";
import { checkAsThirdParty } from "#tests/support/third-party-check.ts";

let studio: SeededDatabase;
let first: StudioManifest;
let out: string;
/** The rows of each table at the moment of the export: a document at rest is folded some time later. */
let exported: ReadonlyMap<string, unknown[]>;
const place = () => {
  const dataDir = join(studio.folder, "two");
  return { dataDir, databaseFile: join(dataDir, "springline.sqlite"), givenSecret: undefined };
};
const setup = (databaseFile: string, secret?: string) => ({
  ...{ databaseFile, secret, origin: studio.app.env.origin, program: "0.1.0", at: Date.UTC(2026, 10, 10) },
});

beforeAll(async () => {
  studio = await openSeeded();
  const { app } = studio;
  fillEveryTable(app, personCalled(app, "ines@tholepin.example").id);
  out = join(studio.folder, "out");
  first = exportStudio(setup(app.env.databaseFile, app.env.secret), out);
  exported = new Map(travellingTables().map((table) => [table, rowsOf(app.db.raw, table)]));
  await importStudio(place(), out);
}, 120_000);
afterAll(() => studio.remove());

const rowsOf = (raw: Database.Database, table: string) => [...tableRows(raw, table, travels(table)?.columns ?? [])];

test("no table is empty, so that the rest of this file is about something", () => {
  const { raw } = studio.app.db;
  const empty = workspaceTables(raw).filter((table) => [...tableRows(raw, table, ["rowid"])].length === 0);
  expect(empty).toEqual([]);
  expect(Object.keys(first.tables).sort()).toEqual([...travellingTables()].sort());
  expect(first.leftOut).toEqual([]);
  expect(first.faults).toEqual([]);
});

test("out again it is the same, byte for byte", () => {
  const again = exportStudio(setup(place().databaseFile), join(studio.folder, "again"));
  expect(again.files).toEqual(first.files);
  expect({ ...again, madeAt: first.madeAt }).toEqual(first);
});

test("every row that travels is there in the same order, with the numbers that were given", () => {
  const there = new Database(place().databaseFile, { readonly: true });
  const here = studio.app.db.raw;
  for (const table of travellingTables()) {
    if (table === "studio_setting") continue;
    expect(rowsOf(there, table), table).toEqual(exported.get(table));
  }
  const counters = tableCounters(here);
  expect(counters.notice).toBe(9000);
  expect(tableCounters(there)).toMatchObject(counters);
  there.close();
});

test("a plan file is what the plan's own page saves, a threads file too", () => {
  const rows = listPlanRows(studio.app.db).filter((row) => row.deletedAt === null);
  expect(rows.length).toBeGreaterThan(2);
  let threads = 0;
  for (const { id } of rows) {
    const plan = exportPlan(studio.app, WHOLE_STUDIO, id);
    expect(plan.ok && planFileText(plan.value)).toBe(readFileSync(join(out, fileOf("plans/", id)), "utf8"));
    if (listThreads(studio.app.db, id).length === 0) continue;
    const saved = saveThreads(studio.app, WHOLE_STUDIO, id);
    expect(saved.ok && threadsFileText(saved.value.data)).toBe(readFileSync(join(out, fileOf("threads/", id)), "utf8"));
    threads++;
  }
  expect(threads).toBeGreaterThan(0);
});

const fileOf = (folder: string, id: string): string =>
  first.files.find(({ path }) => path.startsWith(folder) && path.includes(id))?.path ?? "missing";

test("somebody else checks files, editions and the record with the files alone; a changed card does not hold", async () => {
  const held = await checkAsThirdParty(out);
  expect(held).toMatchObject({ files: first.files.length, rows: first.tables.record });
  expect(held.editions).toBeGreaterThan(0);
  const forged = join(studio.folder, "forged");
  cpSync(out, forged, { recursive: true });
  const card = join(forged, first.files.find(({ path }) => path.endsWith(".card.json"))?.path ?? "");
  writeFileSync(card, readFileSync(card, "utf8").replace(/"title":"/, '"title":"X'));
  await expect(checkAsThirdParty(forged)).rejects.toThrow(/does not hold/);
});

test("nothing in it opens anything", () => {
  const { db, env } = studio.app;
  const cells = (sql: string) => db.raw.prepare<[], string>(sql).pluck().all();
  const secret = [
    ...[...Object.values(SECRETS), env.secret],
    ...cells("select password from account where password is not null"),
    ...cells("select identifier from verification"),
    ...cells("select sealed_private_key from signing_key"),
  ];
  const texts = first.files.map(({ path }) => readFileSync(join(out, path), "utf8"));
  expect(secret.filter((word) => texts.some((text) => text.includes(word)))).toEqual([]);
  expect(secret.length).toBeGreaterThan(9);
});

test("the imported studio works: its record, editions, pins and devices; and people get in by a link", async () => {
  const app = openProgram(place().dataDir);
  try {
    expect(proveRecord(app.db).holds).toBe(true);
    const plan = listPlanRows(app.db).find((row) => row.state === "signed-off");
    expect(readSoundEdition(app, plan?.id ?? "", 1)).toMatchObject({ number: 1 });
    const pinned = listPlanRows(app.db).flatMap(({ id }) => listThreads(app.db, id).map((thread) => ({ id, thread })));
    const states = pinned.flatMap(({ id, thread: { anchor } }) =>
      anchor.kind === "words" ? [app.documents.withDoc(planDoc(id), (doc) => pinOf(doc, anchor).state)] : [],
    );
    expect(states).toContain("here");
    // The former private key is gone; a new one signs, and a device that is paired now takes every card.
    expect(readSigningKey(app.db)).toBeUndefined();
    const room = plan?.roomId ?? listStudioRooms(app.db)[0]?.id ?? "";
    app.db.raw.exec("drop trigger edition_withdrawal_never_deleted; delete from edition_withdrawal");
    const cards = readRoomCards(app, { kind: "device", id: "device-1", roomId: room });
    expect(cards.ok && cards.value.cards.length).toBeGreaterThan(0);
    for (const card of cards.ok ? cards.value.cards : [])
      expect(verifyCard(card, app.keys.publicKey, Date.UTC(2026, 10, 9)).ok).toBe(true);
    const person = personCalled(app, "petra@tholepin.example");
    const { link } = storeReset(app.db, { person, by: BY_SERVER, at: app.now(), origin: app.env.origin });
    const entered = await openReset(app, link.slice(link.lastIndexOf("/") + 1), "a new password 1", new Headers());
    expect(entered.status).toBe(200);
  } finally {
    await stopProgram(app);
  }
}, 60_000);

test("a studio that is there is never imported over", async () => {
  const before = readFileSync(place().databaseFile);
  await expect(importStudio(place(), out)).rejects.toThrow(/There is a studio in .* already/);
  expect(readFileSync(place().databaseFile).equals(before)).toBe(true);
  expect(readdirSync(place().dataDir).filter((name) => name.startsWith("."))).toEqual([]);
  expect(existsSync(join(place().dataDir, "secret"))).toBe(true);
  openDatabase(place().databaseFile, { readOnly: true }).close();
});
