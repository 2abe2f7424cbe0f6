/** After a deletion neither name nor address is in any table but where somebody else typed it or a month was signed. */
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { openDatabase } from "#db/connection.ts";
import { emptyLog } from "#db/file/checkpoints.ts";
import { tableColumns, workspaceTables } from "#db/file/table-rows.ts";
import { listFormerPeople } from "#db/repos/delete-person-repo.ts";
import { insertInvitation, namesById } from "#db/repos/people-repo.ts";
import { listPlanRows, readPlanRow } from "#db/repos/plan-repo.ts";
import { addToRecord, findRecord, recordHead } from "#db/repos/record-repo.ts";
import { insertComment } from "#db/repos/thread-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { wordIndexFile } from "#db/words/word-index.ts";
import { planParts } from "#lib/doc/layout.ts";
import type { Person } from "#lib/policy/can.ts";
import { recordSentence } from "#lib/record/kinds.ts";
import { planDoc } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { deletePerson, listFormer, readDeletion } from "#server/people/delete-person.ts";
import { invite, revokeInvitation } from "#server/people/invite.ts";
import { removePerson } from "#server/people/manage-people.ts";
import { changeOwnName } from "#server/people/own-account.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { proveRecord } from "#server/record/prove-record.ts";
import { recordNames } from "#server/record/record-names.ts";
import { exportStudio } from "#server/studio-files/export-studio.ts";
import { importStudio } from "#server/studio-files/import-studio.ts";
import { fillEveryTable, personCalled } from "#tests/support/every-table.ts";
import { copySeeded, openSeeded, type SeededDatabase, stopProgram } from "#tests/support/seeded-database.ts";
import { checkAsThirdParty } from "#tests/support/third-party-check.ts";

let whole: SeededDatabase;
let studio: SeededDatabase;
let app: Springline;
let petra: Person;
let marta: Person;
let privatePlan: string;

const person = (name: string): Person => {
  const { id, roles } = personCalled(app, `${name}@tholepin.example`);
  return { kind: "person", id, roles };
};

/** Marta has been everywhere, under another name and address before, and has a plan that only she can see. */
beforeAll(async () => {
  whole = await openSeeded();
  app = whole.app;
  [petra, marta] = [person("petra"), person("marta")];
  fillEveryTable(app, marta.id);
  changeOwnName(app, marta, { name: "Marta Ahlgren" });
  const at = app.now();
  const entry = { at, actorId: marta.id, subject: `person/${marta.id}`, kind: "email-changed" };
  const body = { email: "marta@tholepin.example", before: "old-marta@tholepin.example" };
  inTransaction(app.db, () => addToRecord(app.db, { ...entry, body }));
  const room = listPlanRows(app.db)[0]?.roomId ?? "";
  const made = createPlan(app, marta, { title: "Only mine", lengthSeconds: 600, roomId: room });
  if (!made.ok) throw new Error(made.error.message);
  privatePlan = made.value.id;
  app.documents.transact(planDoc(privatePlan), marta.id, (doc) => planParts(doc).head.set("word", "a-private-word"));
  const thread = String(app.db.raw.prepare("select id from thread").pluck().get());
  const words = { authorId: person("ines").id, body: "Ask Marta Ahlgren.", at };
  inTransaction(app.db, () => insertComment(app.db, { id: "comment-1", threadId: thread, ...words }));
  await stopProgram(app);
}, 60_000);
beforeEach(() => {
  studio = copySeeded(whole);
  app = studio.app;
});
afterEach(() => studio.remove());
afterAll(() => whole.remove());

/** Columns in which one of these words stands. */
function whereWords(words: readonly string[]): string[] {
  const { raw } = app.db;
  return workspaceTables(raw).flatMap((table) =>
    tableColumns(raw, table).flatMap(({ name }) => {
      const find = raw.prepare(`select 1 from "${table}" where instr(lower(cast("${name}" as text)), lower(?)) > 0`);
      const inBytes = raw.prepare(`select 1 from "${table}" where instr(cast("${name}" as blob), cast(? as blob)) > 0`);
      return words.some((word) => find.get(word) ?? inBytes.get(word)) ? [`${table}.${name}`] : [];
    }),
  );
}

const WORDS = ["Lindqvist", "Ahlgren", "marta@tholepin", "Marta L"];
const asked = { name: "Marta Ahlgren", plansTo: null, privatePlans: 1 };

test("told beforehand in numbers; gone afterwards, with the chain still whole", async () => {
  const told = readDeletion(app, petra, marta.id);
  const said = { name: "Marta Ahlgren", pseudonym: "Former coach 1", privatePlans: ["Only mine"] };
  expect(told).toMatchObject({ value: said });
  expect(told.ok && told.value.kept).toMatchObject({ editions: 1, months: 1 });
  expect(whereWords(WORDS).length).toBeGreaterThan(5);
  const before = recordHead(app.db);
  expect(proveRecord(app.db).holds).toBe(true);

  expect(deletePerson(app, petra, marta.id, asked)).toEqual({ ok: true, value: { pseudonym: "Former coach 1" } });
  // What a colleague typed, and a month that was signed with its coaches' names.
  expect(whereWords(WORDS)).toEqual(["comment.body", "month_edition.file_json"]);
  expect(whereWords(["a-private-word", "Only mine"])).toEqual([]);
  expect(proveRecord(app.db)).toEqual({ holds: true, head: recordHead(app.db) });
  expect(proveRecord(app.db, before).holds).toBe(true);
  expect(namesById(app.db).get(marta.id)).toBe("Former coach 1");
  expect(readPlanRow(app.db, privatePlan)).toBeUndefined();
  expect(listPlanRows(app.db).some(({ ownerId }) => ownerId === marta.id)).toBe(true);
  const rows = findRecord(app.db, { personId: marta.id }, { after: 0, before: 1e9, limit: 1000 });
  const says = rows.map((row) => recordSentence(row, recordNames(app.db)));
  expect(says[0]).toBe("deleted the account of Former coach 1 for good, and 1 plan that only they could see.");
  expect(says.join("\n")).not.toMatch(/Lindqvist|Ahlgren|undefined/);
  expect(says).toContain("changed the name of an account that was deleted since.");
  expect(deletePerson(app, petra, marta.id, asked)).toMatchObject({ error: { code: "not-found" } });

  const { databaseFile, origin, secret } = app.env;
  const out = join(studio.folder, "out");
  exportStudio({ databaseFile, origin, secret, program: "0.1.0", at: 0 }, out);
  expect((await checkAsThirdParty(out)).rows).toBe(recordHead(app.db).seq);
  const two = join(studio.folder, "two");
  mkdirSync(two);
  await importStudio({ dataDir: two, databaseFile: join(two, "springline.sqlite"), givenSecret: undefined }, out);
}, 60_000);

test("plans that are handed over stay whole, and nothing of them is deleted", () => {
  const owned = listPlanRows(app.db).filter(({ ownerId }) => ownerId === marta.id).length;
  const ines = person("ines");
  const heirs = [{ name: "Ines Duarte" }, { name: "Jonas Okafor" }];
  expect(readDeletion(app, petra, marta.id)).toMatchObject({ value: { heirs } });
  const toManager = deletePerson(app, petra, marta.id, { ...asked, plansTo: petra.id });
  expect(toManager).toMatchObject({ error: { code: "not-a-writer" } });
  expect(deletePerson(app, petra, marta.id, { ...asked, plansTo: ines.id }).ok).toBe(true);
  expect(readPlanRow(app.db, privatePlan)?.ownerId).toBe(ines.id);
  expect(owned).toBeGreaterThan(1);
  expect(listPlanRows(app.db).filter(({ ownerId }) => ownerId === marta.id)).toEqual([]);
  const word = app.documents.withDoc(planDoc(privatePlan), (doc) => planParts(doc).head.get("word"));
  expect(word).toBe("a-private-word");
});

test("invitations to earlier addresses go; those of a namesake stay, in the table and in the record", () => {
  const { raw } = app.db;
  // From before two people could not bear one name.
  const namesake = { id: "namesake", email: "another@cove.example", name: "Marta Ahlgren", roles: ["coach" as const] };
  const now = app.now();
  insertInvitation(app.db, { ...namesake, createdAt: now, expiresAt: now + 1, inviterId: petra.id });
  const invited = { actorId: petra.id, subject: "studio", kind: "invited" };
  const body = { to: namesake.name, roles: namesake.roles };
  inTransaction(app.db, () => addToRecord(app.db, { at: now, ...invited, body }));
  const earlier = { id: "earlier", email: "Old-Marta@tholepin.example", name: "Martha L. Ahl", at: app.now() - 9e8 };
  const times = { createdAt: earlier.at, expiresAt: earlier.at };
  insertInvitation(app.db, { ...earlier, ...times, roles: ["coach"], inviterId: petra.id });
  raw.exec("update invitation set status = 'accepted' where id = 'earlier'");
  const entry = { at: earlier.at + 3, ...invited };
  inTransaction(app.db, () => addToRecord(app.db, { ...entry, body: { to: earlier.name, roles: ["coach"] } }));
  expect(deletePerson(app, petra, marta.id, asked).ok).toBe(true);
  expect(whereWords(["Martha L. Ahl", "old-marta@"])).toEqual([]);
  expect(raw.prepare("select email from invitation where name = 'Marta Ahlgren'").pluck().all()).toEqual([
    "another@cove.example",
  ]);
  const rows = findRecord(app.db, { kinds: ["invited"] }, { after: 0, before: 1e9, limit: 1000 });
  expect(rows.filter(({ bodyJson }) => bodyJson.includes("Marta Ahlgren"))).toHaveLength(1);
  expect(proveRecord(app.db).holds).toBe(true);
});

test("of two namesakes who were invited and uninvited in one second, the rows of one alone go", () => {
  const namesake = { name: "Marta Ahlgren", roles: ["coach" as const] };
  // Both were invited before she worked here: nobody may take a colleague's name.
  const rename = app.db.raw.prepare("update user set name = ? where id = ?");
  rename.run("Somebody Else", marta.id);
  const links = ["old-marta@tholepin.example", "another@cove.example"].map((email) => {
    const made = invite(app, petra, { email, ...namesake });
    if (!made.ok) throw new Error(made.error.message);
    return made.value.id;
  });
  for (const id of links) expect(revokeInvitation(app, petra, id).ok).toBe(true);
  rename.run("Marta Ahlgren", marta.id);
  // The link itself is nowhere in the record.
  const said = () => findRecord(app.db, {}, { after: 0, before: 1e9, limit: 5000 });
  expect(said().filter(({ bodyJson }) => links.some((id) => bodyJson.includes(id)))).toEqual([]);
  expect(deletePerson(app, petra, marta.id, asked).ok).toBe(true);
  const left = said().filter(({ kind, bodyJson }) => kind.startsWith("invit") && bodyJson.includes("Marta Ahlgren"));
  const digest = createHash("sha256").update(`springline invitation ${links[1]}`, "utf8").digest("hex");
  expect(left.map(({ kind, bodyJson }) => [kind, JSON.parse(bodyJson).invitation])).toEqual([
    ["invitation-revoked", digest],
    ["invited", digest],
  ]);
  expect(proveRecord(app.db).holds).toBe(true);
});

test("an earlier address that a colleague has now is the colleague's", () => {
  app.db.raw.prepare("update user set email = 'old-marta@tholepin.example' where id = ?").run(person("jonas").id);
  const times = { createdAt: app.now(), expiresAt: app.now() };
  const his = { id: "his", email: "old-marta@tholepin.example", name: "Jonas Okafor", roles: ["trainee" as const] };
  insertInvitation(app.db, { ...his, ...times, inviterId: petra.id });
  const count = () =>
    app.db.raw.prepare("select count(*) from invitation where email like 'old-marta@%'").pluck().get();
  expect(deletePerson(app, petra, marta.id, asked).ok).toBe(true);
  expect(count()).toBe(1);
});

test("no word of a deleted plan is left in a file; a reader in the way only keeps the log", () => {
  const line = { place: "said" as const, itemId: "i", line: 0, text: "a-private-word" };
  app.words.put({ planId: privatePlan, generation: "g", seq: 1, lines: [line] });
  app.documents.transact(planDoc(privatePlan), marta.id, (doc) => planParts(doc).head.set("word", "xylophonist"));
  const { file } = app.db;
  const has = (word: string) =>
    [file, wordIndexFile(file)]
      .flatMap((name) => [name, `${name}-wal`])
      .filter((name) => readFileSync(name).includes(word))
      .map((name) => name.slice(file.lastIndexOf("springline")));
  expect([has("a-private-word").length, has("xylophonist").length]).not.toContain(0);
  const reader = openDatabase(file, { readOnly: true });
  reader.raw.exec("begin; select count(*) from user");
  const from = performance.now();
  expect(deletePerson(app, petra, marta.id, asked).ok).toBe(true);
  expect(performance.now() - from).toBeLessThan(900);
  expect(has("a-private-word")).not.toContain("springline.words");
  reader.close();
  expect(emptyLog(app.db.raw)).toBe(true);
  expect([has("a-private-word"), has("xylophonist")]).toEqual([[], []]);
});

test("refused: another name, other numbers, nobody's right, the last manager; then nothing has changed", () => {
  const [before, words] = [recordHead(app.db), whereWords(WORDS)];
  const code = (result: ReturnType<typeof deletePerson>) => (result.ok ? "deleted" : result.error.code);
  expect(code(deletePerson(app, petra, marta.id, { ...asked, name: "Marta" }))).toBe("not-confirmed");
  expect(code(deletePerson(app, petra, marta.id, { ...asked, privatePlans: 0 }))).toBe("deletion-changed");
  expect(code(deletePerson(app, petra, "nobody", asked))).toBe("not-found");
  for (const who of ["ines", "marta", "jonas", "sam"]) {
    expect(code(deletePerson(app, person(who), marta.id, asked))).toBe("no-right");
    expect(readDeletion(app, person(who), marta.id)).toMatchObject({ error: { code: "no-right" } });
    expect(listFormer(app, person(who))).toMatchObject({ error: { code: "no-right" } });
  }
  const self = { ...asked, name: "Petra Vale", privatePlans: 0 };
  expect(code(deletePerson(app, petra, petra.id, self))).toBe("last-manager");
  expect(readDeletion(app, petra, petra.id)).toMatchObject({ error: { code: "last-manager" } });
  expect(recordHead(app.db)).toEqual(before);
  expect(whereWords(WORDS)).toEqual(words);
});

test("somebody who has left can be deleted too; their address may join again as somebody new", () => {
  expect(removePerson(app, petra, marta.id).ok).toBe(true);
  expect(listFormer(app, petra)).toMatchObject({ value: [{ id: marta.id, name: "Marta Ahlgren" }] });
  expect(deletePerson(app, petra, marta.id, asked)).toMatchObject({ value: { pseudonym: "Former colleague 1" } });
  expect(listFormerPeople(app.db)).toEqual([]);
  expect(invite(app, petra, { email: "marta@tholepin.example", roles: ["coach"] }).ok).toBe(true);
});

test("a record in which a row was erased without a deletion, or otherwise than one says, does not hold", () => {
  const seq = findRecord(app.db, { kinds: ["name-changed"] }, { after: 0, before: 1e9, limit: 1 })[0]?.seq ?? 0;
  const { raw } = app.db;
  expect(() => raw.exec(`update record set body_json = '{"to":"X"}' where seq = ${seq}`)).toThrow(/only added to/);
  expect(() => raw.exec(`update record set body_json = '{"erased":true}', at = 1 where seq = ${seq}`)).toThrow();
  expect(() => raw.exec("update record set body_json = '{\"erased\":true}' where seq = 1")).toThrow(/only added to/);
  raw.exec(`update record set body_json = '{"erased":true}' where seq = ${seq}`);
  expect(proveRecord(app.db)).toMatchObject({ holds: false, fault: { seq } });
  const body = { pseudonym: "X", erased: [{ seq, sha256: "0".repeat(64) }] };
  const entry = { at: 1, actorId: petra.id, subject: "person/x", kind: "person-deleted", body };
  inTransaction(app.db, () => addToRecord(app.db, entry));
  expect(proveRecord(app.db)).toMatchObject({ holds: false, fault: { seq } });
});
