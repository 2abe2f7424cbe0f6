"use client";
/** A figure in a long list: its place is kept from the start, it is worked out when it comes into view. */
import { type ComponentProps, memo, useEffect, useRef, useState } from "react";
import { flushSync } from "react-dom";
import { MoveFigurePicture } from "./figure.tsx";
import styles from "./seen-figure.module.css";

/** Worked out this far before it is seen, so that scrolling does not find empty places. */
const AHEAD = "400px";

interface SeenFigureProps extends ComponentProps<typeof MoveFigurePicture> {
  /** Worked out at once. */
  readonly eager?: boolean;
}

export const SeenFigure = memo(function SeenFigure({ eager = false, ...props }: SeenFigureProps) {
  const { ref, seen } = useSeen(eager);
  const height = props.px < 72 ? props.px : Math.round(props.px / 1.25);
  return (
    <span ref={ref} className={styles.place} style={{ width: props.px, height }}>
      {seen ? <MoveFigurePicture {...props} /> : null}
    </span>
  );
});

/** Seen once it comes near, or when the page is printed: paper shows what the screen has not come to. */
function useSeen(eager: boolean) {
  const ref = useRef<HTMLSpanElement>(null);
  const [seen, setSeen] = useState(eager);
  useEffect(() => {
    const place = ref.current;
    if (!place || seen) return;
    const watch = new IntersectionObserver(
      (entries) => {
        if (entries.some(({ isIntersecting }) => isIntersecting)) setSeen(true);
      },
      { rootMargin: AHEAD },
    );
    watch.observe(place);
    // The browser lays out the paper when this returns, so React has to draw before.
    const draw = () => flushSync(() => setSeen(true));
    addEventListener("beforeprint", draw);
    return () => {
      watch.disconnect();
      removeEventListener("beforeprint", draw);
    };
  }, [seen]);
  return { ref, seen };
}
