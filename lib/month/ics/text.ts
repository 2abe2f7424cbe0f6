/** Content lines of iCalendar: TEXT values (RFC 5545 §3.3.11) and folding (§3.1). */

/** Octets of a line without its line break. */
const LINE_OCTETS = 75;

/** CONTROL of RFC 5545 §3.1 but the tab and the line break, which has its own spelling. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters that the format excludes
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g;

const ASCII = /^[\x20-\x7e]*$/;

/** A TEXT value: one spelling of a line break, no control characters, `\`, `;` and `,` escaped. */
export const textValue = (text: string): string =>
  text
    .replace(/\r\n?/g, "\n")
    .replace(CONTROL, "")
    .replace(/[\\;,]/g, "\\$&")
    .replaceAll("\n", "\\n");

/**
 * The line with its CRLF, folded: as many whole characters as fit in 75 octets, then lines of one space and as many as fit in
 * the other 74. A character is a code point; a lone surrogate counts as the three octets it is written with.
 */
export function contentLine(line: string): string {
  // Most lines: no character has more than three octets in fewer than two UTF-16 units.
  if (line.length * 3 <= LINE_OCTETS || (line.length <= LINE_OCTETS && ASCII.test(line))) return `${line}\r\n`;
  let folded = "";
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character);
    if (octets + size > LINE_OCTETS) {
      folded += "\r\n ";
      octets = 1;
    }
    folded += character;
    octets += size;
  }
  return `${folded}\r\n`;
}

function octetsOf(character: string): number {
  const point = character.codePointAt(0) ?? 0;
  if (point < 0x80) return 1;
  if (point < 0x800) return 2;
  return point < 0x10000 ? 3 : 4;
}
