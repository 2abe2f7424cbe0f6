/** A QR code, dark on light in every scheme: a camera needs that. */
import styles from "./qr-code.module.css";

interface QrProps {
  readonly squares: { readonly side: number; readonly path: string };
  /** What it is, for who does not see it. */
  readonly says: string;
}

export function QrCode({ squares: { side, path }, says }: QrProps) {
  return (
    <svg
      className={styles.code}
      viewBox={`0 0 ${side} ${side}`}
      role="img"
      aria-label={says}
      shapeRendering="crispEdges"
    >
      <rect width={side} height={side} fill="white" />
      <path d={path} fill="black" />
    </svg>
  );
}
