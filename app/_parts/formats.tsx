"use client";
/**
 * The reader's formats, handed to a page's tree once by its frame (`_shell/shell.tsx`, or the page itself where it has a frame
 * of its own), so that server and browser write the same. Outside a frame it is the standard.
 */
import { createContext, type ReactNode, useContext } from "react";
import { type Formats, STANDARD_FORMATS } from "#lib/formats/formats.ts";

const FormatsContext = createContext<Formats>(STANDARD_FORMATS);

interface ProviderProps {
  readonly formats: Formats;
  readonly children: ReactNode;
}

export function FormatsProvider({ formats, children }: ProviderProps) {
  return <FormatsContext value={formats}>{children}</FormatsContext>;
}

export const useFormats = (): Formats => useContext(FormatsContext);
