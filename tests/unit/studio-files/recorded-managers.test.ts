/** Who is a manager by the record; an import makes a link for nobody else. */
import { execFileSync } from "node:child_process";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { listMembers } from "#db/repos/people-repo.ts";
import type { Person } from "#lib/policy/can.ts";
import { changeRoles, removePerson } from "#server/people/manage-people.ts";
import { exportStudio } from "#server/studio-files/export-studio.ts";
import { recordedManagers } from "#server/studio-files/recorded-managers.ts";
import { personCalled } from "#tests/support/every-table.ts";
import { openSeeded, type SeededDatabase } from "#tests/support/seeded-database.ts";

const ROOT = join(import.meta.dirname, "../../..");
let studio: SeededDatabase;
beforeAll(async () => {
  studio = await openSeeded();
}, 60_000);
afterAll(() => studio.remove());

const person = (name: string): Person => {
  const { id, roles } = personCalled(studio.app, `${name}@tholepin.example`);
  return { kind: "person", id, roles };
};

test("the record follows roles as they are given and taken; a member's row alone gets a warning and no link", () => {
  const { app, folder } = studio;
  const [petra, ines, marta, sam] = ["petra", "ines", "marta", "sam"].map(person) as [Person, Person, Person, Person];
  const listed = () => new Set(listMembers(app.db).flatMap(({ id, roles }) => (roles.includes("manager") ? [id] : [])));
  expect(recordedManagers(app.db)).toEqual(listed());
  changeRoles(app, petra, ines.id, ["lead", "manager"]);
  changeRoles(app, petra, marta.id, ["manager"]);
  expect(recordedManagers(app.db)).toEqual(new Set([petra.id, ines.id, marta.id]));
  changeRoles(app, petra, ines.id, ["lead"]);
  removePerson(app, petra, marta.id);
  expect(recordedManagers(app.db)).toEqual(listed());
  app.db.raw.prepare("update member set role = 'manager' where user_id = ?").run(sam.id);
  expect(recordedManagers(app.db)).toEqual(new Set([petra.id]));

  const { databaseFile, secret, origin } = app.env;
  const out = join(folder, "out");
  exportStudio({ databaseFile, secret, origin, program: "0.1.0", at: 0 }, out);
  const env = { ...process.env, SPRINGLINE_DATA: join(folder, "two"), SPRINGLINE_SECRET: undefined };
  const args = ["server/cli/command.mjs", "import", out];
  const said = execFileSync(process.execPath, args, { cwd: ROOT, env, encoding: "utf8" });
  expect(said).toMatch(/^Petra Vale, a manager by the record: \S+\/reset\/\S+$/m);
  expect(said).toMatch(/^Warning: Sam .*\(sam@tholepin\.example\) is a manager in this export, but not by its record/m);
  expect(said.match(/\/reset\//g)).toHaveLength(1);
}, 60_000);
