/** Texts of help as pieces: plain words, and what braces name (see `how-tos/types.ts`). Pure. */
import type { HelpBlock } from "./how-tos/types.ts";

export type HelpPiece =
  | { readonly kind: "words"; readonly text: string }
  /** Of a command table: its name, the place in it and the command; on the floor, the act alone. */
  | { readonly kind: "key"; readonly path: readonly string[] }
  | { readonly kind: "do"; readonly path: readonly string[] }
  | { readonly kind: "says"; readonly text: string }
  | { readonly kind: "to"; readonly href: string; readonly text: string };

const NAMED = /\{(key|do|says|to):([^}]*)\}/g;

export function helpPieces(text: string): HelpPiece[] {
  const pieces: HelpPiece[] = [];
  let done = 0;
  for (const match of text.matchAll(NAMED)) {
    const [whole, kind, rest = ""] = match;
    if (match.index > done) pieces.push({ kind: "words", text: text.slice(done, match.index) });
    pieces.push(pieceOf(kind ?? "", rest));
    done = match.index + whole.length;
  }
  if (done < text.length) pieces.push({ kind: "words", text: text.slice(done) });
  return pieces;
}

function pieceOf(kind: string, rest: string): HelpPiece {
  if (kind === "key" || kind === "do") return { kind, path: rest.split(".") };
  if (kind === "says") return { kind, text: rest };
  const [href = "", text = ""] = rest.split("|");
  return { kind: "to", href, text };
}

/** Every text of a block. */
export function textsOf(block: HelpBlock): readonly string[] {
  if (typeof block === "string") return [block];
  if ("steps" in block) return block.steps;
  return "note" in block ? [block.note] : [];
}

/** The words of a block without keys, to be found by. */
export const plainHelp = (block: HelpBlock): string =>
  textsOf(block)
    .flatMap(helpPieces)
    .map((piece) => ("text" in piece ? piece.text : ""))
    .join("");
