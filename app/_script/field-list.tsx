"use client";
/** The list of live fields under the caret. The caret stays in the script; arrows, Enter and Escape are the editor's. */
import type { Editor } from "@tiptap/core";
import { useEffect, useId, useLayoutEffect, useState } from "react";
import { type FieldOffer, takeField } from "#lib/editor/field-offer.ts";
import { FIELD_WORDS } from "#lib/plan/cue-words.ts";
import styles from "./script.module.css";

const WIDTH_PX = 240;
const GAP_PX = 6;
/** About as tall as one choice is drawn. */
const ROW_PX = 44;

/**
 * Somebody else may take the item out, or its words, while the list is open: effects run with what was drawn, by then the
 * editor or the place of the brace may be gone.
 */
const canStand = (editor: Editor, offer: FieldOffer): boolean =>
  !editor.isDestroyed && offer.to <= editor.state.doc.content.size;

export function FieldList({ editor, offer }: { readonly editor: Editor | null; readonly offer: FieldOffer | null }) {
  const id = useId();
  const [at, setAt] = useState<{ left: number; top?: number; bottom?: number } | null>(null);
  const live = editor !== null && !editor.isDestroyed ? editor : null;

  useLayoutEffect(() => {
    if (!live || !offer || !canStand(live, offer)) return setAt(null);
    const { dom } = live.view;
    const box = (dom.offsetParent ?? dom).getBoundingClientRect();
    const caret = live.view.coordsAtPos(offer.from);
    const left = Math.max(0, Math.min(caret.left - box.left, box.width - WIDTH_PX));
    // Above the caret where the window ends before the list would.
    const fits = caret.bottom + GAP_PX + offer.choices.length * ROW_PX < window.innerHeight;
    setAt(fits ? { left, top: caret.bottom - box.top + GAP_PX } : { left, bottom: box.bottom - caret.top + GAP_PX });
  }, [live, offer]);

  useEffect(() => {
    if (!live || live.isDestroyed) return;
    const { dom } = live.view;
    if (!offer) {
      for (const name of ["aria-activedescendant", "aria-controls"]) dom.removeAttribute(name);
      return;
    }
    dom.setAttribute("aria-controls", id);
    dom.setAttribute("aria-activedescendant", `${id}-${offer.choices[offer.chosen]}`);
  }, [live, offer, id]);

  if (!live || !offer || !at) return null;
  return (
    <div className={styles.fields} style={{ ...at, width: WIDTH_PX }}>
      <p className="visually-hidden" role="status">
        {offer.choices.length} live fields. Arrows choose, Enter puts one in, Escape leaves the brace.
      </p>
      <div role="listbox" id={id} aria-label="Live fields">
        {offer.choices.map((field, i) => (
          // biome-ignore lint/a11y/useFocusableInteractive: the caret stays in the script, which names the chosen one
          // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are the editor's
          <div
            key={field}
            role="option"
            id={`${id}-${field}`}
            aria-selected={i === offer.chosen}
            className={styles.field}
            onPointerDown={(event) => event.preventDefault()}
            onClick={() => {
              if (!canStand(live, offer)) return;
              takeField(live.view, offer, field);
              live.view.focus();
            }}
          >
            {FIELD_WORDS[field]}
          </div>
        ))}
      </div>
    </div>
  );
}
