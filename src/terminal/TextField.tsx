import { Transform } from "ink";
import TextInput from "ink-text-input";
import { useContext } from "react";
import { cursorRoom, fieldWindow } from "./cursor.ts";
import { FieldCursorContext } from "./fieldCursor.ts";

/** Ink's text field in so many columns, with the terminal's own cursor in it, which it tells the session of. */
export function TextField({
  columns,
  text,
  onTyped,
  onSubmit,
}: {
  readonly columns: number;
  readonly text: string;
  /** What it holds after a key, and whether the cursor was at its end before. */
  readonly onTyped: (text: string, atEnd: boolean) => void;
  readonly onSubmit?: (text: string) => void;
}) {
  const cursor = useContext(FieldCursorContext);
  const window = fieldWindow(columns);
  return (
    <Transform
      transform={(field) => {
        // What Ink draws is the only place where the cursor of its field can be seen from outside.
        cursor.room = cursorRoom(field, text);
        return window(field);
      }}
    >
      <TextInput
        value={text}
        onChange={(now) => onTyped(now, (cursor.room?.right ?? 0) === 0)}
        {...(onSubmit && { onSubmit })}
      />
    </Transform>
  );
}
