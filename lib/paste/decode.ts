/** The text of a file that was dropped or chosen. Spreadsheets save in several encodings, which the bytes reveal. */
import { MAX_TEXT, tooLongWords } from "./limits.ts";
import { LIST_SENTENCES } from "./paste-words.ts";

export type Decoded =
  | { readonly ok: true; readonly text: string /** What a person should look at. */; readonly note?: string }
  | { readonly ok: false; readonly say: string };

/** A file above this many bytes is not opened: four bytes for each character that can be read. */
export const MAX_BYTES = 4 * MAX_TEXT;

/** UTF-8, UTF-16 by its byte order mark, otherwise Western European (one byte a letter), which a note then says. */
export function decodeText(bytes: Uint8Array): Decoded {
  if (bytes.length > MAX_BYTES) return { ok: false, say: tooLongWords(bytes.length) };
  const [a, b] = bytes;
  if (a === 0xff && b === 0xfe) return { ok: true, text: new TextDecoder("utf-16le").decode(bytes) };
  if (a === 0xfe && b === 0xff) return { ok: true, text: new TextDecoder("utf-16be").decode(bytes) };
  if (bytes.includes(0)) return { ok: false, say: LIST_SENTENCES.notText };
  try {
    return { ok: true, text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    const text = new TextDecoder("windows-1252").decode(bytes);
    return { ok: true, text, note: LIST_SENTENCES.western };
  }
}
