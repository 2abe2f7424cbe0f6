"use client";
/** A button with the words of its command, and its key for assistive technology. */
import type { AriaAttributes, ReactNode } from "react";
import { ariaShortcuts, type Command } from "./command.ts";

interface CommandButtonProps extends Pick<AriaAttributes, "aria-pressed"> {
  readonly command: Command;
  /** The place whose key for it counts where the button is shown. */
  readonly place?: string;
  readonly onRun: () => void;
  readonly className?: string;
  readonly disabled?: boolean;
  /** Instead of the command's own words. */
  readonly children?: ReactNode;
}

export function CommandButton({ command, place, onRun, children, className = "", ...rest }: CommandButtonProps) {
  return (
    <button
      type="button"
      className={`button ${className}`.trim()}
      aria-keyshortcuts={place === undefined ? undefined : ariaShortcuts(command, place)}
      onClick={onRun}
      {...rest}
    >
      {children ?? command.words}
    </button>
  );
}
