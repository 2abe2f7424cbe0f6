"use client";
/** A part of a page that is loaded after it, with something plain in its place until then. */
import { type ComponentType, type ReactNode, useEffect, useReducer } from "react";
import { fetchWhenIdle, type LoadedLater } from "#lib/client/late.ts";
import styles from "./late-part.module.css";
import { lookForNewer } from "./newer-version.tsx";
import { useNewerKnown } from "./use-newer-known.ts";

const TRY_AGAIN_MS = 3000;

interface LatePartProps<P extends object> {
  readonly part: LoadedLater<ComponentType<P>>;
  readonly props: P;
  /** Shown until the part is here; by default a line that says it is loading. */
  readonly meanwhile?: ReactNode;
}

export function LatePart<P extends object>({ part, props, meanwhile }: LatePartProps<P>) {
  useFetched(part);
  const Part = part.here;
  if (Part) return <Part {...props} />;
  return meanwhile === undefined ? <OnItsWay /> : meanwhile;
}

/** Draws again when the part has come; tries again for as long as the network fails. Null: none is needed. */
export function useFetched(part: LoadedLater<unknown> | null): void {
  const [, drawAgain] = useReducer((times: number) => times + 1, 0);
  useEffect(() => {
    if (part === null || part.here !== null) return;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let ended = false;
    const ask = () =>
      void part.fetch().then(
        () => ended || drawAgain(),
        () => {
          // The server may have been updated: parts of the older build are gone then, and the page says so.
          lookForNewer();
          if (!ended) timer = setTimeout(ask, TRY_AGAIN_MS);
        },
      );
    ask();
    return () => {
      ended = true;
      clearTimeout(timer);
    };
  }, [part]);
}

function OnItsWay() {
  const gone = useNewerKnown();
  return (
    <p role="status" className={styles.onItsWay}>
      {gone
        ? "This part of the page is of an older version. Reload the page to have it; your words are kept."
        : "Loading… This part needs the network the first time."}
    </p>
  );
}

/** Fetches the parts while the page is idle. */
export function useLateParts(parts: readonly LoadedLater<unknown>[]): void {
  useEffect(() => fetchWhenIdle(parts, whenIdle), [parts]);
}

function whenIdle(run: () => void): void {
  // Safari has no idle callback.
  if ("requestIdleCallback" in window) requestIdleCallback(run, { timeout: 4000 });
  else setTimeout(run, 300);
}
