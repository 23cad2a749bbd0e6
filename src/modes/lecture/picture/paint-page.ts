/** Paints the page as it stands into a small picture: grounds, rims, images and words, in the order in which they lie. */

export interface Painting {
  readonly context: CanvasRenderingContext2D;
  /** Stands for the stage's own canvas, which may be read only while it is drawn. */
  readonly scene: HTMLCanvasElement;
  readonly isScene: (canvas: HTMLCanvasElement) => boolean;
}

/** `context` is scaled from CSS px already. */
export function paintPage(painting: Painting, root: HTMLElement): void {
  const { context } = painting;
  context.fillStyle = getComputedStyle(root).backgroundColor;
  context.fillRect(0, 0, innerWidth, innerHeight);
  paintChildren(painting, root);
}

function paintChildren(painting: Painting, parent: Element): void {
  const layers = [...parent.childNodes].map((node) => ({ node, layer: layerOf(node) }));
  for (const { node } of layers.sort((a, b) => a.layer - b.layer)) {
    if (node instanceof HTMLElement) paintElement(painting, node);
    else if (node instanceof Text) paintWords(painting.context, node, parent);
  }
}

const layerOf = (node: Node): number =>
  (node instanceof HTMLElement && Number.parseInt(getComputedStyle(node).zIndex, 10)) || 0;

function paintElement(painting: Painting, element: HTMLElement): void {
  const style = getComputedStyle(element);
  const opacity = Number(style.opacity);
  if (opacity === 0 || style.display === "none" || element.classList.contains("unseen")) return;
  const { context } = painting;
  const box = element.getBoundingClientRect();
  context.save();
  context.globalAlpha *= opacity;
  if (style.visibility === "visible") {
    paintBox(context, style, box);
    if (element instanceof HTMLCanvasElement)
      context.drawImage(
        painting.isScene(element) ? painting.scene : element,
        box.x,
        box.y,
        box.width,
        box.height,
      );
    if (element instanceof HTMLImageElement && element.naturalWidth > 0) paintImage(context, element, box);
  }
  if (style.overflow !== "visible" && box.width > 0) {
    context.beginPath();
    context.rect(box.x, box.y, box.width, box.height);
    context.clip();
  }
  paintChildren(painting, element);
  context.restore();
}

function paintBox(context: CanvasRenderingContext2D, style: CSSStyleDeclaration, box: DOMRect): void {
  const rim = Number.parseFloat(style.borderTopWidth) || 0;
  const round = Math.min(Number.parseFloat(style.borderTopLeftRadius) || 0, box.width / 2, box.height / 2);
  context.beginPath();
  context.roundRect(
    box.x,
    box.y,
    box.width,
    box.height,
    style.borderTopLeftRadius === "50%" ? box.width / 2 : round,
  );
  if (!isClear(style.backgroundColor)) {
    context.fillStyle = style.backgroundColor;
    context.fill();
  }
  if (rim > 0 && !isClear(style.borderTopColor)) {
    context.strokeStyle = style.borderTopColor;
    context.lineWidth = rim;
    context.stroke();
  }
}

const isClear = (colour: string): boolean => colour === "transparent" || colour === "rgba(0, 0, 0, 0)";

/** As `object-fit: contain` has it. */
function paintImage(context: CanvasRenderingContext2D, image: HTMLImageElement, box: DOMRect): void {
  const scale = Math.min(box.width / image.naturalWidth, box.height / image.naturalHeight);
  const [width, height] = [image.naturalWidth * scale, image.naturalHeight * scale];
  context.drawImage(image, box.x + (box.width - width) / 2, box.y + (box.height - height) / 2, width, height);
}

/** Word by word, each where the page has set it. */
function paintWords(context: CanvasRenderingContext2D, text: Text, parent: Element): void {
  const style = getComputedStyle(parent);
  if (style.visibility !== "visible" || !text.data.trim()) return;
  context.font = `${style.fontStyle} ${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
  context.fillStyle = style.color;
  const range = document.createRange();
  for (const { 0: word, index } of text.data.matchAll(/\S+/g)) {
    range.setStart(text, index);
    range.setEnd(text, index + word.length);
    const [line] = range.getClientRects();
    if (line) context.fillText(word, line.x, line.y + context.measureText(word).fontBoundingBoxAscent);
  }
}
