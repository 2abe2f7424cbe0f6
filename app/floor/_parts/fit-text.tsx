"use client";
/** Words as large as their box allows, from a list of sizes: nothing is cut off, nothing is smaller than it has to be. */
import { type ReactNode, useLayoutEffect, useRef } from "react";

/** How far the font's own box reaches below a tight last line, as a share of its size: it is empty there, so it may overflow. */
const BELOW_LINE = 0.14;

interface Props {
  /** Largest first, CSS px. */
  readonly sizes: readonly number[];
  readonly className?: string | undefined;
  readonly children: ReactNode;
  /** Measured again when this changes. */
  readonly text: string;
}

export function FitText({ sizes, className, children, text }: Props) {
  const box = useRef<HTMLDivElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the text is not read here, but the space it takes is measured
  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    const choose = () => {
      for (const size of sizes) {
        element.style.fontSize = `${size}px`;
        const deep = size * BELOW_LINE;
        if (element.scrollHeight <= element.clientHeight + deep && element.scrollWidth <= element.clientWidth + 1)
          return;
      }
    };
    choose();
    const observer = new ResizeObserver(choose);
    observer.observe(element);
    document.fonts.ready.then(choose);
    return () => observer.disconnect();
  }, [sizes, text]);
  return (
    <div ref={box} className={className}>
      {children}
    </div>
  );
}
