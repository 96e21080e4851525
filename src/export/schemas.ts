/** The JSON Schemas (2020-12) that are published beside the app, generated from the Zod schemas, which are the source. */
import { z } from "zod";
import { Protocol } from "../session/protocol";
import { rawProblemJsonSchema } from "../turnaround/rawProblem";
import { RecordFile } from "./recordFile";

const jsonSchema = (schema: z.ZodType, id: string, title: string): Record<string, unknown> => ({
  ...z.toJSONSchema(schema, { target: "draft-2020-12", io: "input", reused: "ref" }),
  $id: id,
  title,
});

export const recordSchema = () => jsonSchema(RecordFile, "urn:gloveside:record:2", "Gloveside record, formats 1 and 2");
export const turnaroundSchema = () => ({
  ...(rawProblemJsonSchema() as object),
  $id: "urn:gloveside:turnaround:1",
  title: "Gloveside turnaround, format 1",
});
export const protocolSchema = () => jsonSchema(Protocol, "urn:gloveside:protocol:1", "Gloveside protocol, format 1");

/** What stands under public/, by file name. */
export const publishedSchemas = (): Record<string, string> => ({
  "record.schema.json": `${JSON.stringify(recordSchema(), null, 2)}\n`,
  "turnaround.schema.json": `${JSON.stringify(turnaroundSchema(), null, 2)}\n`,
  "protocol.schema.json": `${JSON.stringify(protocolSchema(), null, 2)}\n`,
});
