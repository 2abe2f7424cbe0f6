"use client";
/**
 * One quiet line when the server runs a newer version of the program than this page. The page goes on as it is; it is loaded
 * again when the person says so and their words are saved.
 */
import { useEffect, useState } from "react";
import { ADDRESS_PATH } from "#lib/protocol/address.ts";
import styles from "./newer-version.module.css";
import { send } from "./send.ts";
import { allWordsSaved } from "./use-doc-session.ts";
import { useNewerKnown } from "./use-newer-known.ts";

const LOOK_MS = 250;

/** Asks the server for its build, when a part of this page cannot be had any more. */
export const lookForNewer = (): void => void send("GET", ADDRESS_PATH);

export function NewerVersion() {
  const known = useNewerKnown();
  const [asked, setAsked] = useState(false);
  useReloadOnceSaved(asked);
  return (
    <div className={styles.region} aria-live="polite">
      {known && (
        <p className={styles.line}>
          A newer version of Springline is here.
          {asked ? (
            <span>The page is loaded again as soon as your words are saved.</span>
          ) : (
            <button type="button" className="button" onClick={() => setAsked(true)}>
              Reload the page
            </button>
          )}
        </p>
      )}
    </div>
  );
}

function useReloadOnceSaved(asked: boolean): void {
  useEffect(() => {
    if (!asked) return;
    const look = () => allWordsSaved() && location.reload();
    look();
    const timer = setInterval(look, LOOK_MS);
    return () => clearInterval(timer);
  }, [asked]);
}
