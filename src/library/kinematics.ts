import { Pose } from "../kinematics/slots.ts";

/** What programs get of `import … from "rackwright/kinematics"`: the geometry alone, from points in mm and rad to poses. */
export { compile } from "../kinematics/compile.ts";
export type { Drawn } from "../kinematics/drawn.ts";
export { type DoesNotClose, readSide, type SidePose } from "../kinematics/face.ts";
export type { Front, Refusal } from "../kinematics/front.ts";
export { newPoses } from "../kinematics/poses.ts";
export { solve } from "../kinematics/solve.ts";

/** How many doubles a pose takes in a buffer: the i-th of newPoses starts at i times this. */
export const poseStride: number = Pose.Stride;
