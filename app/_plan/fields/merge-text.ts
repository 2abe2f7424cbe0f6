/**
 * What was composed in a field meanwhile, put onto a text that others changed meanwhile: both stay. Input methods
 * (Japanese, Korean, accents on phones) must not be interrupted, so a field is only written when composing ends.
 */
interface Change {
  readonly at: number;
  readonly removed: number;
  readonly inserted: string;
}

/** The one stretch in which `to` differs from `from`. */
function changeBetween(from: string, to: string): Change {
  const shortest = Math.min(from.length, to.length);
  let at = 0;
  while (at < shortest && from[at] === to[at]) at++;
  let tail = 0;
  while (tail < shortest - at && from[from.length - 1 - tail] === to[to.length - 1 - tail]) tail++;
  return { at, removed: from.length - at - tail, inserted: to.slice(at, to.length - tail) };
}

/** `theirs` with the change from `base` to `mine` made in it as well. Where both changed one stretch, theirs comes first. */
export function mergeText(base: string, mine: string, theirs: string): string {
  const own = changeBetween(base, mine);
  const other = changeBetween(base, theirs);
  const shift = other.inserted.length - other.removed;
  if (own.removed === 0 && own.inserted === "") return theirs;
  if (other.at + other.removed <= own.at) return put(theirs, own.at + shift, own);
  if (own.at + own.removed <= other.at) return put(theirs, own.at, own);
  return put(theirs, other.at + other.inserted.length, { ...own, removed: 0 });
}

/** Where a caret at `caret` in `before` stands once the text reads `after`. */
export function movedCaret(before: string, after: string, caret: number): number {
  const change = changeBetween(before, after);
  if (caret <= change.at) return caret;
  return Math.max(change.at, caret + change.inserted.length - change.removed);
}

function put(text: string, at: number, change: Change): string {
  return text.slice(0, at) + change.inserted + text.slice(at + change.removed);
}
