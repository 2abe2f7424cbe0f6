"use client";
/** The dialogs over a plan, and where the keyboard goes when one closes. */
import { LatePart } from "#app/_parts/late-part.tsx";
import { lateOrderCopy, latePlateCopy, lateProposals } from "#app/_propose/late-propose.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { AddDialog } from "./add-dialog.tsx";
import { focusMiddle } from "./focus.ts";
import { LATE } from "./late-parts.ts";
import type { Page } from "./use-page.ts";

interface DialogsProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly page: Page;
}

export function Dialogs({ session, snap, page }: DialogsProps) {
  const { closeDialog, shut } = page;
  const closeAdd = () => {
    closeDialog();
    requestAnimationFrame(() => focusMiddle(session.getSnapshot().selectedId));
  };
  // Without waiting for the dialog's own close, during which the key for the next one would be lost.
  const added = (what: "move" | "other" = "move") => {
    if (what === "move") shut();
    closeAdd();
    if (what === "other") page.acts.run["open-item"]();
  };
  const goFromFit = (id: string | null) => {
    page.acts.show(id);
    if (id === null) page.acts.run["open-item"]();
    else requestAnimationFrame(() => focusMiddle(id));
  };
  switch (page.dialog) {
    case "add":
      return <AddDialog session={session} onAdded={added} onClose={closeAdd} />;
    case "paste":
      return <LatePart part={LATE.paste} props={{ session, onAdded: added, onClose: closeAdd }} />;
    case "fit":
      return <LatePart part={LATE.fit} props={{ session, onClosed: closeDialog, onGo: goFromFit }} />;
    case "order":
      return <LatePart part={LATE.order} props={{ session, itemId: snap.selectedId, onClosed: closeDialog }} />;
    case "rehearsals":
      return <LatePart part={LATE.rehearsals} props={{ session, onClosed: closeDialog }} />;
    case "propose":
    case "propose-order":
    case "proposals":
      return <ProposalDialogs session={session} snap={snap} page={page} dialog={page.dialog} />;
    case "legend":
      return <LatePart part={LATE.legend} props={{ lanes: page.view === "whole-class", onClose: closeDialog }} />;
    case null:
      return null;
  }
}

interface ProposalDialogsProps extends DialogsProps {
  readonly dialog: "propose" | "propose-order" | "proposals";
}

function ProposalDialogs({ session, snap, page, dialog }: ProposalDialogsProps) {
  const { selectedId } = snap;
  const onClosed = page.closeDialog;
  const onGo = (id: string) => {
    onClosed();
    page.acts.show(id);
    requestAnimationFrame(() => requestAnimationFrame(() => page.acts.run["open-item"]()));
  };
  if (dialog === "proposals") return <LatePart part={lateProposals} props={{ session, onClosed, onGo }} />;
  if (selectedId === null) return null;
  const part = dialog === "propose" ? latePlateCopy : lateOrderCopy;
  return <LatePart part={part} props={{ session, itemId: selectedId, onClosed }} />;
}
