/**
 * The script's editor nodes: a document of cue lines, each holding text and live fields. No React and no DOM;
 * `app/_script` styles the nodes. Names and attributes are those of `lib/doc/script.ts`.
 *
 * Lines are flat and attributes plain, because concurrent edits may delete any node: a structure with required parts
 * would be discarded whole when one part goes. `kind` has no default, so that showing a line never writes one.
 */
import { Extension, getSchema, Node } from "@tiptap/core";
import { Text } from "@tiptap/extension-text";
import type { Schema } from "@tiptap/pm/model";
import { CUE_LINE, LINE_AT, LIVE_FIELD } from "#lib/doc/layout.ts";

export const ScriptDocument = Node.create({
  name: "doc",
  topNode: true,
  content: `${CUE_LINE}+`,
  marks: "",
});

export const CueLine = Node.create({
  name: CUE_LINE,
  content: "inline*",
  marks: "",
  defining: true,
  addAttributes() {
    return {
      kind: {
        default: null,
        parseHTML: (element) => element.getAttribute("data-kind"),
        renderHTML: (attributes) => (attributes.kind === null ? {} : { "data-kind": attributes.kind }),
      },
      // Not edited here, but an attribute that the editor does not know would be lost when the line is written.
      [LINE_AT]: {
        default: null,
        parseHTML: (element) => element.getAttribute("data-at"),
        renderHTML: (attributes) => (attributes[LINE_AT] === null ? {} : { "data-at": attributes[LINE_AT] }),
      },
    };
  },
  parseHTML: () => [{ tag: "div[data-cue-line]" }, { tag: "p" }],
  renderHTML: ({ HTMLAttributes }) => ["div", { "data-cue-line": "", ...HTMLAttributes }, 0],
});

export const LiveFieldNode = Node.create({
  name: LIVE_FIELD,
  group: "inline",
  inline: true,
  atom: true,
  selectable: true,
  addAttributes() {
    return {
      name: {
        default: null,
        parseHTML: (element) => element.getAttribute("data-live-field"),
        renderHTML: (attributes) => ({ "data-live-field": attributes.name }),
      },
    };
  },
  parseHTML: () => [{ tag: "span[data-live-field]" }],
  renderHTML: ({ HTMLAttributes, node }) => ["span", HTMLAttributes, `{${String(node.attrs.name)}}`],
});

/** Letters. */
export const scriptText = Text;

const scriptNodes = [ScriptDocument, CueLine, LiveFieldNode, scriptText];

/** Only the nodes, for conversions and tests. */
export const scriptSchema = (): Schema => getSchema([...scriptNodes, Extension.create({ name: "none" })]);
