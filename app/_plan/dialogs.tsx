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
  const goTo = (id: string) => {
    closeDialog();
    page.acts.show(id);
    requestAnimationFrame(() => requestAnimationFrame(() => page.acts.run["open-item"]()));
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
      return snap.selectedId === null ? null : (
        <LatePart part={latePlateCopy} props={{ session, itemId: snap.selectedId, onClosed: closeDialog }} />
      );
    case "propose-order":
      return snap.selectedId === null ? null : (
        <LatePart part={lateOrderCopy} props={{ session, itemId: snap.selectedId, onClosed: closeDialog }} />
      );
    case "proposals":
      return <LatePart part={lateProposals} props={{ session, onClosed: closeDialog, onGo: goTo }} />;
    case "legend":
      return <LatePart part={LATE.legend} props={{ lanes: page.view === "whole-class", onClose: closeDialog }} />;
    case null:
      return null;
  }
}
