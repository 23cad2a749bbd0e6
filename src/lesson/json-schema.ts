/** JSON Schema (2020-12) of what lesson files hold, for editors: made from the schemas that read them, so the two cannot disagree. */
import { PARAMETERS } from "../sim/parameters.ts";
import { frontSchema, translatedFrontSchema } from "./front-matter.ts";
import { glossarySchema, sourcesSchema } from "./glossary.ts";
import { QUESTION_SCHEMAS } from "./question-schema.ts";
import { sceneSchema } from "./scene-patch.ts";

type Json = Record<string, unknown>;

/** By kind of text: front matter, translated front matter, scene and question blocks, shared files. */
export function lessonSchemas(): Json {
  const schema = (part: unknown): Json => ({
    $schema: "https://json-schema.org/draft/2020-12/schema",
    ...convert(part),
  });
  return {
    frontMatter: schema(frontSchema),
    translatedFrontMatter: schema(translatedFrontSchema),
    scene: schema(sceneSchema),
    question: {
      $schema: "https://json-schema.org/draft/2020-12/schema",
      oneOf: Object.values(QUESTION_SCHEMAS).map((each) => convert(each)),
    },
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

/** A schema as the validation library keeps it: kind, parts, and the checks piped behind it. */
interface Node {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Node>>;
  readonly wrapped?: Node;
  readonly item?: Node;
  readonly value?: Node;
  readonly options?: readonly unknown[];
  readonly literal?: unknown;
  readonly default?: unknown;
  readonly pipe?: readonly (Node & { readonly requirement?: unknown })[];
}

function convert(schema: unknown, name = ""): Json {
  const node = schema as Node;
  if (name === "set") return settings();
  const json = bare(node);
  for (const check of node.pipe ?? []) Object.assign(json, checked(check, json.type));
  return json;
}

function bare(node: Node): Json {
  switch (node.type) {
    case "strict_object":
      return {
        type: "object",
        additionalProperties: false,
        required: Object.keys(node.entries!).filter((key) => node.entries![key]!.type !== "optional"),
        properties: Object.fromEntries(
          Object.entries(node.entries!).map(([key, each]) => [key, convert(each, key)]),
        ),
      };
    case "record":
      return { type: "object", additionalProperties: convert(node.value) };
    case "array":
      return { type: "array", items: convert(node.item) };
    case "optional":
      return {
        ...convert(node.wrapped),
        ...(typeof node.default === "number" ? { default: node.default } : {}),
      };
    case "nullable":
      return { anyOf: [convert(node.wrapped), { type: "null" }] };
    case "union":
      return { anyOf: node.options!.map((option) => convert(option)) };
    case "picklist":
      return { enum: node.options };
    case "literal":
      return { const: node.literal };
    default:
      return { type: node.type };
  }
}

function checked({ type, requirement }: { type: string; requirement?: unknown }, of: unknown): Json {
  const array = of === "array";
  if (type === "min_value") return { minimum: requirement };
  if (type === "max_value") return { maximum: requirement };
  if (type === "min_length") return { [array ? "minItems" : "minLength"]: requirement };
  if (type === "max_length") return { [array ? "maxItems" : "maxLength"]: requirement };
  if (type === "integer") return { type: "integer" };
  return type === "regex" ? { pattern: (requirement as RegExp).source } : {};
}
