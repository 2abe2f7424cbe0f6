/** The demo's database and a real one are told apart by the file itself, wherever it is carried. */
import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { insertStudio, readPurpose, readStudio } from "#db/repos/studio-repo.ts";
import { EnvError } from "#server/base/env.ts";
import { fillDemo, openDatabaseFor } from "#server/main/demo-database.ts";

let dir: string;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), "springline-demo-"));
});
afterEach(() => rmSync(dir, { recursive: true }));

const file = () => join(dir, "springline.sqlite");
const demo = () => openDatabaseFor({ mode: "demo", databaseFile: file() });
const studio = { name: "Slipway Strength", town: "", soleAuthorMaySign: false, at: 1 };

test("the demo is filled once and kept", async () => {
  let filled = 0;
  for (let n = 0; n < 2; n++) {
    const db = demo();
    await fillDemo(db, async () => {
      filled++;
      insertStudio(db, studio);
    });
    expect(readPurpose(db)).toBe("demo");
    db.close();
  }
  expect(filled).toBe(1);
});

test("a demo cut off while it was being filled is begun again", async () => {
  const half = demo();
  const broken = fillDemo(half, async () => {
    insertStudio(half, studio);
    throw new Error("cut off");
  });
  await expect(broken).rejects.toThrow("cut off");
  half.close();
  const db = demo();
  expect(readStudio(db)).toBeUndefined();
  await fillDemo(db, async () => insertStudio(db, { ...studio, name: "Whole" }));
  expect(readStudio(db)?.name).toBe("Whole");
  db.close();
});

test("made afresh on request; a real studio is never thrown away", async () => {
  const db = demo();
  await fillDemo(db, async () => insertStudio(db, studio));
  db.close();
  const again = openDatabaseFor({ mode: "demo", databaseFile: file() }, true);
  expect(readStudio(again)).toBeUndefined();
  insertStudio(again, studio);
  again.close();
  const real = openDatabaseFor({ mode: "live", databaseFile: file() }, true);
  expect(readStudio(real)?.name).toBe("Slipway Strength");
  real.close();
});

test("a copy of the demo's file is refused as a studio, and a real one as the demo", async () => {
  const db = demo();
  await fillDemo(db, async () => insertStudio(db, studio));
  db.close();
  const copy = join(dir, "copy.sqlite");
  copyFileSync(file(), copy);
  expect(() => openDatabaseFor({ mode: "live", databaseFile: copy })).toThrow(EnvError);
  expect(() => openDatabaseFor({ mode: "dev", databaseFile: copy })).toThrow(/is the demo's database/);
  const real = openDatabaseFor({ mode: "live", databaseFile: join(dir, "real.sqlite") });
  insertStudio(real, studio);
  real.close();
  expect(() => openDatabaseFor({ mode: "demo", databaseFile: join(dir, "real.sqlite") })).toThrow(
    /holds a real studio/,
  );
});
