"use client";
/** Proposing a change of one plate: a copy of it to edit, with its effect beside it. */
import { useMemo, useRef } from "react";
import { placedName } from "#app/_session/placed-name.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { lineIdsOfItem } from "#lib/doc/take-proposal.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { MoveItem, Pause } from "#lib/plan/schema.ts";
import { CopyNumbers } from "./copy-numbers.tsx";
import { CopyScript } from "./copy-script.tsx";
import { useKeptCopy } from "./kept-copy.ts";
import { newPlateCopy, type PlateCopy, partsOfCopy, unknownField } from "./plate-copy.ts";
import { ProposeFrame } from "./propose-frame.tsx";
import { PROPOSE } from "./propose-words.ts";
import { useWriting } from "./use-sending.ts";

interface PlateCopyDialogProps {
  readonly session: PlanSession;
  readonly itemId: string;
  readonly onClosed: () => void;
}

export function PlateCopyDialog({ session, itemId, onClosed }: PlateCopyDialogProps) {
  const { plan } = useSnapshot(session);
  const item = itemById(plan, itemId);
  // The dialog stays open over an item that somebody takes out meanwhile.
  const first = useRef(item);
  const known = item ?? first.current;
  if (known?.kind !== "move" && known?.kind !== "pause") return null;
  return <Copying {...{ session, onClosed }} item={known} isGone={item === undefined} />;
}

interface CopyingProps extends Pick<PlateCopyDialogProps, "session" | "onClosed"> {
  readonly item: MoveItem | Pause;
  readonly isGone: boolean;
}

function Copying({ session, item, isGone, onClosed }: CopyingProps) {
  const { plan } = useSnapshot(session);
  const closer = useRef<(() => void) | null>(null);
  const kept = useKeptCopy<PlateCopy>(session, item.id, () => newPlateCopy(item, lineIdsOfItem(session.doc, item.id)));
  const { copy } = kept;
  const parts = useMemo(() => partsOfCopy(copy), [copy]);
  const writing = useWriting(session, item.id, parts);
  const unknown = unknownField(copy.lines);
  const blocked = isGone ? PROPOSE.itemGone : unknown === undefined ? null : PROPOSE.unknownField(unknown);
  const send = async () => {
    if (!(await writing.send(copy.note))) return;
    kept.drop();
    closer.current?.();
  };
  return (
    <ProposeFrame
      title={PROPOSE.title(placedName(plan, item))}
      {...{ plan, writing, blocked, closer, onClosed }}
      wasKept={kept.wasKept}
      onAgain={kept.again}
      note={copy.note}
      onNote={(note) => kept.set({ ...copy, note })}
      onSend={send}
    >
      <CopyNumbers plan={plan} item={copy.item} onChange={(edited) => kept.set({ ...copy, item: edited })} />
      {copy.item.kind === "move" && <CopyScript copy={copy} onChange={kept.set} />}
    </ProposeFrame>
  );
}
