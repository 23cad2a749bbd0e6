/** JSON Schema (2020-12) of lesson files, for editors: made from the schemas that read them, so the two cannot disagree. */
import { toJsonSchema } from "@valibot/to-json-schema";
import type { GenericSchema } from "valibot";
import { PARAMETERS } from "../../sim/parameters/parameters.ts";
import { taskSchema } from "../read/read-task.ts";
import { frontSchema, translatedFrontSchema } from "./front-matter.ts";
import { glossarySchema, sourcesSchema } from "./glossary-schema.ts";
import { QUESTION_SCHEMAS } from "./question-schema.ts";
import { sceneSchema, settingsSchema } from "./scene-patch.ts";

type Json = Record<string, unknown>;

const DRAFT = "https://json-schema.org/draft/2020-12/schema";

/** `set` is any record to the reader, which checks its names against the parameters afterwards; an editor gets them at once. */
function convert(schema: GenericSchema): Json {
  const { $schema: _, ...json } = toJsonSchema(schema, {
    target: "draft-2020-12",
    typeMode: "input",
    errorMode: "ignore",
    overrideSchema: ({ valibotSchema }) => (valibotSchema === settingsSchema ? settings() : undefined),
  });
  return json;
}

/** By kind of text: front matter, translated front matter, scene and question blocks, shared files. */
export function lessonSchemas(): Json {
  const schema = (part: GenericSchema): Json => ({ $schema: DRAFT, ...convert(part) });
  return {
    frontMatter: schema(frontSchema),
    translatedFrontMatter: schema(translatedFrontSchema),
    scene: schema(sceneSchema),
    question: {
      $schema: DRAFT,
      oneOf: Object.values(QUESTION_SCHEMAS).map((each) => convert(each)),
    },
    task: schema(taskSchema),
    glossary: schema(glossarySchema),
    sources: schema(sourcesSchema),
  };
}

/** `set` in full: each parameter with its unit and range. */
function settings(): Json {
  return {
    type: "object",
    additionalProperties: false,
    properties: Object.fromEntries(
      PARAMETERS.map((parameter) => [
        parameter.name,
        parameter.kind === "word"
          ? { description: parameter.meaning, enum: [...parameter.words, "default"] }
          : {
              description: `${parameter.meaning} (${parameter.unit})`,
              anyOf: [
                { type: "number", minimum: parameter.min, maximum: parameter.max },
                { const: "default" },
              ],
            },
      ]),
    ),
  };
}
