/** Slides as pages for the browser's own print, which saves them as a PDF with text as text. */
import { render } from "preact";
import { fitText } from "./fit.ts";
import type { DeckWords } from "./pptx.ts";
import type { DeckPage, OwnPage, Slide } from "./slide.ts";
import "./print.css";

/** Opens the browser's print; the pages go again when it closes. */
export async function printSlides(slides: readonly DeckPage[], words: DeckWords): Promise<void> {
  const host = document.createElement("div");
  host.className = "deck-pages";
  document.body.append(host);
  render(<Pages slides={slides} words={words} />, host);
  await Promise.all([...host.querySelectorAll("img")].map((image) => image.decode()));
  const name = document.title;
  // Browsers offer the document's title as the file's name.
  document.title = words.title;
  addEventListener(
    "afterprint",
    () => {
      document.title = name;
      render(null, host);
      host.remove();
    },
    { once: true },
  );
  print();
}

/** inches of the column beside the picture; points */
const COLUMN = { width: 3.3, height: 2.6 } as const;
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
  const body = fitText(slide.body.join("\n"), COLUMN, SIZES);
  const captions = slide.panes.map(({ caption }) => caption).filter(Boolean);
  return (
    <article class="deck-page">
      <h1>{slide.title}</h1>
      <div class="deck-columns">
        <div>
          <img src={slide.picture} alt={[slide.title, ...captions].join(". ")} />
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
