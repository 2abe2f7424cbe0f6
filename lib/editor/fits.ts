/**
 * Whether this editor can show a script and write it back without loss. The binding between editor and shared text
 * deletes whatever its schema does not know, for everybody, merely by showing it. So a script is checked before it is
 * shown and before each change of others is applied, and one that does not fit is shown read-only. The socket already
 * refuses older pages; this is a second safeguard.
 */
import * as Y from "yjs";
import { CUE_LINE, LINE_AT, LIVE_FIELD } from "#lib/doc/layout.ts";

/** What does not fit, in a few words for the reader; null when everything does. Reads only. */
export function unsupportedContent(fragment: Y.XmlFragment): string | null {
  for (const line of fragment.toArray()) {
    if (!(line instanceof Y.XmlElement)) return "loose text";
    const found = line.nodeName === CUE_LINE ? lineMisfit(line) : named(line);
    if (found !== null) return found;
  }
  return null;
}

function lineMisfit(line: Y.XmlElement): string | null {
  const attribute = strangeAttribute(line, ["kind", LINE_AT]);
  if (attribute !== null) return attribute;
  for (const child of line.toArray()) {
    if (child instanceof Y.XmlText) {
      if (!isPlain(child)) return "marked-up text";
    } else if (child instanceof Y.XmlElement && child.nodeName === LIVE_FIELD) {
      const found = strangeAttribute(child, ["name"]) ?? (child.length > 0 ? named(child) : null);
      if (found !== null) return found;
    } else return child instanceof Y.XmlElement ? named(child) : "something unknown";
  }
  return null;
}

/** Writing a line back would remove an attribute that the schema does not list. */
function strangeAttribute(element: Y.XmlElement, known: readonly string[]): string | null {
  const attributes: Record<string, unknown> = element.getAttributes();
  for (const [key, value] of Object.entries(attributes)) {
    if (!known.includes(key) || typeof value !== "string") return `“${key}” of ${named(element)}`;
  }
  return null;
}

function isPlain(text: Y.XmlText): boolean {
  const delta: { insert: unknown; attributes?: Record<string, unknown> }[] = text.toDelta();
  return delta.every((d) => typeof d.insert === "string" && Object.keys(d.attributes ?? {}).length === 0);
}

const named = (element: Y.XmlElement): string => `a part called “${element.nodeName}”`;

/** Whether a transaction changed `fragment` or anything inside it. */
export function touches(transaction: Y.Transaction, fragment: Y.XmlFragment): boolean {
  for (const changed of transaction.changed.keys()) {
    let type: unknown = changed;
    while (type instanceof Y.AbstractType) {
      if (type === fragment) return true;
      type = type._item?.parent;
    }
  }
  return false;
}
