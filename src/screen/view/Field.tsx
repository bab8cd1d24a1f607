import { Text } from "ink";
import { TextField } from "../../terminal/TextField.tsx";
import { fitting } from "./wrap.ts";

/** What the text field tells of. */
export type Typed = (text: string) => void;

/** Columns that what is typed has at least, however long the words before it. */
const leastField = 20;

/** A line to type in, with what is asked before it. */
export function Field({
  labels,
  columns,
  text,
  onTyped,
}: {
  /** What stands before the field; where it leaves too little room, the next of them. */
  readonly labels: readonly string[];
  readonly columns: number;
  readonly text: string;
  readonly onTyped: Typed;
}) {
  const label = ` ${fitting(labels, columns - leastField)} `;
  return (
    <Text wrap="truncate">
      <Text bold>{label}</Text>
      <TextField columns={columns - label.length - 1} text={text} onTyped={onTyped} />
    </Text>
  );
}
