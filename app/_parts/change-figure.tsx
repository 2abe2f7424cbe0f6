/** The change into an item as a figure of `lib/figure`: the old set-up pale, the new one in ink, what comes off and goes on. */
import type { ChangeDrawing } from "#lib/figure/drawing/draw-change.ts";
import styles from "./figure.module.css";
import { DrawingPicture } from "./figure.tsx";

interface ChangePictureProps {
  readonly drawing: ChangeDrawing;
  /** The width that it was drawn for, pixels. */
  readonly px: number;
}

/** Decoration: the acts beside it say all that it shows. */
export function ChangePicture({ drawing, px }: ChangePictureProps) {
  return (
    <DrawingPicture drawing={drawing} px={px}>
      {drawing.labels.map(({ at: [x, y], text, anchor, strong }) => (
        <text
          key={`${x} ${y}`}
          className={styles.label}
          {...{ x, y, textAnchor: anchor }}
          fontSize={Math.round(drawing.letters)}
          data-strong={strong || undefined}
          dominantBaseline="central"
        >
          {text}
        </text>
      ))}
    </DrawingPicture>
  );
}
