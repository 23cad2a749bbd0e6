/** Pages of a PDF drawn as pictures on this machine. Loaded when one is opened, and only then. */
import { GlobalWorkerOptions, getDocument } from "pdfjs-dist";
import PdfWorker from "pdfjs-dist/build/pdf.worker.min.mjs?worker&inline";

/** px: a full screen's width */
const WIDTH = 1920;

/** The first `most` pages, and how many there are. Rejects with the reason where the file is none, is damaged or locked. */
export async function drawPages(
  file: Blob,
  most: number,
  onPage: (page: number, of: number) => void,
): Promise<{ readonly pictures: readonly Blob[]; readonly count: number }> {
  const worker = new PdfWorker();
  GlobalWorkerOptions.workerPort = worker;
  try {
    const pdf = await getDocument({ data: await file.arrayBuffer() }).promise;
    const pictures: Blob[] = [];
    for (let number = 1; number <= Math.min(pdf.numPages, most); number++) {
      onPage(number, pdf.numPages);
      const page = await pdf.getPage(number);
      const viewport = page.getViewport({ scale: WIDTH / page.getViewport({ scale: 1 }).width });
      const canvas = document.createElement("canvas");
      canvas.width = Math.round(viewport.width);
      canvas.height = Math.round(viewport.height);
      await page.render({ canvas, viewport }).promise;
      pictures.push(
        await new Promise<Blob>((resolve, reject) =>
          canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("no picture"))), "image/png"),
        ),
      );
    }
    return { pictures, count: pdf.numPages };
  } finally {
    GlobalWorkerOptions.workerPort = null;
    worker.terminate();
  }
}
