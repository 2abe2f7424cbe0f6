"use client";
/** Links from a slip to the items it is about. */
import { nameOf } from "#app/_session/item-words.ts";
import { usePageActs } from "#app/_session/page-acts.tsx";
import { useSnapshot } from "#app/_session/use-session.ts";
import { itemById } from "#lib/plan/lookup.ts";

/** How many names a slip shows at most; a finding about everything needs no list. */
const MOST_LINKS = 4;

interface JumpLinksProps {
  readonly ids: readonly string[];
  /** Where the slip stands: there is no way to go there. */
  readonly from: string | null;
}

export function JumpLinks({ ids: all, from }: JumpLinksProps) {
  const { session, show } = usePageActs();
  const { plan } = useSnapshot(session);
  /** Opens the item and moves the focus to it on the rail, where this screen has one. */
  const jump = (id: string) => {
    show(id);
    const item = document.getElementById(`rail-${id}`);
    item?.focus({ preventScroll: true });
    item?.scrollIntoView({ block: "nearest" });
  };
  const ids = all.filter((id) => id !== from);
  const shown = ids.slice(0, MOST_LINKS).flatMap((id) => itemById(plan, id) ?? []);
  return (
    <>
      {shown.map((item) => {
        const side = item.kind === "move" && (item.side === "left" || item.side === "right") ? `, ${item.side}` : "";
        const name = `${nameOf(plan, item)}${side}`;
        return (
          <button
            key={item.id}
            type="button"
            className="text-button text-button-low small"
            onClick={() => jump(item.id)}
          >
            {name}
          </button>
        );
      })}
      {ids.length > MOST_LINKS && <span className="quiet small">and {ids.length - MOST_LINKS} more</span>}
    </>
  );
}
