/** Values of the shape that a JSON Schema asks for, as an arbitrary; ids from a small set, so that names are often known. */
import { fc } from "@fast-check/vitest";

interface Schema {
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly pattern?: string;
  readonly format?: string;
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, Schema>>;
}

/**
 * @param ids what stands for every text that must look like an id
 * @param most elements of a list at most
 */
export function anyOf(root: Schema, ids: readonly string[], most: number): fc.Arbitrary<unknown> {
  const defs = root.$defs ?? {};
  const of = (schema: Schema): fc.Arbitrary<unknown> => {
    if (schema.$ref) return of(defs[schema.$ref.replace(/^#\/\$defs\//, "")] ?? {});
    if ("const" in schema) return fc.constant(schema.const);
    if (schema.enum) return fc.constantFrom(...schema.enum);
    const either = schema.anyOf ?? schema.oneOf;
    if (either) return fc.oneof(...either.map(of));
    switch (schema.type) {
      case "object": {
        const needed = new Set(schema.required ?? []);
        const props = Object.entries(schema.properties ?? {});
        const requiredKeys = props.flatMap(([key]) => (needed.has(key) ? [key] : []));
        return fc.record(Object.fromEntries(props.map(([key, one]) => [key, of(one)])), { requiredKeys });
      }
      case "array": {
        const minLength = schema.minItems ?? 0;
        const maxLength = Math.max(minLength, Math.min(schema.maxItems ?? most, most));
        return fc.array(of(schema.items ?? {}), { minLength, maxLength });
      }
      case "string":
        if (schema.format === "date") return fc.constantFrom("2026-11-25", "2027-01-01");
        if (schema.pattern?.startsWith("^[a-z]")) return fc.constantFrom(...ids);
        if (schema.pattern) return fc.stringMatching(new RegExp(schema.pattern));
        return fc.string({ minLength: schema.minLength ?? 0, maxLength: Math.min(schema.maxLength ?? 12, 12) });
      case "integer":
        return fc.integer({ min: schema.minimum ?? 0, max: Math.min(schema.maximum ?? 100, 3600) });
      case "boolean":
        return fc.boolean();
      case "null":
        return fc.constant(null);
      default:
        return fc.jsonValue();
    }
  };
  return of(root);
}
