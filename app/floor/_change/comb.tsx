/** The top edge of a change: one tooth a second. Those that are over have fallen; nothing slides, a tooth is there or not. */
import styles from "./change.module.css";

export function Comb({ left, of }: { readonly left: number; readonly of: number }) {
  const teeth = Math.max(left, of);
  if (teeth === 0) return null;
  const style = { "--teeth": teeth, "--fallen": teeth - left } as React.CSSProperties;
  return (
    <span className={styles.comb} data-comb={left} aria-hidden="true" style={style}>
      <span className={styles.fallen} />
      <span className={styles.standing} />
    </span>
  );
}
