/** The acts of a change between two plates, numbered: hands do them in this order. */
import styles from "./plate.module.css";

export function PlateActs({ acts }: { readonly acts: readonly string[] }) {
  if (acts.length === 0) return null;
  return (
    <ol className={styles.acts}>
      {acts.map((act) => (
        <li key={act}>{act}</li>
      ))}
    </ol>
  );
}
