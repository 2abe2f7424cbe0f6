"use client";
/**
 * Fewer set-ups: a block as it stands beside the order with the least seconds of changes, what is saved, what holds it,
 * what else it would upset; to be taken or not. It lives: whoever writes meanwhile, it is worked out anew and says so.
 */
import { useMemo, useRef, useState } from "react";
import { Changed } from "#app/_parts/changed.tsx";
import { Select } from "#app/_parts/choice.tsx";
import { Sheet } from "#app/_parts/sheet.tsx";
import { nameOf } from "#app/_session/item-words.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useFresh } from "#app/_session/use-fresh.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { plural } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Heading, Plan } from "#lib/plan/schema.ts";
import { blockAround } from "#lib/plan/ties.ts";
import { NoBlock } from "./no-block.tsx";
import styles from "./order.module.css";
import { OrderView } from "./order-view.tsx";
import { orderPreview, solveBlock, solvedFrom } from "./preview.ts";
import { shownIn, takeOrder } from "./take-order.ts";

interface OrderDialogProps {
  readonly session: PlanSession;
  /** The item, or the heading, that it was opened for; null where none is chosen. */
  readonly itemId: string | null;
  readonly onClosed: () => void;
}

export function OrderDialog({ session, itemId, onClosed }: OrderDialogProps) {
  const snap = useSnapshot(session);
  const { plan } = snap;
  const headings = plan.items.filter((item): item is Heading => item.kind === "heading");
  const [chosen, setChosen] = useState<string | null>(null);
  const here = chosen ?? (itemId === null ? undefined : blockAround(plan, itemId)?.heading.id);
  const heading = headings.find((h) => h.id === here)?.id ?? null;
  const closer = useRef<(() => void) | null>(null);
  const stray = heading === null && itemId !== null ? itemById(plan, itemId) : undefined;
  if (heading === null) {
    return (
      <Sheet title="Fewer set-ups" onClosed={onClosed} closer={closer}>
        <NoBlock
          session={session}
          above={stray && nameOf(plan, stray)}
          hasHeadings={headings.length > 0}
          onMade={setChosen}
        />
        {headings.length > 0 && <BlockChoice plan={plan} headings={headings} value="" onChoose={setChosen} />}
      </Sheet>
    );
  }
  const choice = <BlockChoice plan={plan} headings={headings} value={heading} onChoose={setChosen} />;
  return <OpenBlock key={heading} {...{ session, heading, closer, onClosed, choice }} />;
}

interface ChoiceProps {
  readonly plan: Plan;
  readonly headings: readonly Heading[];
  readonly value: string;
  readonly onChoose: (id: string) => void;
}

function BlockChoice({ plan, headings, value, onChoose }: ChoiceProps) {
  const options = headings.map((heading) => {
    const moves = (blockAround(plan, heading.id)?.items ?? []).filter((item) => item.kind === "move").length;
    return { value: heading.id, label: `${nameOf(plan, heading)} (${plural(moves, "move")})` };
  });
  const none = value === "" ? [{ value: "", label: "choose a block" }] : [];
  return (
    <div className={styles.choice}>
      <Select label="Block" value={value} options={[...none, ...options]} onChoose={onChoose} />
    </div>
  );
}

interface OpenBlockProps {
  readonly session: PlanSession;
  readonly heading: string;
  readonly closer: React.RefObject<(() => void) | null>;
  readonly onClosed: () => void;
  readonly choice: React.ReactNode;
}

function OpenBlock({ session, heading, closer, onClosed, choice }: OpenBlockProps) {
  const snap = useSnapshot(session);
  const { plan } = snap;
  const [free, setFree] = useState(false);
  const from = useMemo(() => solvedFrom(plan, heading), [plan, heading]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: costly, and the text says all it depends on
  const solved = useMemo(() => solveBlock(plan, heading), [from]);
  const preview = useMemo(
    () => (solved.order.ok ? orderPreview(plan, solved.order, { heading, free }) : null),
    [plan, solved, heading, free],
  );
  const shown = useMemo(() => shownIn(preview), [preview]);
  const fresh = useFresh(session, snap, shown);
  const writes = session.canWrite;
  const better = preview !== null && preview.moved.length > 0;
  const take = () => {
    if (takeOrder(session, { heading, free, shown, solved, from })) closer.current?.();
  };
  return (
    <Sheet
      title="Fewer set-ups"
      onClosed={onClosed}
      closer={closer}
      foot={
        better && (
          <div className="spread">
            <p className="small quiet">
              {writes
                ? "Nothing moves before you take it. Taking it is one step that can be undone."
                : "This plan is not yours to write in any more: look, but nothing can be taken."}
            </p>
            <button type="button" className="button button-strong" disabled={!writes} onClick={take}>
              Take this order
            </button>
          </div>
        )
      }
    >
      {choice}
      <Changed fresh={fresh} what="what is below is fresh" />
      {preview === null ? (
        <p className="problem">{solved.order.ok ? "" : solved.order.say}</p>
      ) : (
        <OrderView {...{ plan, preview, free, setFree }} unheld={solved.unheld} />
      )}
    </Sheet>
  );
}
