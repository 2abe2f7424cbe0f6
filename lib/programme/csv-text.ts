/** The text of a table's file, in whichever coding a spreadsheet saved it. */

/**
 * UTF-8, UTF-16 where it begins with its mark, else Windows-1252, in which every file can be read. Undefined for a file that is no text,
 * such as a spreadsheet's own. Codings: WHATWG Encoding Standard.
 */
export function tableText(bytes: Uint8Array): string | undefined {
  const text = decoded(bytes);
  return text.includes("\0") ? undefined : text;
}

function decoded(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes).replaceAll(/[\u0080-\u009f]/g, inWindows);
  }
}

/** What Windows-1252 has for 0x80 to 0x9F. Node before 24 reads these bytes as Latin-1, where they are controls. */
const FROM_80 = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";
const inWindows = (control: string): string => FROM_80[control.charCodeAt(0) - 0x80] ?? control;
