/** Words in the source itself: a component, a picture or an attribute that speaks without a message. */
import ts from "typescript";
import { expect, test } from "vitest";
import { readSources } from "../house/sources.ts";

/** What a person reads or a voice reads out. */
const SPOKEN_ATTRIBUTE =
  /^(title|alt|label|hint|note|placeholder|aria-(label|description|roledescription|valuetext))$/;
const SPOKEN_PROPERTY = /\.(textContent|innerText|innerHTML|title|ariaLabel|placeholder|alt)$/;
const SPOKEN_CALL = /(^|\.)(alert|confirm|announce|say|write)$/;
/** Of a plate or a line in a picture. */
const SPOKEN_FIELD = /^(words|text|caption|heading)$/;
/** Names that no language translates: a document's identifier. */
const NAMES = /^\. doi $/;

const isWord = (text: string): boolean => /\p{L}{2,}/u.test(text) && !NAMES.test(text);

/** The texts that an expression may come to, as far as it says them itself. */
function textsOf(node: ts.Node): string[] {
  if (ts.isStringLiteralLike(node) || ts.isJsxText(node)) return [node.text];
  if (ts.isTemplateExpression(node))
    return [node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)];
  if (ts.isParenthesizedExpression(node) || ts.isJsxExpression(node))
    return node.expression ? textsOf(node.expression) : [];
  if (ts.isConditionalExpression(node)) return [...textsOf(node.whenTrue), ...textsOf(node.whenFalse)];
  if (!ts.isBinaryExpression(node)) return [];
  switch (node.operatorToken.kind) {
    case ts.SyntaxKind.PlusToken:
    case ts.SyntaxKind.QuestionQuestionToken:
    case ts.SyntaxKind.BarBarToken:
      return [...textsOf(node.left), ...textsOf(node.right)];
    case ts.SyntaxKind.AmpersandAmpersandToken:
      return textsOf(node.right);
    default:
      return [];
  }
}

/** What of a node is shown or read out. */
function shownBy(node: ts.Node): ts.Node | undefined {
  if (ts.isJsxText(node)) return node;
  if (ts.isJsxExpression(node) && !ts.isJsxAttribute(node.parent)) return node;
  if (ts.isJsxAttribute(node))
    return SPOKEN_ATTRIBUTE.test(node.name.getText()) ? node.initializer : undefined;
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.EqualsToken)
    return SPOKEN_PROPERTY.test(node.left.getText()) ? node.right : undefined;
  if (ts.isPropertyAssignment(node))
    return SPOKEN_FIELD.test(node.name.getText()) ? node.initializer : undefined;
  if (!ts.isCallExpression(node)) return undefined;
  const [first, second] = node.arguments;
  if (/\.setAttribute$/.test(node.expression.getText()))
    return first && ts.isStringLiteral(first) && SPOKEN_ATTRIBUTE.test(first.text) ? second : undefined;
  return SPOKEN_CALL.test(node.expression.getText()) && first && !isKey(first) ? first : undefined;
}

/** `say("stage.glenn")` asks for a message. */
const isKey = (node: ts.Node): boolean => textsOf(node).every((text) => /^[\w.-]*$/.test(text));

function wordsIn(path: string, text: string): string[] {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const shown = shownBy(node);
    if (shown)
      for (const each of textsOf(shown).filter(isWord))
        found.push(`${path}:${file.getLineAndCharacterOfPosition(node.getStart()).line + 1}: ${each.trim()}`);
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

test("U21 no component, picture or attribute says a word that is no message", () => {
  const speaking = readSources("src").filter(({ path }) =>
    /^src\/(ui|modes|scenes|phone|main|docs)/.test(path),
  );
  expect(speaking.length).toBeGreaterThan(250);
  expect(speaking.flatMap(({ path, text }) => wordsIn(path, text))).toEqual([]);
});

test("a word that is planted is found, a key and a name are none", () => {
  const planted = [
    "const A = () => <p>Hello there</p>;",
    'const B = () => <button title="Close it">{open ? "Open" : t("open")}</button>;',
    `const C = () => <img alt={\`Picture of \${name}\`} class="wide" />;`,
    'element.setAttribute("aria-label", "Play");',
    'announce("Saved to disk");',
    'plate({ words: "Left lung", name: "leftLung" });',
    `const D = () => <i>{phase === "again" && t("again")}{\`. doi \${doi}\`}</i>;`,
    'theme.say("stage.glenn");',
  ];
  expect(wordsIn("x.tsx", planted.join("\n")).map((each) => each.slice("x.tsx:".length))).toEqual([
    "1: Hello there",
    "2: Close it",
    "2: Open",
    "3: Picture of",
    "4: Play",
    "5: Saved to disk",
    "6: Left lung",
  ]);
});
