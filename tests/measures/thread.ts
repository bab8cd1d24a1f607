import { readThread, type Thread } from "../../src/vehicle/threads.ts";

/** The thread of that designation, such as "1/2-20" or "M12". */
export function threadOf(text: string): Thread {
  const read = readThread(text);
  if ("complaint" in read) throw new Error(read.complaint);
  return read.value;
}
