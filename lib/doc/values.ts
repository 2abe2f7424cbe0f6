/** Values of a document as the type asked for, or undefined: any writer may have put anything there. */

export const num = (v: unknown): number | undefined => (typeof v === "number" && Number.isFinite(v) ? v : undefined);
export const bool = (v: unknown): boolean | undefined => (typeof v === "boolean" ? v : undefined);
export const str = (v: unknown): string | undefined => (typeof v === "string" && v !== "" ? v : undefined);

export function oneOf<T extends string>(list: readonly T[], v: unknown): T | undefined {
  return list.find((x) => x === v);
}

export function compact<T extends Record<string, unknown>>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as T;
}
