/**
 * Where a plan's words live inside the shared document. Only `lib/doc` knows this; everybody else asks
 * `readPlan`, `write.ts` or `createPlanDoc`.
 *
 *   meta     Map   version
 *   title    Text  } root texts, so two people typing at once lose nothing
 *   theme    Text  }
 *   notes    Text  }
 *   head     Map   flat scalar keys: lengthSeconds, level, `share.GROUP`, `expected.CAUTION`, ...
 *   items    Map   item id -> Map: kind, order, flat fields, lockedSeconds, `spring.ID`, `after.ITEM`, label (Text), script
 *                  (XmlFragment), deleted, `proposal.ID`
 *   carried  Map   what came with an imported file: equipment, standards, `move.ID`
 *
 * Values that two people may set at once are flat keys, never nested objects: one key, one winner, nothing else lost.
 * Keys this version does not know are left alone. `head.themeName` is what the theme was in version 1: see `late-theme.ts`.
 */
import type * as Y from "yjs";

/** Bumped when the meaning of a key changes; `migrate.ts` carries older documents forward. */
export const PLAN_DOC_VERSION = 2;
/**
 * Bumped when the script's node types change, or when older pages would miss news that they need: such a page must reload
 * before it may write. 3: threads are sent one by one.
 */
export const EDITOR_VERSION = 3;

export type ItemMap = Y.Map<unknown>;

export interface PlanDocParts {
  readonly meta: Y.Map<unknown>;
  readonly title: Y.Text;
  readonly theme: Y.Text;
  readonly notes: Y.Text;
  readonly head: Y.Map<unknown>;
  readonly items: Y.Map<ItemMap>;
  readonly carried: Y.Map<unknown>;
}

/** The typed roots of a plan document. Reading a root creates nothing that is sent to anybody. */
export function planParts(doc: Y.Doc): PlanDocParts {
  return {
    meta: doc.getMap("meta"),
    title: doc.getText("title"),
    theme: doc.getText("theme"),
    notes: doc.getText("notes"),
    head: doc.getMap("head"),
    items: doc.getMap("items"),
    carried: doc.getMap("carried"),
  };
}

/** The version a document was written by; 0 when it is empty or does not say. */
export function docVersion(doc: Y.Doc): number {
  const v = doc.getMap("meta").get("version");
  return typeof v === "number" && Number.isInteger(v) ? v : 0;
}

/**
 * The value of `deleted` on an item whose creation was undone by its creator. Any other value is the moment it was
 * taken out, ms since the epoch.
 */
export const UNDONE_CREATION = 0;

/** The key of the theme in version 1, one plain value. Only `late-theme.ts` reads it. */
export const THEME_OF_V1 = "themeName";

/** The seconds a locked item is locked at: see `lock.ts`. */
export const LOCKED_SECONDS = "lockedSeconds";

export const SPRING_KEY = "spring.";
/** `after.ITEM` holds a rank, so that two people who each name an earlier item both win. */
export const AFTER_KEY = "after.";
export const SHARE_KEY = "share.";
export const EXPECTED_KEY = "expected.";
export const MOVE_KEY = "move.";
/**
 * `proposal.ID` on the item that a taken proposal was about, or on the head where it has none: the ids of the parts that
 * were taken, separated by spaces. A plan file does not carry it.
 */
export const PROPOSAL_KEY = "proposal.";

/** Node names of the script, shared with the editor's schema. */
export const CUE_LINE = "cueLine";
export const LIVE_FIELD = "liveField";
/**
 * The attribute of a cue line that says when it begins: "after 12" or "left 20", in seconds. One value, so that of two
 * people who set it one wins whole.
 */
export const LINE_AT = "at";
