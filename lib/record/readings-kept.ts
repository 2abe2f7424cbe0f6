/** What a manager did with the scale readings of a spring, as the record says it. */

/** `data`: the spring as it is afterwards, how many readings there are, and whether its values were taken from them. */
export function readingsKept(data: unknown, room: string): string {
  const { spring, readings, use } = fieldsOf(data);
  const which = `“${String(fieldsOf(spring).label ?? "")}” in ${room}`;
  if (use !== false) return `took the values of ${which} from scale readings`;
  return readings === 0
    ? `removed the scale readings of ${which}; its values stayed as they were`
    : `saved scale readings of ${which}; its values stayed as they were`;
}

const fieldsOf = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};
