/** What programs get of `import … from "rackwright"`: a car file's text to everything that is said of its front end. */
export { type NoCar, type OpenCar, openCar } from "./car.ts";
export { type FigureAbout, figures } from "./figures.ts";
export type { Asked, Figures, OutOfReach, Pose, WheelPose } from "./pose.ts";
