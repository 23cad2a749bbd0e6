/** Each exported function and type of src/sim has a doc block that gives the units of its numbers. */
import { join } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { filesBelow, TOP } from "./sources.ts";

const SI =
  "k?g|u?m[23]?|mm[23]?|cm[23]?|ms|s[23]?|k?Pa|mmHg|N|m?W|u?J|Hz|rad|[md]?L|mol|min|h|days?|years?|%";
/** `m/s`, `Pa.s`, `(mm)`, `1/s`: only after a bracket, comma, colon, number or a word such as "in", so that not every "s" is a unit. */
const WITH_UNIT = new RegExp(
  `(?:^|[\\[(,:;*]|@param [\\w.]+|\\b(?:in|of|per|or|and|to|from|x|[\\d.]+)) ?(?:1/)?(?:${SI})(?:[ /](?:${SI}))*(?=[\\]),.:;\\s]|$)`,
  "m",
);
const BY_WORD =
  /\b(SI|dimensionless|dx|cells?|fractions?|ratios?|counts?|number of|index|indices|degrees|radians|unit|[0-9.]+ to [0-9.]+)\b/i;
const statesUnits = (doc: string): boolean => WITH_UNIT.test(doc) || BY_WORD.test(doc);

const TYPED_ARRAY = /^(Float|Int|Uint)\d+(Clamped)?Array$/;

/** A number, or an array of them. */
function isNumeric(type: ts.Type, checker: ts.TypeChecker): boolean {
  if (type.isUnion()) return type.types.some((each) => isNumeric(each, checker));
  if (type.flags & ts.TypeFlags.NumberLike) return true;
  if (TYPED_ARRAY.test(type.getSymbol()?.name ?? "")) return true;
  if (!checker.isArrayLikeType(type)) return false;
  return checker.getTypeArguments(type as ts.TypeReference).some((each) => isNumeric(each, checker));
}

interface Exported {
  readonly name: string;
  readonly doc: string | undefined;
  /** names of what is a number and has no unit */
  readonly bare: readonly string[];
}

const isExported = (statement: ts.Statement): boolean =>
  ts.canHaveModifiers(statement) &&
  (ts.getModifiers(statement) ?? []).some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);

function docOf(node: ts.Node): string | undefined {
  const blocks = ts.getJSDocCommentsAndTags(node).filter(ts.isJSDoc);
  return blocks.length ? blocks.map((block) => block.getText()).join("\n") : undefined;
}

/** The functions of a statement: its own, or those that its constants hold. */
function functionsOf(statement: ts.Statement): { name: string; body: ts.SignatureDeclaration }[] {
  if (ts.isFunctionDeclaration(statement)) return [{ name: statement.name!.text, body: statement }];
  if (!ts.isVariableStatement(statement)) return [];
  return statement.declarationList.declarations.flatMap(({ name, initializer }) =>
    initializer && (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer))
      ? [{ name: name.getText(), body: initializer }]
      : [],
  );
}

/** A function whose doc block states no unit is bare in each number that it takes or returns. */
function describeFunction(statement: ts.Statement, body: ts.SignatureDeclaration, checker: ts.TypeChecker) {
  const doc = docOf(statement);
  if (statesUnits(doc ?? "")) return { doc, bare: [] };
  const bare = body.parameters
    .filter((parameter) => isNumeric(checker.getTypeAtLocation(parameter), checker))
    .map((parameter) => parameter.name.getText());
  if (isNumeric(checker.getSignatureFromDeclaration(body)!.getReturnType(), checker)) bare.push("answer");
  return { doc, bare };
}

/** A field without a comment shares that of the field above it; the type's own block may speak for all. */
function describeInterface(statement: ts.InterfaceDeclaration, checker: ts.TypeChecker) {
  const doc = docOf(statement);
  const bare: string[] = [];
  let shared = "";
  for (const member of statement.members.filter(ts.isPropertySignature)) {
    shared = docOf(member) ?? shared;
    const numeric = isNumeric(checker.getTypeAtLocation(member), checker);
    if (numeric && !statesUnits(shared) && !statesUnits(doc ?? "")) bare.push(member.name.getText());
  }
  return { doc, bare };
}

function exportsOf(file: ts.SourceFile, checker: ts.TypeChecker): Exported[] {
  return file.statements.filter(isExported).flatMap((statement): Exported[] => {
    if (ts.isInterfaceDeclaration(statement))
      return [{ name: statement.name.text, ...describeInterface(statement, checker) }];
    if (ts.isClassDeclaration(statement))
      return [{ name: statement.name!.text, doc: docOf(statement), bare: [] }];
    return functionsOf(statement).map(({ name, body }) => ({
      name,
      ...describeFunction(statement, body, checker),
    }));
  });
}

const OPTIONS: ts.CompilerOptions = {
  target: ts.ScriptTarget.ES2022,
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  allowImportingTsExtensions: true,
  strict: true,
  skipLibCheck: true,
  noEmit: true,
  types: [],
};

/** What is wrong with the doc blocks of some files, one line each; `planted` are files that exist in memory only. */
function faultsOf(paths: readonly string[], planted: Readonly<Record<string, string>> = {}): string[] {
  const host = ts.createCompilerHost(OPTIONS);
  const { readFile, fileExists, getSourceFile } = host;
  host.readFile = (path) => planted[path] ?? readFile(path);
  host.fileExists = (path) => path in planted || fileExists(path);
  host.getSourceFile = (path, target) =>
    path in planted ? ts.createSourceFile(path, planted[path]!, target, true) : getSourceFile(path, target);
  const program = ts.createProgram([...paths], OPTIONS, host);
  return paths.flatMap((path) =>
    exportsOf(program.getSourceFile(path)!, program.getTypeChecker()).flatMap(({ name, doc, bare }) => {
      const place = `${path.replace(TOP, "")}: ${name}`;
      if (doc === undefined) return [`${place} has no doc block`];
      return bare.length > 0 ? [`${place} states no units: ${bare.join(", ")}`] : [];
    }),
  );
}

const files = filesBelow("src/sim", /\.ts$/).filter((path) => !/\.wasm\.ts$|\/kernel\//.test(path));

describe("doc blocks of src/sim", () => {
  test("each exported function and type has one, and it states the units of its numbers", () => {
    expect(faultsOf(files.map((path) => join(TOP, path)))).toEqual([]);
  }, 120_000);

  test("a missing block and missing units are found", () => {
    const planted = {
      "/planted.ts": [
        "export const half = (x: number) => x / 2;",
        "/** Half of something. */ export const halved = (x: number): number => x / 2;",
        "/** Half of a length, mm. */ export const halfLength = (x: number): number => x / 2;",
        "/** A tube. */ export interface Tube { readonly length: number; readonly name: string }",
        "/** A pipe. */ export interface Pipe {\n/** mm */ readonly length: number;\nreadonly width: number }",
      ].join("\n"),
    };
    expect(faultsOf(["/planted.ts"], planted)).toEqual([
      "/planted.ts: half has no doc block",
      "/planted.ts: halved states no units: x, answer",
      "/planted.ts: Tube states no units: length",
    ]);
  });
});
