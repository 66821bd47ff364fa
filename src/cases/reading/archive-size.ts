import { Unzip, UnzipInflate } from "fflate";
import { SheetError } from "../sheet-error.js";

/** Largest total of unpacked parts that is read; a sheet of 100,000 rows by 20 columns has about 100 MB. */
export const largestArchive = 256 * 2 ** 20;
const slice = 16_384;

/**
 * Unpacks an archive without keeping anything, and stops at the limit: sizes written in the archive are not believed.
 * @throws SheetError when it is larger than the limit, or cut short
 */
export function checkArchiveSize(bytes: Uint8Array, file: string, limit = largestArchive): void {
  let total = 0;
  const unzip = new Unzip((part) => {
    part.ondata = (error, data) => {
      if (error) throw error;
      total += data.length;
      if (total > limit) throw new RangeError("too large");
    };
    part.start();
  });
  unzip.register(UnzipInflate);
  try {
    for (let at = 0; at < bytes.length; at += slice)
      unzip.push(bytes.subarray(at, at + slice), at + slice >= bytes.length);
  } catch {
    const rule =
      total > limit
        ? `unpacks to more than ${Math.round(limit / 2 ** 20)} MB, which no case sheet does; not opened`
        : "is damaged or cut short; ask for it again";
    throw new SheetError(file, [{ rule }]);
  }
}
