"use client";
/** What is asked for now and then: the pattern, regulars, themes, coaches' times, holidays, files, paper. */
import Link from "next/link";
import { useFold } from "#app/_parts/use-fold.ts";
import styles from "./month.module.css";
import type { MonthDesk, PanelOf } from "./month-desk.ts";

type Asked = Exclude<PanelOf["kind"], "class" | "new" | "accept" | "fill">;

const PANELS: readonly (readonly [Asked, string])[] = [
  ["pattern", "The weekly pattern"],
  ["regulars", "Regulars"],
  ["themes", "Themes and promises"],
  ["coaches", "Coaches' times"],
  ["holidays", "Holidays"],
  ["copy", "Copy a week, take last month over"],
  ["taken-out", "Classes taken out"],
  ["accepted", "Accepted findings"],
  ["changes", "Signed off, and changed since"],
];

/** Long because: a menu is one list. */
export function MonthMenu({ desk }: { readonly desk: MonthDesk }) {
  const { open, toggle, box, button } = useFold();
  const { choose, props } = desk;
  const file = `/api/programme/${props.month}`;
  return (
    <div className={styles.menu} ref={box}>
      <button ref={button} type="button" className="button" aria-expanded={open} onClick={toggle}>
        More
      </button>
      {open && (
        <ul className={styles.menuList}>
          {PANELS.filter(([kind]) => hasSome(desk, kind)).map(([kind, words]) => (
            <li key={kind}>
              <button
                type="button"
                className="act"
                onClick={() => {
                  choose({ panel: { kind } });
                  toggle();
                }}
              >
                {words}
              </button>
            </li>
          ))}
          <li>
            <a className="act" href={`${file}/file`} download>
              Month file
            </a>
          </li>
          <li>
            <a className="act" href={`${file}/csv`} download>
              Table for a spreadsheet
            </a>
          </li>
          {props.may.lookBack && (
            <li>
              <Link className="act" href={`/programme/${props.month}/looking-back`}>
                Looking back
              </Link>
            </li>
          )}
          {props.may.feeds && (
            <li>
              <Link className="act" href="/programme/feeds">
                Calendar addresses
              </Link>
            </li>
          )}
          <li>
            <button type="button" className="act" onClick={() => window.print()}>
              Print the month
            </button>
          </li>
          <li>
            <a className="act" href={`/programme/${props.month}?view=wall`}>
              A room's week for the wall
            </a>
          </li>
        </ul>
      )}
    </div>
  );
}

/** What can only be empty now is not offered. */
function hasSome({ accepted, month, props }: MonthDesk, kind: Asked): boolean {
  if (kind === "accepted") return accepted.length > 0;
  return kind === "changes" ? month.signed !== null || props.may.sign : true;
}
