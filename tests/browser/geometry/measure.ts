/**
 * Checks that every word on the screen can be read. Measures ink, not line boxes: what the letters cover, by the font's
 * own metrics. Finds words outside the screen, cut by a box, over each other, or under something else.
 */
interface Ink {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}
interface Word extends Ink {
  readonly element: HTMLElement;
  readonly node: Text;
}

/** CSS px by which ink may overlap or stick out, for hinting and half pixels. */
const SLACK = 1.5;
const canvas = document.createElement("canvas").getContext("2d");
const measures = new Map<string, { ascent: number; descent: number; font: number; all: number }>();

function inkOf(said: string, style: CSSStyleDeclaration) {
  const text = style.textTransform === "uppercase" ? said.toUpperCase() : said;
  const font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
  const key = `${font} ${text}`;
  const known = measures.get(key);
  if (known) return known;
  if (!canvas) throw new Error("no canvas");
  canvas.font = font;
  const m = canvas.measureText(text);
  const made = {
    ascent: m.actualBoundingBoxAscent,
    descent: m.actualBoundingBoxDescent,
    font: m.fontBoundingBoxAscent,
    all: m.fontBoundingBoxAscent + m.fontBoundingBoxDescent,
  };
  measures.set(key, made);
  return made;
}

/** Words that are not visible: for screen readers only, or not drawn. */
const isHidden = (element: HTMLElement): boolean =>
  element.closest(".visually-hidden, option, svg, [hidden]") !== null ||
  !element.checkVisibility({ visibilityProperty: true });

function wordsOf(root: HTMLElement): Word[] {
  const words: Word[] = [];
  const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  for (let node = walker.nextNode() as Text | null; node; node = walker.nextNode() as Text | null) {
    const element = node.parentElement;
    const text = node.data.trim();
    if (!element || text === "" || isHidden(element)) continue;
    const ink = inkOf(text, getComputedStyle(element));
    const from = node.data.indexOf(text);
    range.setStart(node, from);
    range.setEnd(node, from + text.length);
    for (const rect of range.getClientRects()) {
      if (rect.width < 1 || isScrolledAway(element, rect)) continue;
      // The content area of an inline box is centred on the font's own ascent and descent.
      const baseline = rect.top + (rect.height * ink.font) / ink.all;
      const { left, right } = rect;
      words.push({ text, element, node, left, right, top: baseline - ink.ascent, bottom: baseline + ink.descent });
    }
  }
  return words;
}

/** Rows of a scrolling list may be below its edge; what comes before the list may not. */
function isScrolledAway(element: HTMLElement, rect: DOMRect): boolean {
  const box = element.closest("li")?.closest("[data-scrolls]")?.getBoundingClientRect();
  return box !== undefined && (rect.bottom > box.bottom || rect.top < box.top);
}

/** At least one row of such a list must be fully visible, so that it looks like a list. */
const rowsUnseen = (root: HTMLElement): string[] =>
  [...root.querySelectorAll("[data-scrolls]")].flatMap((box) => {
    const row = box.querySelector("li")?.getBoundingClientRect();
    return row && row.bottom > box.getBoundingClientRect().bottom + SLACK ? ["no row of the list is seen"] : [];
  });

const shares = (a: Ink, b: Ink): boolean =>
  Math.min(a.right, b.right) - Math.max(a.left, b.left) > SLACK &&
  Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > SLACK;

const sticksOut = (ink: Ink, box: { left: number; right: number; top: number; bottom: number }): boolean =>
  ink.left < box.left - SLACK ||
  ink.right > box.right + SLACK ||
  ink.top < box.top - SLACK ||
  ink.bottom > box.bottom + SLACK;

/** Each fault as a sentence; none when every word can be read. */
export function faultsOf(root: HTMLElement): string[] {
  const words = wordsOf(root);
  const screen = { left: 0, right: innerWidth, top: 0, bottom: innerHeight };
  const faults: string[] = [];
  const say = (what: string, word: Ink, of = "") => faults.push(`${what}: "${word.text.slice(0, 40)}"${of}`);
  for (const [n, word] of words.entries()) {
    if (sticksOut(word, screen)) say("off the screen", word);
    else if (isCut(word)) say("cut", word);
    else {
      const over = coverOf(word);
      if (over) say("covered", word, ` by ${over.tagName.toLowerCase()} ${over.textContent?.slice(0, 30)}`);
    }
    for (const other of words.slice(n + 1)) {
      if (other.node !== word.node && shares(word, other))
        say("over each other", word, ` and "${other.text.slice(0, 40)}"`);
    }
  }
  return [...new Set([...faults, ...tooFull(root), ...rowsUnseen(root)])];
}

function isCut(word: Word): boolean {
  for (let box: HTMLElement | null = word.element; box && box !== document.body; box = box.parentElement) {
    if (getComputedStyle(box).overflow === "visible") continue;
    if (sticksOut(word, box.getBoundingClientRect())) return true;
  }
  return false;
}

/** What is painted over a word, checked at its ends and middle. Boxes without a background hide nothing. */
function coverOf({ element, left, right, top, bottom }: Word): Element | undefined {
  const middle = (top + bottom) / 2;
  for (const x of [left + 2, (left + right) / 2, right - 2]) {
    const there = document.elementFromPoint(x, middle);
    if (!there || there.contains(element) || element.contains(there)) continue;
    for (let box: Element | null = there; box && !box.contains(element); box = box.parentElement) {
      // Letters may extend past the background of their own box.
      if (paints(box) && holds(box, x, middle)) return box;
    }
  }
  return undefined;
}

function holds(box: Element, x: number, y: number): boolean {
  const { left, right, top, bottom } = box.getBoundingClientRect();
  return x >= left && x <= right && y >= top && y <= bottom;
}

function paints(box: Element): boolean {
  const { backgroundColor, backgroundImage } = getComputedStyle(box);
  return backgroundImage !== "none" || !/(transparent|, 0\))$/.test(backgroundColor) || box.matches("button, select");
}

/** True for boxes that scroll or clip. */
function tooFull(root: HTMLElement): string[] {
  return [root, ...root.querySelectorAll<HTMLElement>("*")].flatMap((box) => {
    if (
      box instanceof SVGElement ||
      box.closest(".visually-hidden, select") ||
      getComputedStyle(box).overflow === "visible"
    )
      return [];
    // The font's box below the last line is empty; ink is checked separately.
    const deep = Math.max(2, 0.2 * Number.parseFloat(getComputedStyle(box).fontSize));
    const deeper = box.scrollHeight > box.clientHeight + deep && !box.matches("[data-scrolls]");
    const over = deeper || box.scrollWidth > box.clientWidth + 2;
    return over
      ? [`holds more than it shows: ${box.tagName.toLowerCase()} ${box.getAttribute("aria-label") ?? ""}`]
      : [];
  });
}
