"use client";
/** The words of a heading or a pause, which several people can write at once. */
import { SharedText } from "#app/_parts/shared-text.tsx";
import { labelOf } from "#lib/doc/read.ts";
import type { Heading, Pause } from "#lib/plan/schema.ts";
import type { PlanSession } from "../../_session/session.ts";
import { ITEM_WORDS } from "./panel-words.ts";

interface ItemLabelProps {
  readonly session: PlanSession;
  readonly item: Heading | Pause;
  readonly readOnly: boolean;
}

export function ItemLabel({ session, item, readOnly }: ItemLabelProps) {
  const text = labelOf(session.doc, item.id);
  if (!text) return null;
  const label = ITEM_WORDS[item.kind];
  return (
    <div className="field">
      <span aria-hidden="true">{label}</span>
      <SharedText
        key={item.id}
        {...{ text, readOnly, label }}
        host={session}
        maxLength={item.kind === "heading" ? 200 : 2000}
      />
    </div>
  );
}
