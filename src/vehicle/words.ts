/** Which wheel a value belongs to, as the driver sees it. */
export type Wheel = "left" | "right";

/** What a file's bare lengths are in, and what a builder reads. */
export type LengthUnit = "in" | "mm";
