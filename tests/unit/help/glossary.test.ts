/** The guide for contributors and help have one glossary. */
import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { expect, test } from "vitest";
import { GLOSSARY } from "#lib/help/glossary.ts";
import { USER_GLOSSARY, wordId } from "#lib/help/help-pages.ts";

const GUIDE = readFileSync(join(resolve(import.meta.dirname, "../../.."), "DEVELOPERS.md"), "utf8");

test("the table of the guide says what the glossary says, word by word", () => {
  const section = GUIDE.slice(GUIDE.indexOf("## Glossary"), GUIDE.indexOf("## Invariants"));
  const rows = [...section.matchAll(/^\| ([^|]+)\|([^|]+)\|([^|]*)\|$/gm)].slice(2);
  const table = rows.map(([, word = "", means = "", not = ""]) => ({
    word: word.trim(),
    means: means.trim(),
    not: not.trim(),
  }));
  expect(table).toEqual(GLOSSARY.map(({ word, means, inCode = "", not }) => ({ word, means: means + inCode, not })));
});

test("users are shown most of it, each word at an address of its own, and no code", () => {
  expect(USER_GLOSSARY.length).toBeGreaterThan(40);
  const ids = USER_GLOSSARY.map(({ word }) => wordId(word));
  expect(new Set(ids).size).toBe(ids.length);
  expect(USER_GLOSSARY.filter(({ means }) => means.includes("`")).map(({ word }) => word)).toEqual([]);
});
