/** Help says what the product does: every key, button, words on a screen, page and picture that a text names is there. */
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join, relative, resolve } from "node:path";
import { describe, expect, test } from "vitest";
import { namedButton, namedKey } from "#app/help/named-keys.ts";
import { HELP_PAGES, HOW_TOS, howTosAt } from "#lib/help/help-pages.ts";
import { type HelpPiece, helpPieces, textsOf } from "#lib/help/help-text.ts";
import { HELP_GROUPS, PICTURES } from "#lib/help/how-tos/types.ts";

const ROOT = resolve(import.meta.dirname, "../../..");
const filesOf = (folder: string, ending: RegExp): string[] =>
  readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && ending.test(entry.name))
    .map((entry) => relative(ROOT, join(entry.parentPath, entry.name)));

/** Whole sentences and words that the sources of the screens write: strings, and text between tags. Help itself is no proof. */
const written = (() => {
  const found = new Set<string>();
  const sources = ["app", "lib"]
    .flatMap((folder) => filesOf(folder, /\.tsx?$/))
    .filter((path) => !/^(app|lib)\/help\//.test(path));
  for (const path of sources) {
    const text = readFileSync(join(ROOT, path), "utf8");
    for (const [, said = ""] of text.matchAll(/"([^"\n]+)"/g)) found.add(said);
    for (const [, said = ""] of text.matchAll(/`([^`$\n]+)`/g)) found.add(said);
    // JSX text, which a formatter may have put on lines of its own.
    for (const [, said = ""] of text.matchAll(/>([^<>{}]+)</g)) found.add(said.replace(/\s+/g, " ").trim());
    for (const [, said = ""] of text.matchAll(/[>}]([^<>{}]+)[<{]/g)) found.add(said.replace(/\s+/g, " ").trim());
  }
  return found;
})();

/** The paths of pages, with "*" for a part that is asked. */
const pages = filesOf("app", /^(page\.tsx|route\.ts)$/)
  .filter((path) => !path.startsWith("app/api/"))
  .map((path) => `/${path.split("/").slice(1, -1).join("/")}`.replace(/\[[^\]]+\]/g, "*"));
const isPage = (path: string): boolean =>
  pages.some((page) => new RegExp(`^${page.replaceAll("*", "[^/]+")}$`).test(path));

function isThere(piece: HelpPiece): boolean {
  if (piece.kind === "key") return namedKey(piece.path) !== undefined;
  if (piece.kind === "do") return namedButton(piece.path) !== undefined;
  if (piece.kind === "says") return written.has(piece.text);
  return piece.kind === "words" || isPage(piece.href.split("#")[0] ?? "");
}

describe.each(HOW_TOS.map((one) => [one.slug, one] as const))("%s", (_slug, { body, title, about, at, group }) => {
  const texts = body.flatMap(textsOf);

  test("names only what is there", () => {
    const missing = texts.flatMap(helpPieces).filter((piece) => !isThere(piece));
    expect(missing).toEqual([]);
  });

  test("leaves no brace open and nothing empty", () => {
    const words = texts.flatMap(helpPieces).map((piece) => ("text" in piece ? piece.text : "key"));
    expect(words.filter((text) => /[{}|]/.test(text) || text === "")).toEqual([]);
    expect([title, about].filter((text) => text.trim() === "")).toEqual([]);
    expect(HELP_GROUPS).toContain(group);
  });

  test("helps with places that there are", () => {
    const known = (place: string) => {
      if (place === "/**" || place === "/floor") return true;
      const start = place.replace(/\/\*\*$/, "");
      return pages.some((page) => page === start || (place.endsWith("/**") && page.startsWith(`${start}/`)));
    };
    expect(at.filter((place) => !known(place))).toEqual([]);
  });

  test("is short enough to be read while one waits", () => {
    expect(texts.join(" ").split(/\s+/).length).toBeLessThan(260);
  });
});

test("slugs are unlike each other and unlike the other pages of help", () => {
  const hrefs = HELP_PAGES.map(({ href }) => href);
  expect(new Set(hrefs).size).toBe(hrefs.length);
  expect(HELP_PAGES.filter(({ href }) => !isPage(href)).map(({ href }) => href)).toEqual([]);
  expect(HOW_TOS.length).toBeGreaterThan(15);
});

test("every page of the studio has help of its own, not only what helps everywhere", () => {
  const inStudio = pages.filter(
    (page) => !/^\/(help|join|reset|sign-in|first-run)?(\/|$)/.test(page) && !/\/(sw\.js|manifest|parts)/.test(page),
  );
  const alone = inStudio.filter((page) => howTosAt(page.replaceAll("*", "x")).length < 2);
  expect(alone).toEqual([]);
});

test("each picture is there by day and by night, is small, and is shown by a text", () => {
  const shown = new Set(
    HOW_TOS.flatMap(({ body }) =>
      body.flatMap((block) => (typeof block === "object" && "picture" in block ? [block.picture] : [])),
    ),
  );
  for (const name of Object.keys(PICTURES)) {
    for (const scheme of ["light", "dark"]) {
      const file = join(ROOT, "app/help/pictures", `${name}-${scheme}.webp`);
      expect(existsSync(file), file).toBe(true);
      expect(statSync(file).size).toBeLessThanOrEqual(60_000);
    }
    expect([...shown]).toContain(name);
  }
});
