/** Reads one item of a shared document into plan data. Values of a wrong type are skipped. */
import * as Y from "yjs";
import { FACINGS, ID_PATTERN, ITEM_SIDES, type MoveItem, moveItemSchema, type PlanItem } from "#lib/plan/schema.ts";
import { AFTER_KEY, type ItemMap, SPRING_KEY } from "./layout.ts";
import { secondsOf } from "./lock.ts";
import { readScript } from "./script.ts";
import { stored } from "./stored.ts";
import { bool, compact, num, oneOf, str } from "./values.ts";

/** Undefined for an item of a kind this version does not know. */
export function readItem(id: string, map: ItemMap): PlanItem | undefined {
  const label = map.get("label");
  const words = label instanceof Y.Text ? label.toString() : "";
  switch (map.get("kind")) {
    case "heading":
      return { id, kind: "heading", title: words };
    case "pause":
      return { id, kind: "pause", seconds: num(map.get("seconds")) ?? 0, ...(words === "" ? {} : { text: words }) };
    case "move":
      return readMoveItem(id, map);
    default:
      return undefined;
  }
}

function readMoveItem(id: string, map: ItemMap): MoveItem {
  const script = map.get("script");
  const lines = script instanceof Y.XmlFragment ? readScript(script) : [];
  return compact({
    id,
    kind: "move" as const,
    move: str(map.get("move")) ?? "",
    side: oneOf(ITEM_SIDES, map.get("side")) ?? "both",
    seconds: secondsOf(map) ?? 1,
    locked: bool(map.get("locked")),
    range: stored(moveItemSchema.shape.range, map.get("range")),
    springs: readSprings(map),
    offsetMm: num(map.get("offsetMm")),
    facing: oneOf(FACINGS, map.get("facing")),
    transitionSeconds: num(map.get("transitionSeconds")),
    keep: tieId(map.get("keep")),
    after: readAfter(map),
    script: lines.length > 0 ? lines : undefined,
  }) as MoveItem;
}

const tieId = (v: unknown): string | undefined => (ID_PATTERN.test(str(v) ?? "") ? str(v) : undefined);

/** Ranked flat keys; a document from before these existed holds one list, which comes first. */
function readAfter(map: ItemMap): string[] | undefined {
  const list = stored(moveItemSchema.shape.after, map.get("after"));
  const ranked = [...map.keys()].flatMap((key) => {
    const id = key.startsWith(AFTER_KEY) ? key.slice(AFTER_KEY.length) : "";
    const rank = num(map.get(key));
    return ID_PATTERN.test(id) && rank !== undefined ? [{ id, rank }] : [];
  });
  ranked.sort((a, b) => a.rank - b.rank || (a.id < b.id ? -1 : 1));
  const all = [...new Set([...(list ?? []), ...ranked.map(({ id }) => id)])];
  return all.length > 0 || list || map.get("after") === true ? all : undefined;
}

function readSprings(map: ItemMap): Record<string, number> {
  const springs: Record<string, number> = {};
  for (const key of [...map.keys()].sort()) {
    const n = num(map.get(key));
    const id = key.startsWith(SPRING_KEY) ? key.slice(SPRING_KEY.length) : "";
    if (ID_PATTERN.test(id) && n !== undefined) springs[id] = n;
  }
  return springs;
}
