import { withDpi } from "../charts/with-dpi.js";

/** Hands a file to the reader's download folder. */
export function saveFile(content: string | Uint8Array<ArrayBuffer>, type: string, name: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/**
 * Draws an SVG file of the kit as a PNG.
 * @param svg one of its pixels is 1/96 inch
 * @param dpi dots per inch, stated in the file
 */
export async function pngOfSvg(svg: string, dpi: number): Promise<Uint8Array<ArrayBuffer>> {
  const address = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = Math.round((image.naturalWidth * dpi) / 96);
    canvas.height = Math.round((image.naturalHeight * dpi) / 96);
    canvas.getContext("2d")!.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/png"));
    if (!blob) throw new Error("the browser could not draw the figure");
    return withDpi(new Uint8Array(await blob.arrayBuffer()), dpi);
  } finally {
    URL.revokeObjectURL(address);
  }
}
