/** A lesson's text on the page: each of its parts a separate element, never markup. */
import type { ComponentChildren } from "preact";
import type { Block, Inline, Prose } from "../../lesson/prose.ts";
import { Equation } from "./equation.tsx";
import "./prose.css";
import { SourceMark } from "./source-mark.tsx";
import { Term } from "./term.tsx";
import type { Voice } from "./voice.ts";

export const ProseView = ({ prose, voice }: { readonly prose: Prose; readonly voice: Voice }) => (
  <>
    {prose.map((block, index) => (
      <BlockView key={index} block={block} voice={voice} />
    ))}
  </>
);

function BlockView({ block, voice }: { readonly block: Block; readonly voice: Voice }) {
  if (block.kind === "paragraph")
    return (
      <p>
        <InlineView words={block.content} voice={voice} />
      </p>
    );
  if (block.kind === "picture")
    return (
      <p class="lesson-picture">
        <img src={block.src} alt={block.alt} />
      </p>
    );
  if (block.kind === "math") return <Equation tex={block.tex} display />;
  const items = block.items.map((item, index) => (
    <li key={index}>
      <ProseView prose={item} voice={voice} />
    </li>
  ));
  return block.ordered ? <ol>{items}</ol> : <ul>{items}</ul>;
}

export const InlineView = ({
  words,
  voice,
}: {
  readonly words: readonly Inline[];
  readonly voice: Voice;
}) => <>{words.map((word, index) => shown(word, voice, index))}</>;

function shown(word: Inline, voice: Voice, key: number): ComponentChildren {
  switch (word.kind) {
    case "text":
      return word.text;
    case "figure":
      return (
        <bdi class="live-number" key={key}>
          {voice.number(word.figure)}
        </bdi>
      );
    case "claim":
      return <InlineView key={key} words={word.content} voice={voice} />;
    case "emphasis":
      return (
        <em key={key}>
          <InlineView words={word.content} voice={voice} />
        </em>
      );
    case "strong":
      return (
        <strong key={key}>
          <InlineView words={word.content} voice={voice} />
        </strong>
      );
    case "term":
      return (
        <Term key={key} entry={voice.glossary[word.key]} version={voice.version}>
          {word.content.length > 0 ? (
            <InlineView words={word.content} voice={voice} />
          ) : (
            (voice.glossary[word.key]?.term ?? word.key)
          )}
        </Term>
      );
    case "source":
      return <SourceMark key={key} source={voice.sources[word.key]} name={word.key} />;
    case "math":
      return <Equation key={key} tex={word.tex} />;
    case "link": {
      const { follow } = voice;
      const inner = <InlineView words={word.content} voice={voice} />;
      if (!follow) return inner;
      return (
        <button type="button" class="quiet inline" key={key} onClick={() => follow(word.to)}>
          {inner}
        </button>
      );
    }
  }
}
