import { PDFDocument, type PDFFont } from "@cantoo/pdf-lib";
import plainFile from "@expo-google-fonts/roboto/400Regular/Roboto_400Regular.ttf";
import boldFile from "@expo-google-fonts/roboto/700Bold/Roboto_700Bold.ttf";
import fontkit from "@pdf-lib/fontkit";
import { printable } from "../printable.ts";

/** Width and height, points of 1/72 in: ISO 216 and ANSI/ASME Y14.1. */
export const papers = { A4: [595.28, 841.89], Letter: [612, 792] } as const;

export type PaperSize = keyof typeof papers;

/** A font, and which characters it can draw. */
export interface Face {
  readonly font: PDFFont;
  readonly has: ReadonlySet<number>;
}

/** Text of which every character can be drawn: one that the font has not, or that would act, is written out, never dropped. */
export function drawable(text: string, { has }: Face): string {
  return [...printable(text)]
    .map((each) => {
      const code = each.codePointAt(0) ?? 0;
      return has.has(code) ? each : `\\u{${code.toString(16)}}`;
    })
    .join("");
}

/** An empty PDF whose fonts are inside; without a date and random names, so that the same content is the same bytes. */
export async function newPdf(
  title: string,
): Promise<{ readonly pdf: PDFDocument; readonly plain: Face; readonly bold: Face }> {
  const pdf = await PDFDocument.create({ updateMetadata: false });
  pdf.registerFontkit(fontkit);
  pdf.setTitle(printable(title));
  const face = async (file: Uint8Array): Promise<Face> => {
    // Whole: what makes subsets of a font loses letters or fails.
    const font = await pdf.embedFont(file, { subset: false });
    return { font, has: new Set(font.getCharacterSet()) };
  };
  return { pdf, plain: await face(plainFile), bold: await face(boldFile) };
}
