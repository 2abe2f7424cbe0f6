"use client";
/**
 * The script of the selected item: typed cue lines with live fields, written by several people at once. Mounted for one
 * item at a time. A script this version cannot show whole is read, never edited: see `lib/editor/fits.ts`.
 */
import { useMemo } from "react";
import type { PlanSession } from "#app/_plan/session.ts";
import { useSnapshot } from "#app/_plan/use-session.ts";
import { nameOf } from "#app/_plan/words.ts";
import { LatePart } from "#app/_shell/late-part.tsx";
import { scriptOf } from "#lib/doc/read.ts";
import { unsupportedContent } from "#lib/editor/fits.ts";
import { itemById } from "#lib/plan/lookup.ts";
import { lateScript } from "./late-script.ts";
import { PlainScript, ScriptLines } from "./plain-script.tsx";

export interface ScriptEditorProps {
  readonly session: PlanSession;
  readonly itemId: string;
  readonly readOnly: boolean;
}

export function ScriptEditor({ session, itemId, readOnly }: ScriptEditorProps) {
  const { plan, ready } = useSnapshot(session);
  const item = itemById(plan, itemId);
  const fragment = ready ? scriptOf(session.doc, itemId) : undefined;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the plan is new whenever the shared text has changed
  const misfit = useMemo(() => (fragment ? unsupportedContent(fragment) : null), [fragment, plan]);
  if (item?.kind !== "move" || fragment === undefined) return null;
  if (misfit !== null) return <PlainScript plan={plan} item={item} misfit={misfit} />;
  const side = item.side === "left" || item.side === "right" ? `, ${item.side}` : "";
  const label = `Script of ${nameOf(plan, item)}${side}`;
  return (
    <LatePart
      key={itemId}
      part={lateScript}
      props={{ session, item, fragment, label, readOnly }}
      meanwhile={<ScriptLines plan={plan} item={item} label={label} />}
    />
  );
}
