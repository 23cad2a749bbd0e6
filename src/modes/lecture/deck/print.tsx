/** Slides as pages for the browser's own print, which saves them as a PDF with text as text. */
import { render } from "preact";
import { printAs } from "../../../ui/take-away/print-as.ts";
import { fitText } from "./fit.ts";
import type { DeckWords } from "./pptx.ts";
import { bodyOf, type DeckPage, type OwnPage, type Slide, withPicture } from "./slide.ts";
import "./print.css";

/** Opens the browser's print; the pages go again when it closes. */
export async function printSlides(slides: readonly DeckPage[], words: DeckWords): Promise<void> {
  const host = document.createElement("div");
  host.className = "deck-pages";
  document.body.append(host);
  render(<Pages slides={slides} words={words} />, host);
  await Promise.all([...host.querySelectorAll("img")].map((image) => image.decode()));
  printAs(words.title, words.language, () => {
    render(null, host);
    host.remove();
  });
}

/** inches of the column beside the picture; points */
const COLUMN = { width: 3.3, height: 2.6 } as const;
const ABOVE_FIGURES = { width: 3.3, height: 1.6 } as const;
const SIZES = [10, 17] as const;

const Pages = ({ slides, words }: { readonly slides: readonly DeckPage[]; readonly words: DeckWords }) => (
  <>
    {slides.map((slide, index) =>
      slide.kind === "own" ? (
        <OwnPrinted key={index} page={slide} />
      ) : (
        <PrintedSlide key={index} slide={slide} words={words} />
      ),
    )}
  </>
);

const OwnPrinted = ({ page: { title, words, picture } }: { readonly page: OwnPage }) => (
  <article class="deck-page own">
    {picture ? (
      <img src={picture.data} alt={title} />
    ) : (
      <div>
        <h1>{title}</h1>
        <p class="deck-body">{words}</p>
      </div>
    )}
  </article>
);

function PrintedSlide({ slide, words }: { readonly slide: Slide; readonly words: DeckWords }) {
  const ownFigures = withPicture(slide.ownFigures);
  const body = fitText(bodyOf(slide).join("\n"), ownFigures.length > 0 ? ABOVE_FIGURES : COLUMN, SIZES);
  const captions = slide.panes.map(({ caption }) => caption).filter(Boolean);
  return (
    <article class="deck-page">
      <h1>{slide.title}</h1>
      <div class="deck-columns">
        <div>
          <img class="deck-scene" src={slide.picture} alt={[slide.title, ...captions].join(". ")} />
          <div class="deck-panes">
            {slide.panes.map(({ caption, figures }, pane) => (
              <p key={pane}>
                {caption && <strong>{caption}</strong>}
                {figures.map((figure) => (
                  <span key={figure}>{figure}</span>
                ))}
              </p>
            ))}
          </div>
        </div>
        <div>
          <p class="deck-body" style={{ fontSize: `${body.size}pt` }}>
            {body.text}
          </p>
          {ownFigures.length > 0 && (
            <div class="deck-figures">
              {ownFigures.map(({ alt, picture }) => (
                <img key={picture.data} src={picture.data} alt={alt} />
              ))}
            </div>
          )}
          {slide.caution && <p class="deck-caution">{slide.caution}</p>}
        </div>
      </div>
      <footer>
        <p>{words.cautions.join(" ")}</p>
        <p>
          <a href={slide.link}>{words.open}</a> {words.made}
        </p>
      </footer>
    </article>
  );
}
