/** Light or dark: remembered in a cookie, so that the first paint already has it. Unset follows the system. */
export const SCHEME_COOKIE = "springline-scheme";
export type Scheme = "light" | "dark";

export function parseScheme(value: string | undefined): Scheme | null {
  return value === "light" || value === "dark" ? value : null;
}
