import { closeSync, fstatSync, lstatSync, openSync, readFileSync, statSync } from "node:fs";
import { resolve } from "node:path";
import type { Car } from "../vehicle/car.ts";
import type { Complaint } from "../vehicle/complaint.ts";
import { type Refused, readCar } from "../vehicle/read.ts";
import { mayHoldProducts, prepareProducts } from "../vehicle/units/products.ts";
import { hashOf } from "./hash.ts";
import { largestFile } from "./largestFile.ts";
import { codeOf, reasonOf } from "./reason.ts";

/** A car file as it is on disk. */
export interface Loaded {
  /** Its whole path. */
  readonly path: string;
  readonly text: string;
  /** As hashOf has it: what a save compares to see whether someone else wrote the file since. */
  readonly hash: string;
}

function wholeFile(message: string): Refused {
  const complaint: Complaint = { line: null, column: null, part: "", message };
  return { complaints: [complaint] };
}

/** The bytes of an ordinary file, or why there are none. What is no ordinary file is not opened: it may never end. */
function bytesOf(path: string): Buffer | string {
  const before = statSync(path);
  if (before.isDirectory()) return "it is a folder, not a car file";
  if (!before.isFile()) return "it is a device or a pipe, not a car file";
  const file = openSync(path, "r");
  try {
    const { size } = fstatSync(file);
    if (size > largestFile) return `it is too large for a car file: ${Math.ceil(size / 1024)} KiB`;
    return readFileSync(file);
  } finally {
    closeSync(file);
  }
}

/** The text that bytes are in UTF-8, or why they are none. A mark at its start (BOM) is kept, so that a save keeps it. */
function textOf(bytes: Buffer): { text: string } | string {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff))
    return "it is written as UTF-16: save it as UTF-8 in your editor";
  if (bytes.includes(0)) return "it is not a text file";
  if (bytes.includes(0x0d) && !bytes.includes(0x0a))
    return "its lines end in carriage returns alone (CR): save it with the line ends LF or CRLF in your editor";
  try {
    return { text: new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    return "it is not a text file, or not written as UTF-8: save it as UTF-8 in your editor";
  }
}

/** A car file's text, or one clear complaint why it cannot be read. Never throws, whatever the path. */
export function loadText(path: string): Loaded | Refused {
  if (path === "") return wholeFile("cannot be read: no file is named");
  try {
    const bytes = bytesOf(path);
    if (typeof bytes === "string") return wholeFile(`cannot be read: ${bytes}`);
    const decoded = textOf(bytes);
    if (typeof decoded === "string") return wholeFile(`cannot be read: ${decoded}`);
    return { path: resolve(path), text: decoded.text, hash: hashOf(decoded.text) };
  } catch (error) {
    if (codeOf(error) === "ENOENT") {
      const isLink = lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink();
      return wholeFile(
        `cannot be read: ${isLink ? "it is a link to a file that is not there" : "there is no such file"}`,
      );
    }
    return wholeFile(`cannot be read: ${reasonOf(error)}`);
  }
}

/** A car file read as a car, or all that is wrong with it. What its lengths need beyond sums is loaded first. */
export async function loadCar(path: string): Promise<{ readonly car: Car; readonly file: Loaded } | Refused> {
  const file = loadText(path);
  if ("complaints" in file) return file;
  if (mayHoldProducts(file.text)) await prepareProducts();
  const car = readCar(file.text);
  return "complaints" in car ? car : { car, file };
}
