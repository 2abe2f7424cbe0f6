"use client";
/**
 * Asks before words that were not saved are left behind: closing the tab, a link, and where the browser tells of it the
 * way back. Where it does not, the words are kept in the tab and are there when the person comes again.
 */
import { useEffect, useRef, useState } from "react";
import { Dialog } from "../../_parts/dialog.tsx";
import styles from "./form.module.css";

/** What a browser with the Navigation API tells before it goes back or forward. */
interface Traverse extends Event {
  readonly navigationType: string;
  readonly destination: { readonly key: string };
}
interface NavigationLike extends EventTarget {
  traverseTo(key: string): unknown;
}

type Way = () => void;

interface LeaveGuardProps {
  readonly dirty: boolean;
  /** Called before leaving, with the changes discarded. */
  readonly onDrop: () => void;
}

export function LeaveGuard({ dirty, onDrop }: LeaveGuardProps) {
  const [way, setWay] = useState<Way | null>(null);
  const leaving = useRef(false);
  useEffect(() => {
    if (!dirty) return;
    const ask = (go: Way) => setWay(() => go);
    const stop = [stopClosing(leaving), stopLinks(leaving, ask), stopTravel(leaving, ask)];
    return () => {
      for (const end of stop) end();
    };
  }, [dirty]);
  if (!way) return null;
  return (
    <Dialog title="Leave without saving?" onClose={() => setWay(null)}>
      <p>Your changes are not saved.</p>
      <p className={`acts ${styles.acts}`}>
        <button type="button" className="button" data-first onClick={() => setWay(null)}>
          Stay here
        </button>
        <button
          type="button"
          className="button button-must"
          onClick={() => {
            leaving.current = true;
            onDrop();
            way();
          }}
        >
          Leave and discard my changes
        </button>
      </p>
    </Dialog>
  );
}

type Leaving = { readonly current: boolean };

function stopClosing(leaving: Leaving): Way {
  const onUnload = (event: BeforeUnloadEvent) => {
    if (!leaving.current) event.preventDefault();
  };
  window.addEventListener("beforeunload", onUnload);
  return () => window.removeEventListener("beforeunload", onUnload);
}

/** Before the router hears of it. Links that open elsewhere lose nothing and pass. */
function stopLinks(leaving: Leaving, ask: (go: Way) => void): Way {
  const onClick = (event: MouseEvent) => {
    const link = event.target instanceof Element ? event.target.closest("a") : null;
    const elsewhere = event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey;
    if (leaving.current || !link || elsewhere || link.target === "_blank" || link.hasAttribute("download")) return;
    if (link.pathname === location.pathname && link.hash !== "") return;
    event.preventDefault();
    event.stopPropagation();
    ask(() => location.assign(link.href));
  };
  document.addEventListener("click", onClick, true);
  return () => document.removeEventListener("click", onClick, true);
}

function stopTravel(leaving: Leaving, ask: (go: Way) => void): Way {
  const navigation = "navigation" in window ? (window.navigation as NavigationLike) : null; // not in every browser
  if (!navigation) return () => undefined;
  const onNavigate = (event: Event) => {
    const travel = event as Traverse; // the only event of this name
    if (leaving.current || travel.navigationType !== "traverse" || !event.cancelable) return;
    event.preventDefault();
    const { key } = travel.destination;
    ask(() => navigation.traverseTo(key));
  };
  navigation.addEventListener("navigate", onNavigate);
  return () => navigation.removeEventListener("navigate", onNavigate);
}
