"use client";
/** What `?` opens: help for this place, then its keys and those that are the same everywhere, from the tables of commands. */
import { Fragment } from "react";
import { howTosAt } from "#lib/help/help-pages.ts";
import { keyParts } from "./commands/command.ts";
import { COMMON_COMMANDS, UNDO_COMMANDS } from "./commands/common.ts";
import { Dialog } from "./dialog.tsx";
import styles from "./key-help.module.css";
import { useShownKeys } from "./key-help.tsx";

export function KeyList({ onClose }: { readonly onClose: () => void }) {
  const pages = useShownKeys();
  const undo = pages.some((page) => page.undo) ? keyParts(UNDO_COMMANDS) : [];
  const own = pages.filter((page) => !page.shared).flatMap((page) => page.parts);
  const shared = pages.filter((page) => page.shared).flatMap((page) => page.parts);
  const parts = [...own, ...undo, ...shared, ...keyParts(COMMON_COMMANDS)];
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the page under the list does not hear its keys
    <div onKeyDown={(event) => event.nativeEvent.stopPropagation()}>
      <Dialog title="Help" onClose={onClose}>
        <HelpHere />
        <h3>Keys</h3>
        {pages.map(({ note }) => note && <p key={note}>{note}</p>)}
        {parts.map(({ title, keys }) => (
          <Fragment key={title}>
            <h4>{title}</h4>
            <dl className={styles.keys}>
              {keys.map(([key, what]) => (
                <div key={key}>
                  <dt>{key}</dt>
                  <dd>{what}</dd>
                </div>
              ))}
            </dl>
          </Fragment>
        ))}
      </Dialog>
    </div>
  );
}

/** The texts about this place. A screen that runs a class is not left for one: they open beside it. */
function HelpHere() {
  const { pathname } = location;
  const target = pathname.startsWith("/floor") ? "_blank" : undefined;
  return (
    <nav className={styles.here} aria-label="Help with this place">
      <ul>
        {howTosAt(pathname).map(({ href, title, text }) => (
          <li key={href}>
            <a href={href} target={target}>
              {title}
            </a>
            <span className="quiet small">{text}</span>
          </li>
        ))}
      </ul>
      <p>
        <a className="button" href="/help" target={target}>
          All help
        </a>
      </p>
    </nav>
  );
}
