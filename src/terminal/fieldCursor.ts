import { createContext } from "react";

/**
 * How far the cursor of the text field on the screen can go, in the field's own steps. The field tells of it each time that
 * it is drawn; null where it was drawn without a cursor.
 */
export interface FieldCursor {
  room: { readonly left: number; readonly right: number } | null;
}

/** The session's, for the field that is drawn within it. */
export const FieldCursorContext = createContext<FieldCursor>({ room: null });
