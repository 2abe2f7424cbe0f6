/** Times and lengths as tables from elsewhere write them. */

/**
 * 'HH:MM' of "7:30", "07:30:00", "19.30 Uhr", "19h30", "19h", "1930", "10am" or "7:30 pm"; undefined for anything else. A number alone may
 * as well be a length, so "10" is none.
 */
export function tableTimeIn(typed: string): string | undefined {
  const text = typed.toLowerCase().replaceAll(/\s/g, "");
  const half = /^(\d{1,2})(?:[:.h](\d{2}))?([ap])\.?m\.?$/.exec(text);
  if (half) {
    const hour = Number(half[1]);
    return hour < 1 || hour > 12 ? undefined : wallTime((hour % 12) + (half[3] === "p" ? 12 : 0), Number(half[2] ?? 0));
  }
  const [, hour, minute = "0"] =
    /^(\d{1,2})[:.h](\d{2})(?::00)?(?:uhr|h|hrs)?$/.exec(text) ??
    /^(\d{1,2})(?:uhr|h|hrs)$/.exec(text) ??
    /^(\d{1,2})(\d{2})$/.exec(text) ??
    [];
  return hour === undefined ? undefined : wallTime(Number(hour), Number(minute));
}

function wallTime(hour: number, minute: number): string | undefined {
  if (hour > 23 || minute > 59) return undefined;
  return [hour, minute].map((n) => String(n).padStart(2, "0")).join(":");
}

/** Both ends of "18:00–19:00" or "10am - 11am"; the end is undefined where there is but one time. */
export function spanIn(typed: string): { readonly start: string | undefined; readonly end: string | undefined } {
  const [from = "", to] = typed.split(/\s*[-–—]\s*/);
  return { start: tableTimeIn(from), end: to === undefined ? undefined : tableTimeIn(to) };
}

/** Whole minutes of "60", "60 min", "1h15" or "1:15"; undefined for anything else. */
export function minutesIn(typed: string): number | undefined {
  const text = typed.toLowerCase().replaceAll(/\s/g, "");
  const plain = /^(\d{1,4})(?:m|min\.?|mins|minutes|minuten|minutos|'|′)?$/.exec(text);
  if (plain) return Number(plain[1]);
  const [, hours, minutes = "0"] = /^(\d)[:h](\d{2})?(?:min|h)?$/.exec(text) ?? [];
  return hours === undefined ? undefined : Number(hours) * 60 + Number(minutes);
}
