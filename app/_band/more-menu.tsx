"use client";
/** Everything that can be done with the plan and is not done all the time: one list, opened and left by one button. */
import { type MouseEvent, type ReactNode, useId, useRef } from "react";
import styles from "./more-menu.module.css";

export function MoreMenu({ children }: { readonly children: ReactNode }) {
  const id = useId();
  const list = useRef<HTMLDivElement>(null);
  /** A command that was taken closes the list, so that what it opens is not covered; a setting is often pressed again. */
  const onTaken = (event: MouseEvent) => {
    if (event.target instanceof Element && !event.target.closest("fieldset")) list.current?.hidePopover();
  };
  return (
    <>
      <button type="button" className={`button ${styles.opens}`} popoverTarget={id}>
        More
      </button>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the buttons in it are what is pressed */}
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: a button that is pressed by key clicks as well */}
      <div ref={list} id={id} popover="auto" className={styles.list} onClick={onTaken}>
        {children}
      </div>
    </>
  );
}
