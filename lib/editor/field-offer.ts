/**
 * Live fields offered while typing: an opening brace lists them, more letters narrow the list, Enter inserts one,
 * Escape leaves the brace as it is. Tab is not used, since it always leaves the editor. This holds the list's state;
 * the page draws it.
 */
import { Extension } from "@tiptap/core";
import { type EditorState, Plugin, PluginKey, type Transaction } from "@tiptap/pm/state";
import type { EditorView } from "@tiptap/pm/view";
import { LIVE_FIELD } from "#lib/doc/layout.ts";
import { FIELD_WORDS, isLiveField } from "#lib/plan/cue-words.ts";
import { LIVE_FIELDS, type LiveField } from "#lib/plan/schema.ts";

export interface FieldOffer {
  /** Position of the brace. */
  readonly from: number;
  readonly to: number;
  readonly choices: readonly LiveField[];
  /** Index into `choices`. */
  readonly chosen: number;
}
interface OfferState {
  readonly offer: FieldOffer | null;
  /** Position of a brace that was left as it is, by Escape. */
  readonly left: number | null;
}
type OfferAct = { readonly t: "choose"; readonly index: number } | { readonly t: "leave" };

const key = new PluginKey<OfferState>("fieldOffer");
const NOTHING: OfferState = { offer: null, left: null };

export const offerOf = (state: EditorState): FieldOffer | null => key.getState(state)?.offer ?? null;

/** Replaces the brace and the letters after it by a live field. */
export function takeField(view: EditorView, offer: FieldOffer, field: LiveField): void {
  const node = view.state.schema.node(LIVE_FIELD, { name: field });
  view.dispatch(view.state.tr.replaceWith(offer.from, offer.to, node).scrollIntoView());
}

export const FieldOffers = Extension.create({
  name: "fieldOffers",
  priority: 1100,
  addProseMirrorPlugins: () => [
    new Plugin<OfferState>({
      key,
      state: { init: () => NOTHING, apply: (tr, before, _old, state) => next(tr, before, state) },
      props: {
        handleKeyDown: (view, event) => onKey(view, event),
        handleTextInput: (view, _from, _to, text) => text === "}" && takeNamed(view),
        handleDOMEvents: { blur: (view) => act(view, { t: "leave" }) },
      },
    }),
  ],
});

/** Offered only while typing: moving the caret past an old brace, or somebody else's typing, opens nothing. */
function next(tr: Transaction, before: OfferState, state: EditorState): OfferState {
  const done: OfferAct | undefined = tr.getMeta(key);
  if (done?.t === "leave") return { offer: null, left: before.offer?.from ?? before.left };
  if (done?.t === "choose" && before.offer) return { ...before, offer: { ...before.offer, chosen: done.index } };
  const left = before.left === null ? null : tr.mapping.map(before.left, -1);
  if (before.offer === null && !(tr.docChanged && typedHere(tr))) return { offer: null, left };
  const offer = find(state);
  if (offer === null || offer.from === left) return { offer: null, left: offer === null ? null : left };
  const same = before.offer?.choices.length === offer.choices.length ? before.offer.chosen : 0;
  return { offer: { ...offer, chosen: same }, left };
}

const typedHere = (tr: Transaction): boolean => tr.getMeta("addToHistory") !== false;

function find(state: EditorState): FieldOffer | null {
  const { $from, empty } = state.selection;
  if (!empty || !$from.parent.isTextblock) return null;
  const before = $from.parent.textBetween(Math.max(0, $from.parentOffset - 20), $from.parentOffset, null, "\uFFFC");
  const match = /(?:^|[^{])\{([a-z -]{0,13})$/iu.exec(before);
  if (match === null) return null;
  const typed = (match[1] ?? "").toLowerCase();
  const choices = LIVE_FIELDS.filter((field) => field.startsWith(typed) || FIELD_WORDS[field].startsWith(typed));
  if (choices.length === 0) return null;
  return { from: $from.pos - typed.length - 1, to: $from.pos, choices, chosen: 0 };
}

function onKey(view: EditorView, event: KeyboardEvent): boolean {
  const offer = offerOf(view.state);
  if (offer === null || event.isComposing || event.ctrlKey || event.metaKey || event.altKey) return false;
  const count = offer.choices.length;
  const move = (by: number) => act(view, { t: "choose", index: (offer.chosen + by + count) % count }, true);
  switch (event.key) {
    case "ArrowDown":
      return move(1);
    case "ArrowUp":
      return move(-1);
    case "Escape":
      return act(view, { t: "leave" }, true);
    case "Enter": {
      const field = offer.choices[offer.chosen];
      if (field) takeField(view, offer, field);
      return true;
    }
    default:
      return false;
  }
}

/** Inserts a field whose name was typed in full and closed with its brace. */
function takeNamed(view: EditorView): boolean {
  const offer = offerOf(view.state);
  if (offer === null) return false;
  const name = view.state.doc.textBetween(offer.from + 1, offer.to);
  if (!isLiveField(name)) return false;
  takeField(view, offer, name);
  return true;
}

function act(view: EditorView, done: OfferAct, handled = false): boolean {
  if (offerOf(view.state) !== null) view.dispatch(view.state.tr.setMeta(key, done));
  return handled;
}
