/** The floor's page: plain HTML around the bundle of `server/build/floor-bundle.mjs`, and the files of that bundle. */
import { readFileSync } from "node:fs";
import { extname, join } from "node:path";
import type { Env } from "#server/base/env.ts";

export interface FloorParts {
  /** File names, the entry first. They run before the first screen is shown. */
  readonly scripts: readonly string[];
  /** Fetched after the first screen. */
  readonly later: readonly string[];
  readonly styles: readonly string[];
}
type Where = Pick<Env, "distDir" | "mode">;

const TYPES: Record<string, string> = {
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".woff2": "font/woff2",
  ".woff": "font/woff",
};
/** Development has a folder of its own, so that it does not change a build. */
const folder = ({ distDir, mode }: Where): string => join(distDir, mode === "dev" ? "floor-dev" : "floor");

/** Throws when there is no build. */
export const partsOfBuild = (env: Where): FloorParts =>
  JSON.parse(readFileSync(join(folder(env), "parts.json"), "utf8"));

/** Null for anything else than a part: only plain file names of known types are read. */
export function readPart(env: Where, name: string): { bytes: Uint8Array<ArrayBuffer>; type: string } | null {
  const type = TYPES[extname(name)];
  if (!type || !/^[\w-]+\.\w+$/.test(name)) return null;
  try {
    return { bytes: new Uint8Array(readFileSync(join(folder(env), name))), type };
  } catch {
    return null;
  }
}

const address = (name: string): string => `/floor/parts/${name}`;

/** @param parts names are letters, digits, `-` and `_`, so they need no escaping; so is the build, null in development */
export const floorPage = ({ scripts, later, styles }: FloorParts, build: string | null): string => `<!DOCTYPE html>
<html lang="en-GB"${build === null ? "" : ` data-build="${build}"`}>
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover">
<meta name="theme-color" content="#0f1318">
<meta name="color-scheme" content="dark">
<meta name="description" content="The signed editions of this room, ready to run without a network.">
<title>Floor · Springline</title>
<link rel="icon" href="/icon.svg" type="image/svg+xml">
<link rel="manifest" href="/floor/manifest.webmanifest">
${styles.map((name) => `<link rel="stylesheet" href="${address(name)}">`).join("\n")}
${scripts.map((name) => `<script type="module" src="${address(name)}"></script>`).join("\n")}
<script type="application/json">${JSON.stringify(later.map(address))}</script>
</head>
<body>
<main class="floor"><noscript>This page runs a class on this device. It needs JavaScript: allow it for this address.</noscript></main>
</body>
</html>
`;
