/** The id of a new move, made from its name once and never changed: plans refer to moves by it. */
const LONGEST = 64;

/** Addresses of the library's own pages and routes, under which no move could be found. */
export const RESERVED_IDS: ReadonlySet<string> = new Set(["new", "bring", "compare"]);

/** "Slow push-up" becomes "slow-push-up"; a name with nothing to make an id of becomes "move". Unique among `taken`. */
export function moveIdFor(name: string, taken: ReadonlySet<string>): string {
  const plain = name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
  const stem = cut(plain, LONGEST) || "move";
  for (let n = 1; ; n++) {
    const tail = n === 1 ? "" : `-${n}`;
    const id = cut(stem, LONGEST - tail.length) + tail;
    if (!taken.has(id) && !RESERVED_IDS.has(id)) return id;
  }
}

const cut = (text: string, length: number): string => text.slice(0, length).replace(/-+$/, "");
