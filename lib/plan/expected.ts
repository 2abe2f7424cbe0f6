/** What a plan file should have at a place, in words, read off the published JSON Schema. */
import type { JsonSchema } from "./json-schema.ts";
import type { Path } from "./pointer.ts";
import { ID_PATTERN } from "./schema.ts";

/**
 * The part of a schema that describes the value at `path`, following the data to choose between alternatives.
 * Undefined when the schema has no such place.
 */
export function schemaAt(schema: JsonSchema, path: Path, data: unknown): JsonSchema | undefined {
  let node: JsonSchema | undefined = chosen(schema, data);
  let value = data;
  for (const step of path) {
    if (!node) return undefined;
    value = child(value, step);
    const next = inside(node, step);
    node = next && chosen(next, value);
  }
  return node;
}

/** "a whole number from 60 to 14400", "one of left, right, both, alternating", "text of 1 to 120 characters". */
export function expectedWords(node: JsonSchema): string {
  if ("const" in node) return JSON.stringify(node.const);
  if (Array.isArray(node.enum)) return oneOf(node.enum);
  const alternatives = node.anyOf ?? node.oneOf;
  if (Array.isArray(alternatives)) return [...new Set(alternatives.filter(isSchema).map(expectedWords))].join(" or ");
  switch (node.type) {
    case "integer":
      return `a whole number${bounds(node.minimum, node.maximum)}`;
    case "number":
      return `a number${bounds(node.minimum, node.maximum)}`;
    case "string":
      return text(node);
    case "boolean":
      return "true or false";
    case "array":
      return list(node);
    case "object":
      return "an object";
    case "null":
      return "null";
    default:
      return "something else";
  }
}

function text(node: JsonSchema): string {
  if (node.pattern === ID_PATTERN.source) {
    return "an id: 1 to 64 small letters, digits and hyphens, not starting with a hyphen";
  }
  if (node.maxLength === undefined) return "text";
  return node.minLength
    ? `text of ${node.minLength} to ${node.maxLength} characters`
    : `text of up to ${node.maxLength} characters`;
}

function list(node: JsonSchema): string {
  if (Array.isArray(node.prefixItems)) return `a list of ${node.prefixItems.length} numbers`;
  return node.maxItems === undefined ? "a list" : `a list of at most ${node.maxItems}`;
}

function bounds(low: unknown, high: unknown): string {
  return typeof low === "number" && typeof high === "number" ? ` from ${low} to ${high}` : "";
}

const oneOf = (values: readonly unknown[]): string =>
  values.length === 1 ? String(values[0]) : `one of ${values.map(String).join(", ")}`;

const isSchema = (v: unknown): v is JsonSchema => typeof v === "object" && v !== null && !Array.isArray(v);

function child(value: unknown, step: string | number): unknown {
  return isSchema(value) || Array.isArray(value) ? (value as Record<string | number, unknown>)[step] : undefined;
}

function inside(node: JsonSchema, step: string | number): JsonSchema | undefined {
  if (typeof step === "number") {
    const seat: unknown = Array.isArray(node.prefixItems) ? node.prefixItems[step] : node.items;
    return isSchema(seat) ? seat : undefined;
  }
  const known = isSchema(node.properties) && Object.hasOwn(node.properties, step) ? node.properties[step] : undefined;
  const seat = known ?? node.additionalProperties;
  return isSchema(seat) ? seat : undefined;
}

/** The alternative that the data names by its `kind`, else the one that shares most keys with the data. */
function chosen(node: JsonSchema, data: unknown): JsonSchema | undefined {
  const alternatives = node.anyOf ?? node.oneOf;
  if (!Array.isArray(alternatives) || !isSchema(data)) return node;
  const keys = Object.keys(data);
  const score = (a: JsonSchema): number => {
    const properties = isSchema(a.properties) ? a.properties : {};
    const kind = isSchema(properties.kind) ? properties.kind.const : undefined;
    return (
      (kind !== undefined && kind === data.kind ? 1000 : 0) + keys.filter((k) => Object.hasOwn(properties, k)).length
    );
  };
  return alternatives.filter(isSchema).reduce((best, a) => (score(a) > score(best) ? a : best));
}
