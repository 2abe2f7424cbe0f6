/** The program's sources as their syntax trees say: what each imports, exports and declares. Parsed once for all checks. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { type ParseResult, parseSync, Visitor, type VisitorObject } from "oxc-parser";

export const ROOT = resolve(import.meta.dirname, "../..");
export const LAYERS = ["app", "server", "db", "lib", "seed"] as const;
export type Layer = (typeof LAYERS)[number];

interface Import {
  /** As it is written. */
  readonly from: string;
  /** Path in the project, or undefined for a package. */
  readonly to: string | undefined;
  /** Only types are taken: nothing is left of it when the program runs. */
  readonly typeOnly: boolean;
}
interface Declared {
  readonly name: string;
  /** 1-based. */
  readonly line: number;
  readonly lines: number;
  /** The lines right above it, where a reason would stand. */
  readonly above: string;
}
export interface Source {
  /** From the root, with `/`. */
  readonly path: string;
  readonly layer: Layer;
  readonly text: string;
  readonly imports: readonly Import[];
  /** Names that are defined here and exported; re-exports are not. */
  readonly exports: readonly string[];
  readonly functions: readonly Declared[];
}

export function* filesUnder(dir: string, wanted: RegExp): Generator<string> {
  for (const entry of readdirSync(dir, { withFileTypes: true })) {
    const path = join(dir, entry.name);
    if (entry.isDirectory() && entry.name !== "node_modules") yield* filesUnder(path, wanted);
    else if (entry.isFile() && wanted.test(entry.name)) yield path;
  }
}

function targetOf(path: string, from: string): string | undefined {
  if (from.startsWith("#")) return from.slice(1);
  if (from.startsWith(".")) return relative(ROOT, resolve(ROOT, dirname(path), from));
  return undefined;
}

/** Static imports, re-exports, `import()` and `import("...").Type` alike. */
function importsOf(path: string, text: string, { module, program }: ParseResult): Import[] {
  const found: { from: string; typeOnly: boolean }[] = [];
  for (const { moduleRequest, entries, start, end } of module.staticImports) {
    const typeOnly = /^import\s+type\b/.test(text.slice(start, end)) || onlyTypes(entries);
    found.push({ from: moduleRequest.value, typeOnly });
  }
  for (const { entries } of module.staticExports) {
    for (const { moduleRequest, isType } of entries) {
      if (moduleRequest) found.push({ from: moduleRequest.value, typeOnly: isType });
    }
  }
  // Not written as `new Visitor({ ImportExpression: ... })`: the linter takes capitalised functions for components.
  const onNode: VisitorObject = {};
  onNode.ImportExpression = ({ source }) => {
    if (source.type === "Literal" && typeof source.value === "string") {
      found.push({ from: source.value, typeOnly: false });
    }
  };
  onNode.TSImportType = ({ source }) => {
    found.push({ from: source.value, typeOnly: true });
  };
  new Visitor(onNode).visit(program);
  return found.map(({ from, typeOnly }) => ({ from, typeOnly, to: targetOf(path, from) }));
}

const onlyTypes = (entries: readonly { readonly isType: boolean }[]): boolean =>
  entries.length > 0 && entries.every(({ isType }) => isType);

function exportsOf({ module }: ParseResult): string[] {
  return module.staticExports.flatMap(({ entries }) =>
    entries.flatMap(({ moduleRequest, exportName }) => (moduleRequest || !exportName.name ? [] : [exportName.name])),
  );
}

function functionsOf(text: string, { program }: ParseResult): Declared[] {
  const found: Declared[] = [];
  const lineAt = (offset: number) => text.slice(0, offset).split("\n").length;
  const note = ({ start, end }: { readonly start: number; readonly end: number }) => {
    const [line, last] = [lineAt(start), lineAt(end)];
    const above = text
      .split("\n")
      .slice(Math.max(0, line - 6), line - 1)
      .join("\n");
    const name = /(?:function|const|let)\s+(\w+)/.exec(text.split("\n")[line - 1] ?? "")?.[1] ?? "a function";
    found.push({ name, line, lines: last - line + 1, above });
  };
  new Visitor({ FunctionDeclaration: note, FunctionExpression: note, ArrowFunctionExpression: note }).visit(program);
  return found;
}

function sourceOf(layer: Layer, file: string): Source {
  const text = readFileSync(file, "utf8");
  const path = relative(ROOT, file);
  const parsed = parseSync(file, text);
  return {
    path,
    layer,
    text,
    imports: importsOf(path, text, parsed),
    exports: exportsOf(parsed),
    functions: functionsOf(text, parsed),
  };
}

export const sources: readonly Source[] = LAYERS.flatMap((layer) =>
  [...filesUnder(join(ROOT, layer), /\.tsx?$/)].map((file) => sourceOf(layer, file)),
);
export const sourceAt: ReadonlyMap<string, Source> = new Map(sources.map((source) => [source.path, source]));

export const layerOf = (path: string): Layer | undefined => LAYERS.find((layer) => path.startsWith(`${layer}/`));
