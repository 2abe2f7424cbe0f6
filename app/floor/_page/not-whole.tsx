/** The first screen came, the others did not: the network went in between. */
import styles from "./card-shelf.module.css";

export function NotWhole({ onShelf }: { onShelf(): void }) {
  return (
    <div className={styles.shelf} role="alert">
      <p className="notice">
        The rest of this page could not be fetched, and it was never kept on this device. Open it again where the studio
        can be reached. What ran here is kept.
      </p>
      <p>
        <button type="button" className="button button-strong" onClick={() => location.reload()}>
          Open it again
        </button>{" "}
        <button type="button" className="button" onClick={onShelf}>
          Back to the cards
        </button>
      </p>
    </div>
  );
}
