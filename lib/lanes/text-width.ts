/**
 * How wide text will be before it is drawn, so that no name is cut. Widths are upper bounds of the advance widths of
 * Atkinson Hyperlegible Next, regular, in thousandths of the type size.
 */
const CLASSES: readonly (readonly [characters: string, width: number])[] = [
  [" !'|`.,:;ijl", 290],
  ['()[]{}"-_/\\frtI1', 410],
  ["*cksvxyzJ2?~^", 555],
  ["abdeghnopqu", 575],
  ["3456789ELTFY$+<>", 620],
  ["w0ABCHKPSRUVXZGDNOQ=#&", 735],
  ["mMW@%", 925],
];
const WIDTHS = new Map(CLASSES.flatMap(([characters, width]) => [...characters].map((c) => [c, width] as const)));
/** Letters of other scripts may be as wide as they are high. */
const UNKNOWN = 1050;

/** Width of a text in one line, px, at a type size in px. Never less than what is drawn. */
export function textWidth(text: string, sizePx: number): number {
  let sum = 0;
  for (const character of text.normalize("NFD")) {
    if (!/\p{Mark}/u.test(character)) sum += WIDTHS.get(character) ?? UNKNOWN;
  }
  return (sum * sizePx) / 1000;
}

/**
 * The text in lines of at most `width` px, broken between words and after hyphens, never within a word. Null when one word
 * is wider, or when it takes more than `most` lines.
 */
export function wrapText(text: string, width: number, most: number, sizePx: number): readonly string[] | null {
  const lines: string[] = [];
  let line = "";
  for (const part of text.trim().split(/(?<=-)|(?<=\s)/)) {
    const longer = line + part;
    if (textWidth(longer.trimEnd(), sizePx) <= width) {
      line = longer;
      continue;
    }
    if (textWidth(part.trimEnd(), sizePx) > width) return null;
    lines.push(line.trimEnd());
    line = part;
    if (lines.length >= most) return null;
  }
  lines.push(line.trimEnd());
  return lines.length <= most ? lines : null;
}
