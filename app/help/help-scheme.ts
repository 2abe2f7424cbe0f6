/** Light or dark as the reader has chosen it, for pictures. Server only. */
import { cookies } from "next/headers";
import { parseScheme, SCHEME_COOKIE } from "../_shell/scheme.ts";

export async function chosenScheme(): Promise<"light" | "dark" | null> {
  return parseScheme((await cookies()).get(SCHEME_COOKIE)?.value);
}
