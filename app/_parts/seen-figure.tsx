"use client";
/** A figure in a long list: its place is kept from the start, it is worked out when it comes into view. */
import { type ComponentProps, memo, useEffect, useRef, useState } from "react";
import { MoveFigurePicture } from "./figure.tsx";
import styles from "./seen-figure.module.css";

/** Worked out this far before it is seen, so that scrolling does not find empty places. */
const AHEAD = "400px";

type SeenFigureProps = ComponentProps<typeof MoveFigurePicture>;

export const SeenFigure = memo(function SeenFigure(props: SeenFigureProps) {
  const { ref, seen } = useSeen();
  const height = props.px < 72 ? props.px : Math.round(props.px / 1.25);
  return (
    <span ref={ref} className={styles.place} style={{ width: props.px, height }}>
      {seen ? <MoveFigurePicture {...props} /> : null}
    </span>
  );
});

function useSeen() {
  const ref = useRef<HTMLSpanElement>(null);
  const [seen, setSeen] = useState(false);
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
    return () => watch.disconnect();
  }, [seen]);
  return { ref, seen };
}
