/** Shown when the first screen was fetched and the others were not, because the network went in between. */
import { BACK_TO_EDITIONS } from "../_parts/floor-words.ts";
import styles from "./card-shelf.module.css";
import { NOT_WHOLE, OPEN_AGAIN } from "./page-words.ts";

export function NotWhole({ onShelf }: { onShelf(): void }) {
  return (
    <div className={styles.shelf} role="alert">
      <p className="notice">{NOT_WHOLE}</p>
      <p>
        <button type="button" className="button button-strong" onClick={() => location.reload()}>
          {OPEN_AGAIN}
        </button>{" "}
        <button type="button" className="button" onClick={onShelf}>
          {BACK_TO_EDITIONS}
        </button>
      </p>
    </div>
  );
}
